import { scatterOf } from '../fan/blunders.ts';
import type { FanEstimate } from '../fan/estimate.ts';
import type { ReadingsEvidence } from '../job/types.ts';
import { changedRows, rowPath } from './explanation.ts';
import { rowExplanations, swapped, type RowExplanation } from './row-blunders.ts';
import type { SecondThoughts } from './second-thoughts.ts';

/** A blunder to name, below the evidence's own pointer, and by how much more than needed it is the likelier, in ln. */
export type Named = { code: string; path: string; text: string; gain: number };

/** How much likelier, in ln, a row must be with a mistake than without. Source: feasibility figures. */
const THRESHOLD = 4;
/** A row so far from a curve through the others, in standard deviations as large as the others show them, is a stranger. */
const STRANGER = 3.7;
/** With its mistake put right a row must not be stranger than this. */
const AT_HOME = 3;
/** A mistake that explains a row is named before the bare fact that the row is odd, if it explains nearly as much, in ln. */
const NAME_PREFERRED = 4;
const MOST_SUSPECTS = 4;

/**
 * The row that does not belong to the others, and the mistake that would bring it home, if one does. Each suspect is left out and
 * foreseen from the rest, as it stands and with every mistake put right; the likeliest mistake is then tried on the whole curve. The
 * others' scatter counts: instruments are not always as good as they are taken for.
 * @param suspects numbers of rows, the oddest first
 * @param before   the curve as it stands
 */
export function oddRow(
  thoughts: SecondThoughts,
  readings: ReadingsEvidence,
  suspects: readonly number[],
  before: FanEstimate,
): Named | null {
  let mistaken: { row: number; likelier: number; explanation: RowExplanation } | null = null;
  let stranger: Named | null = null;
  for (const i of suspects.slice(0, MOST_SUSPECTS)) {
    const without = thoughts.without(i);
    if (without === null) continue;
    const scatter = scatterOf(without);
    const fall = (before.posterior.cost - without.posterior.cost) / scatter ** 2 - STRANGER ** 2 / 2;
    if (fall > (stranger?.gain ?? 0)) stranger = { ...unexplained(readings, i), gain: fall };
    const found = mistakeIn(thoughts, readings, i, without);
    if (found && found.likelier > (mistaken?.likelier ?? 0)) mistaken = { row: i, ...found };
  }
  if (mistaken === null) return stranger;
  const { row, explanation } = mistaken;
  const after = thoughts.with(changedRows(readings, (r, i) => (i === row ? explanation.row : r)));
  if (after === null) return stranger;
  const gain = likelierBy(before, after, explanation.lnStretch) - THRESHOLD;
  const named = { code: explanation.code, path: explanation.path, text: explanation.text, gain };
  return gain > 0 && gain > (stranger?.gain ?? 0) - NAME_PREFERRED ? named : stranger;
}

/** How much likelier the evidence is after a change than before, in ln, less where it still scatters. */
export const likelierBy = (before: FanEstimate, after: FanEstimate, lnStretch: number): number =>
  (after.posterior.lnEvidence + lnStretch - before.posterior.lnEvidence) / scatterOf(after);

function mistakeIn(
  thoughts: SecondThoughts,
  readings: ReadingsEvidence,
  i: number,
  without: FanEstimate,
): { likelier: number; explanation: RowExplanation } | null {
  const explanations = rowExplanations(readings, i);
  const [asItIs, ...putRight] = thoughts.asPoints([readings.rows[i]!, ...explanations.map((e) => e.row)]);
  if (asItIs == null) return null;
  const scatter = scatterOf(without);
  const now = thoughts.foreseen(without, asItIs);
  let best: { likelier: number; explanation: RowExplanation } | null = null;
  explanations.forEach((explanation, k) => {
    const point = putRight[k];
    if (point == null) return;
    const then = thoughts.foreseen(without, point);
    const likelier = (then.lnChance + explanation.lnStretch - now.lnChance) / scatter;
    if (then.off / scatter < AT_HOME && likelier > (best?.likelier ?? THRESHOLD)) best = { likelier, explanation };
  });
  return best;
}

/** Two suspects, or a suspect and its neighbour, whose pressures stand in each other's lines. */
export function exchangedRows(
  thoughts: SecondThoughts,
  readings: ReadingsEvidence,
  suspects: readonly number[],
  before: FanEstimate,
): Named | null {
  let best: Named | null = null;
  for (const [i, j] of pairs(suspects.slice(0, 2), readings.rows.length)) {
    const swap = swapped(readings, i, j);
    const after = swap && thoughts.with(swap.readings);
    if (!after) continue;
    const gain = likelierBy(before, after, 0) - THRESHOLD;
    if (gain > (best?.gain ?? 0)) best = { code: 'swapped-rows', path: swap.path, text: swap.text, gain };
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
function unexplained({ rows }: ReadingsEvidence, i: number): Omit<Named, 'gain'> {
  const hole = rows[i]!.orificeDiameter_m;
  if (hole != null && hole > 0)
    return {
      code: 'wrong-hole',
      text: 'This row does not fit the others. Measure its hole again, look for leaks at the cap, and read both legs of the tube.',
      path: rowPath(i, 'orificeDiameter_m'),
    };
  return {
    code: 'row-doubtful',
    text: 'This row does not fit the others. Take it again, and read both legs of the tube.',
    path: rowPath(i),
  };
}
