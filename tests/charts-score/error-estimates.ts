import type { Scored } from './tables.ts';

/** Confidence a curve states, and what its curves were like: bands from sure to unsure. */
const BANDS: readonly (readonly [number, number])[] = [
  [0.95, 1.01],
  [0.9, 0.95],
  [0.8, 0.9],
  [0.6, 0.8],
  [0, 0.6],
];

/** What the readings say of themselves against the truth: of curves that claim so much, how many are within 1 % of full scale. */
export function errorTable(all: readonly Scored[]): Record<string, Record<string, string | number>> {
  const curves = all.flatMap((s) =>
    s.curves.flatMap((c) => (c.read && c.closeness ? [{ said: c.read.confidence, ...c.closeness, good: c.good }] : [])),
  );
  return Object.fromEntries(
    BANDS.map(([from, to]) => {
      const band = curves.filter((c) => c.said >= from && c.said < to);
      const good = band.filter((c) => c.good).length;
      const worst = Math.max(0, ...band.map((c) => c.rms * 100));
      return [
        `confidence ${from}…${Math.min(1, to)}`,
        {
          curves: band.length,
          good: band.length ? `${Math.round((100 * good) / band.length)} %` : '–',
          'worst rms': `${worst.toFixed(2)} %`,
        },
      ];
    }),
  );
}
