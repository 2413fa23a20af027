import { scatterOf } from '../fan/blunders.ts';
import type { ReadingsEvidence } from '../job/types.ts';
import { changedRows, rowPath } from './explanation.ts';
import { rowExplanations, swapped, type RowExplanation } from './row-blunders.ts';
import type { Look, SecondThoughts } from './second-thoughts.ts';

/** A blunder to name, below the evidence's own pointer, and by how much more than needed it is the likelier, in ln. */
export type Named = {
  code: string;
  path: string;
  text: string;
  gain: number;
  /** false for the bare fact that a row is odd */
  explained: boolean;
};

/** How much likelier, in ln, a row must be with a mistake than without. Source: feasibility figures. */
const THRESHOLD = 3.5;
/** Nor are two rows exchanged as lightly as one is misread. */
const THRESHOLD_OF_SWAP = 5;
/** A row so far from a curve through the others, in standard deviations, is a stranger. */
const STRANGER = 3.5;
/** With its mistake put right a row must not be stranger than this. */
const AT_HOME = 3;
/** A mistake that explains what is odd is named before the bare fact that a row is odd, if it explains nearly as much, in ln. */
export const NAME_PREFERRED = 8;
/** A mistake is no explanation where the rows scatter so many times more than foreseen even without it. */
export const STILL_SCATTERS = 3;
const MOST_SUSPECTS = 4;

/**
 * The row that does not belong to the others, and the mistake that would bring it home, if one does. Each suspect is left out and
 * foreseen from the rest, as it stands and with every mistake put right; the likeliest mistake is then tried on the whole curve.
 * @param suspects numbers of rows, the oddest first
 */
export function oddRow(
  thoughts: SecondThoughts,
  readings: ReadingsEvidence,
  suspects: readonly number[],
): Named | null {
  let mistaken: { row: number; lnChance: number; explanation: RowExplanation } | null = null;
  let stranger: (Named & { lnChanceAtHome: number }) | null = null;
  for (const i of suspects.slice(0, MOST_SUSPECTS)) {
    const explanations = rowExplanations(readings, i);
    const [now, ...putRight] = thoughts.foreseen(i, [readings.rows[i]!, ...explanations.map((e) => e.row)]) ?? [];
    if (now == null) continue;
    // against other explanations, it counts what all the other rows say without this one
    const gain = now.lnChanceAtHome - STRANGER ** 2 / 2 - thoughts.asItStands().lnChance();
    // of two rows that contradict each other, the one whose absence leaves the others in peace
    if (now.off > STRANGER && now.lnChanceAtHome > (stranger?.lnChanceAtHome ?? -Infinity))
      stranger = { ...unexplained(readings, i), gain, explained: false, lnChanceAtHome: now.lnChanceAtHome };
    for (const [k, explanation] of explanations.entries()) {
      const then = putRight[k];
      if (then == null || then.off > AT_HOME) continue;
      const lnChance = then.lnChance + explanation.lnStretch;
      if (lnChance - now.lnChance > THRESHOLD && lnChance > (mistaken?.lnChance ?? -Infinity))
        mistaken = { row: i, lnChance, explanation };
    }
  }
  if (mistaken === null) return stranger;
  const { row, explanation } = mistaken;
  const after = thoughts.with(changedRows(readings, (r, i) => (i === row ? explanation.row : r)));
  if (after === null || scatterOf(after.estimate, 'pressure') > STILL_SCATTERS) return stranger;
  const gain = likelierBy(thoughts.asItStands(), after, explanation.lnStretch) - THRESHOLD;
  const named = { code: explanation.code, path: explanation.path, text: explanation.text, gain, explained: true };
  return gain > 0 && gain > (stranger?.gain ?? 0) - NAME_PREFERRED ? named : stranger;
}

/** How much likelier the readings are after a change than before, in ln. */
export const likelierBy = (before: Look, after: Look, lnStretch: number): number =>
  after.lnChance() + lnStretch - before.lnChance();

/** Two suspects, or a suspect and its neighbour, whose pressures stand in each other's lines. */
export function exchangedRows(
  thoughts: SecondThoughts,
  readings: ReadingsEvidence,
  suspects: readonly number[],
): Named | null {
  let best: Named | null = null;
  for (const [i, j] of pairs(suspects.slice(0, 2), readings.rows.length)) {
    const swap = swapped(readings, i, j);
    const after = swap && thoughts.with(swap.readings);
    if (!after || scatterOf(after.estimate, 'pressure') > STILL_SCATTERS) continue;
    const gain = likelierBy(thoughts.asItStands(), after, 0) - THRESHOLD_OF_SWAP;
    if (gain > (best?.gain ?? 0))
      best = { code: 'swapped-rows', path: swap.path, text: swap.text, gain, explained: true };
  }
  return best;
}

function pairs(suspects: readonly number[], rows: number): [number, number][] {
  const [first, second] = suspects;
  const wanted: [number, number][] = suspects.flatMap((i): [number, number][] => [
    [i - 1, i],
    [i, i + 1],
  ]);
  if (first !== undefined && second !== undefined) wanted.push([Math.min(first, second), Math.max(first, second)]);
  const seen = new Set<string>();
  return wanted.filter(([i, j]) => i >= 0 && j < rows && !seen.has(`${i} ${j}`) && seen.add(`${i} ${j}`));
}

/** A row that nothing explains: say what to look at. */
function unexplained({ rows }: ReadingsEvidence, i: number): Pick<Named, 'code' | 'path' | 'text'> {
  const hole = rows[i]!.orificeDiameter_m;
  return hole != null && hole > 0
    ? {
        code: 'row-doubtful',
        text: 'This row does not fit the others. Measure its hole again, look for leaks at the cap, and read both legs of the tube.',
        path: rowPath(i, 'orificeDiameter_m'),
      }
    : {
        code: 'row-doubtful',
        text: 'This row does not fit the others. Take it again, and read both legs of the tube.',
        path: rowPath(i),
      };
}
