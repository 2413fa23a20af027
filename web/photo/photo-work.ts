import type { PhotoPoint } from './view.ts';

/** A chart photo being read: everything a finger or a keyboard has said about it, and what the reader answered. */
export type AxisId = 'x' | 'y1' | 'y2' | 'y3';
export type AxisQuantity = 'flow' | 'static_pressure' | 'total_pressure' | 'shaft_power' | 'efficiency';

/** The ends of an axis as typed; they become numbers only when the reader is asked. */
export type AxisWork = {
  id: AxisId;
  quantity: AxisQuantity;
  unit: string;
  minText: string;
  maxText: string;
  scale: 'linear' | 'log';
};

/** A tap on a curve: where, on which axis it is read, and the speed written beside it. */
export type SeedWork = { id: string; yAxis: AxisId; quantity: AxisQuantity; speedText: string; at: PhotoPoint };

export type PhotoWork = {
  photoId: string;
  width_px: number;
  height_px: number;
  /** bottom-left, bottom-right, top-right, top-left */
  corners: readonly [PhotoPoint, PhotoPoint, PhotoPoint, PhotoPoint];
  /** true once the reader or a finger has put them somewhere */
  cornersPlaced: boolean;
  axes: AxisWork[];
  seeds: SeedWork[];
};
