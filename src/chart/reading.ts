import type { Warning } from '../issues/result.ts';
import type { AxisQuantity } from './hints.ts';

/** A chart read from a photo. Pixels are the photo's; `points` are SI: m³/s against Pa, W or a fraction. */
export type ChartReading = {
  /** bottom-left, bottom-right, top-right, top-left of the plot frame */
  frameCorners_px: [number, number][];
  axes: AxisReading[];
  curves: CurveReading[];
  confidence: { overall: number; needsReview: boolean };
  warnings: Warning[];
  /** density of the air the chart holds for, where it is printed near the plot */
  airDensity_kg_m3?: number;
  /** corners of further plots on the photo, in the same order, likeliest first */
  otherFrames_px?: [number, number][][];
};

export type AxisReading = {
  id: string;
  quantity: AxisQuantity;
  unit: string;
  scale: 'linear' | 'log';
  /** values at the frame's edges, in `unit` */
  min: number;
  max: number;
  confidence: number;
};

export type CurveReading = {
  id: string;
  yAxis: string;
  quantity: AxisQuantity;
  speed_rpm: number | null;
  /** sorted by flow */
  points: [number, number][];
  points_px: [number, number][];
  /** root mean square distance from the printed curve to be expected, share of full scale */
  expectedError: number;
  confidence: number;
};
