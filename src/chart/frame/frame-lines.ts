import type { Sheet } from '../sheet.ts';

/** Half the width of the printed frame line in sheet pixels, the widest of the four sides; what lies in it can't be told from it. */
export function frameHalfWidth(sheet: Sheet): number {
  const { width, darkness, margin, frameWidth, frameHeight } = sheet;
  const usual = (at: (along: number) => number, from: number, to: number) => {
    const values: number[] = [];
    for (let a = from; a < to; a += 3) values.push(darkness[at(a)]!);
    values.sort((p, q) => p - q);
    return values[values.length >> 1]!;
  };
  let widest = 1.5;
  for (const x0 of [margin, margin + frameWidth])
    widest = Math.max(
      widest,
      half((d) => usual((a) => a * width + x0 + d, margin + 12, margin + frameHeight - 12)),
    );
  for (const y0 of [margin, margin + frameHeight])
    widest = Math.max(
      widest,
      half((d) => usual((a) => (y0 + d) * width + a, margin + 12, margin + frameWidth - 12)),
    );
  return widest;
}

function half(ink: (offset: number) => number): number {
  const values = Array.from({ length: 15 }, (_, i) => ink(i - 7));
  const peak = Math.max(values[6]!, values[7]!, values[8]!);
  if (peak < 12) return 0;
  let n = 0;
  for (const v of values) if (v > 0.3 * peak) n++;
  return Math.min(6, n / 2);
}
