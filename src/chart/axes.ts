/** A scale from one side of the plot frame to the other: `min` at fraction 0, `max` at fraction 1. */
export type AxisScale = { readonly scale: 'linear' | 'log'; readonly min: number; readonly max: number };

/** Value at a fraction of the axis; beyond 0..1 the scale goes on. Source: definition. */
export function valueAt({ scale, min, max }: AxisScale, fraction: number): number {
  return scale === 'log' ? min * (max / min) ** fraction : min + (max - min) * fraction;
}

/** Fraction of the axis at a value. On a log axis the value must be above zero, else RangeError. Source: definition. */
export function fractionAt({ scale, min, max }: AxisScale, value: number): number {
  if (scale === 'linear') return (value - min) / (max - min);
  if (!(value > 0)) throw new RangeError(`value: expected above zero on a log axis, received ${value}`);
  return Math.log(value / min) / Math.log(max / min);
}
