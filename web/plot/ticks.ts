/** Round numbers from 0 to at least `max`, about `count` of them: 1, 2 or 5 times a power of ten apart. */
export function ticksTo(max: number, count: number): number[] {
  if (!(max > 0) || !Number.isFinite(max)) return [0, 1];
  const rough = max / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= rough * 0.999) ?? 10 * power;
  const last = Math.ceil(max / step - 1e-9);
  return Array.from({ length: last + 1 }, (_, i) => Number((i * step).toPrecision(12)));
}
