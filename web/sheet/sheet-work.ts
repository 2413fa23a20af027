import type { UploadedPhoto } from '../api.ts';
import type { Said } from '../plate/plate-work.ts';
import type { ColumnQuantity, HeadQuantity, SheetReading } from './sheet-reading.ts';

/** What was said of a column: what it shows, in which unit, or that it was read right. */
export type SaidColumn = { quantity?: ColumnQuantity; unit?: string; seen?: true };

/** The photo of a reading sheet, what was read from it, and everything that was said about that. Kept with the draft. */
export type SheetWork = {
  photoId: string;
  width_px: number;
  height_px: number;
  /** null until it is read */
  reading: SheetReading | null;
  columns: Record<number, SaidColumn>;
  /** by `cellKey` */
  cells: Record<string, Said>;
  head: { [Name in HeadQuantity]?: Said };
};

export const cellKey = (row: number, column: number): string => `${row},${column}`;

export const startSheet = ({ photoId, width_px, height_px }: UploadedPhoto): SheetWork => ({
  photoId,
  width_px,
  height_px,
  reading: null,
  columns: {},
  cells: {},
  head: {},
});
