import type { Scored } from './tables.ts';

/** The error each found curve states of itself against the error it has, of photos given with and without a flag. */
export function errorTable(all: readonly Scored[]): Record<string, Record<string, string | number>> {
  const row = (scores: Scored[]) => {
    const curves = scores.flatMap((s) =>
      s.curves.flatMap(({ read, closeness }) =>
        read && closeness ? [{ stated: read.expectedError, real: closeness.rms }] : [],
      ),
    );
    const within = (times: number) => {
      const inside = curves.filter(({ stated, real }) => real <= times * stated).length;
      return curves.length ? `${Math.round((100 * inside) / curves.length)} %` : '–';
    };
    const median = (values: number[]) =>
      `${(100 * (values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0)).toFixed(3)} %`;
    return {
      curves: curves.length,
      'median stated': median(curves.map((c) => c.stated)),
      'median real': median(curves.map((c) => c.real)),
      'within stated': within(1),
      'within twice': within(2),
      'within three times': within(3),
    };
  };
  return { 'no flag': row(all.filter((s) => !s.flagged)), flagged: row(all.filter((s) => s.flagged)) };
}
