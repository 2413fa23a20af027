/** A linear axis: value ↔ px, and round steps to write on it. */
export type Axis = { max: number; from: number; to: number };

export const toPx = ({ max, from, to }: Axis, value: number): number => from + ((to - from) * value) / max;
export const toValue = ({ max, from, to }: Axis, px: number): number => ((px - from) / (to - from)) * max;

/** Round steps (1, 2, 4, 5 times a power of ten) so that about `count` of them fit below `max`; zero is left out. */
export function steps(max: number, count: number): number[] {
  if (!(max > 0)) return [];
  const rough = max / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 4, 5, 10].map((n) => n * power).find((n) => n >= rough * 0.999)!;
  return Array.from({ length: Math.floor(max / step + 1e-9) }, (_, i) => (i + 1) * step);
}
