/** A picture of numbers, row by row. */
export type Field = { readonly width: number; readonly height: number; readonly values: Float32Array };

/** A field of the same size. @param of gives each number by its index */
export function fieldLike({ width, height }: Field, of: (index: number) => number): Field {
  const values = new Float32Array(width * height);
  for (let i = 0; i < values.length; i++) values[i] = of(i);
  return { width, height, values };
}

/** Mean over a square window, smaller at the edges. @param reach pixels to each side of the middle */
export function meanAround({ width, height, values }: Field, reach: number): Field {
  const rows = new Float32Array(values.length);
  slideAlong(values, rows, width, height, 1, width, reach);
  const out = new Float32Array(values.length);
  slideAlong(rows, out, height, width, width, 1, reach);
  return { width, height, values: out };
}

function slideAlong(
  from: Float32Array,
  to: Float32Array,
  length: number,
  count: number,
  step: number,
  next: number,
  reach: number,
): void {
  for (let n = 0; n < count; n++) {
    const start = n * next;
    let sum = 0;
    for (let i = 0; i < Math.min(reach, length); i++) sum += from[start + i * step]!;
    for (let i = 0; i < length; i++) {
      if (i + reach < length) sum += from[start + (i + reach) * step]!;
      if (i - reach - 1 >= 0) sum -= from[start + (i - reach - 1) * step]!;
      to[start + i * step] = sum / (Math.min(length - 1, i + reach) - Math.max(0, i - reach) + 1);
    }
  }
}

/** Gaussian blur; the edge pixels go on outside. @param sigma pixels */
export function blurred({ width, height, values }: Field, sigma: number): Field {
  const reach = Math.max(1, Math.ceil(2.5 * sigma));
  const weights = Float32Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-((k - reach) ** 2) / (2 * sigma * sigma)),
  );
  const sum = weights.reduce((a, b) => a + b, 0);
  const once = (from: Float32Array, length: number, count: number, step: number, next: number) => {
    const to = new Float32Array(from.length);
    for (let n = 0; n < count; n++)
      for (let i = 0; i < length; i++) {
        let v = 0;
        for (let k = -reach; k <= reach; k++)
          v += weights[k + reach]! * from[n * next + Math.min(length - 1, Math.max(0, i + k)) * step]!;
        to[n * next + i * step] = v / sum;
      }
    return to;
  };
  return { width, height, values: once(once(values, width, height, 1, width), height, width, width, 1) };
}

/** The number below which the given share of all numbers lies. @param share 0..1 */
export function quantile(values: Float32Array, share: number): number {
  const sorted = values.slice().sort();
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.round(share * (sorted.length - 1))))] ?? 0;
}
