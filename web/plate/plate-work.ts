import type { PlateReading } from '../../src/plate/reading.ts';
import type { UploadedPhoto } from '../api.ts';
import type { PlateFigure } from './plate-fields.ts';

/** What a finger or a keyboard said about one figure: other words for it, or that what was read is right. */
export type Said = { text?: string; seen?: true };

/** How a plate's flow and pressure belong together: each the largest for itself, one point, or not to be used. */
export type AirMeaning = 'each-largest' | 'one-point' | 'leave-out';
export type MotorKind = 'induction' | 'universal' | 'dc';

/** The photo of a plate, what was read from it, and everything that was said about that. Kept with the draft. */
export type PlateWork = {
  photoId: string;
  width_px: number;
  height_px: number;
  /** null until it is read */
  reading: PlateReading | null;
  /** it is typed from the photo: nothing is read */
  byHand?: true;
  said: { [Name in PlateFigure]?: Said };
  /** which of several ratings the motor runs on; left out, the one that suits the mains */
  rating?: number;
  air?: AirMeaning;
  kind?: MotorKind;
  meaning?: 'shaft' | 'input';
};

export const startPlate = ({ photoId, width_px, height_px }: UploadedPhoto): PlateWork => ({
  photoId,
  width_px,
  height_px,
  reading: null,
  said: {},
});

/** The photo is to be read after all; what was typed stays. */
export function readAfterAll(work: PlateWork): PlateWork {
  const { byHand, ...read } = work;
  return byHand ? read : work;
}
