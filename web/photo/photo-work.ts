import type { Corners } from './corners.ts';
import { waitingCorners } from './corners.ts';
import type { PhotoPoint } from './view.ts';

/** A chart photo being read: everything a finger or a keyboard has said about it. What the reader answers is asked for anew. */
export type AxisId = 'x' | `y${number}`;
export type AxisQuantity = 'flow' | 'static_pressure' | 'total_pressure' | 'shaft_power' | 'efficiency';

/** The ends of an axis as typed; they become numbers only when the reader is asked. */
export type AxisWork = {
  id: AxisId;
  quantity: AxisQuantity;
  unit: string;
  minText: string;
  maxText: string;
  scale: 'linear' | 'log';
  /** somebody typed it: what the reader finds does not stand in for it */
  said?: boolean;
};

/** A tap on a curve: where, on which axis it is read, and the speed written beside it. */
export type SeedWork = { id: string; yAxis: AxisId; quantity?: AxisQuantity; speedText: string; at: PhotoPoint };

export type PhotoWork = {
  photoId: string;
  width_px: number;
  height_px: number;
  corners: Corners;
  /** which of the corners a finger has put somewhere */
  placed: readonly [boolean, boolean, boolean, boolean];
  axes: AxisWork[];
  seeds: SeedWork[];
  /** somebody chose the curves: those the reader finds do not stand in for them */
  curvesSaid?: boolean;
  /** the plot is not to be looked for: the corners will be put by hand */
  byHand?: boolean;
  airDensityText: string;
  /** somebody typed it, or emptied it: what is printed by the plot does not stand in for it */
  airSaid?: boolean;
};

export const startWork = (photo: { photoId: string; width_px: number; height_px: number }): PhotoWork => ({
  ...photo,
  corners: waitingCorners({ width: photo.width_px, height: photo.height_px }),
  placed: [false, false, false, false],
  axes: [
    { id: 'x', quantity: 'flow', unit: 'm³/h', minText: '0', maxText: '', scale: 'linear' },
    { id: 'y1', quantity: 'static_pressure', unit: 'Pa', minText: '0', maxText: '', scale: 'linear' },
  ],
  seeds: [],
  airDensityText: '',
});
