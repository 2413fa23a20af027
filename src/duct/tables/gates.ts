import type { Coefficient, Rows } from './coefficient.ts';

/**
 * A slide gate with its slot in a round pipe, straight pipe after it, by open height / diameter; on the velocity
 * pressure of the full pipe. Read between rows on the logarithm of k.
 * Source: Idelchik diagram 9-6 curve 1; fixtures/reference/fittings.json, `gates`.
 */
// prettier-ignore
export const GATES: Rows = [
  [0.1, 200], [0.15, 77], [0.2, 33], [0.3, 11], [0.4, 4.7], [0.5, 2.35], [0.6, 1.23], [0.7, 0.67], [0.8, 0.31], [0.9, 0.11], [1, 0.05],
];

/** A gate pushed home still has this much of its height open: a shut one is told by the section's `gate`. */
const SMALLEST_OPENING = 0.002;

/** Loss coefficient of a gate element; fully open where no opening is given. */
export function gate(opening: number | null | undefined): Coefficient {
  const x = Math.max(opening ?? 1, SMALLEST_OPENING);
  const source = 'Idelchik diagram 9-6 curve 1 (gate with slot); a gate without slot, diagram 9-5, differs by 10–40 %';
  // Below the table the opening is a thin crescent: its area goes with height^1.5, the loss with area^-2.
  if (x < GATES[0]![0]) return { k: GATES[0]![1] * (GATES[0]![0] / x) ** 3, doubt: 0.5, source };
  let below = GATES[0]!;
  for (const row of GATES) {
    if (x < row[0]) {
      const t = (x - below[0]) / (row[0] - below[0]);
      return { k: below[1] * (row[1] / below[1]) ** t, doubt: 0.25, source };
    }
    below = row;
  }
  return { k: below[1], doubt: 0.5, source };
}
