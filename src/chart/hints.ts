import { z } from 'zod';
import { between, oneOf } from '../fields.ts';

/** What may be told about a chart before it is read; any subset. Pixels are those of the photo as it was stored. */

export const AXIS_QUANTITIES = ['flow', 'static_pressure', 'total_pressure', 'shaft_power', 'efficiency'] as const;
export type AxisQuantity = (typeof AXIS_QUANTITIES)[number];

const pixel = z.number().gte(-1e5).lte(1e5);
const PixelPoint = z.tuple([pixel, pixel]);
const id = z.string().min(1).max(40);
const exact = z.boolean().optional().meta({ label: 'exact', help: 'taken as it is, not moved onto the print' });

export const AxisHint = z.strictObject({
  id: id.meta({ label: 'axis', help: '"x" for the flow axis, "y1", "y2" … for the others' }),
  quantity: oneOf(AXIS_QUANTITIES, 'quantity'),
  unit: z.string().max(40).meta({ label: 'unit', help: 'as printed, any spelling in the unit table' }),
  scale: oneOf(['linear', 'log'], 'scale'),
  min: z.number().gte(-1e9).lte(1e9).meta({ label: 'value at the frame’s left or bottom edge' }),
  max: z.number().gte(-1e9).lte(1e9).meta({ label: 'value at the frame’s right or top edge' }),
});

export const SeedHint = z.strictObject({
  yAxis: id.meta({ label: 'axis the curve is read on' }),
  quantity: oneOf(AXIS_QUANTITIES, 'quantity'),
  speed_rpm: between(1, 200_000, 'speed', 'speed').nullish(),
  point_px: PixelPoint.meta({ label: 'a point on the curve' }),
  exact,
});

export const ChartHints = z.strictObject({
  frameCorners_px: z
    .tuple([PixelPoint, PixelPoint, PixelPoint, PixelPoint])
    .optional()
    .meta({ label: 'corners of the plot frame', help: 'bottom-left, bottom-right, top-right, top-left of the chart' }),
  axes: z.array(AxisHint).max(8).optional(),
  seeds: z.array(SeedHint).max(40).optional(),
  exact,
});

export type AxisHint = z.infer<typeof AxisHint>;
export type SeedHint = z.infer<typeof SeedHint>;
export type ChartHints = z.infer<typeof ChartHints>;
