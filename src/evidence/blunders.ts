import { levelSettled, scatterOf, suspicionOf, type Suspicion } from '../fan/blunders.ts';
import type { FanEstimate } from '../fan/estimate.ts';
import { FAMILY } from '../fan/families.ts';
import type { Warning } from '../issues/result.ts';
import type { Blower, ReadingsEvidence } from '../job/types.ts';
import type { Explanation } from './explanation.ts';
import type { Place } from './gather.ts';
import { causeOfLevel } from './level-cause.ts';
import { plainBlunders } from './plain-blunders.ts';
import { exchangedRows, likelierBy, NAME_PREFERRED, oddRow, STILL_SCATTERS, type Named } from './row-search.ts';
import { secondThoughts, type SecondThoughts } from './second-thoughts.ts';
import { levelExplanations, oneLegEverywhere, otherTap, tapIsMeasured } from './whole-test-blunders.ts';

/** How much likelier, in ln, the readings must be with a blunder than without, before it is named. Source: measured on invented finds. */
const THRESHOLD = { tap: 0.7, tapOfVagueFamily: 2.5, tapMeasured: 2, oneLeg: 2.5, level: 3 };
/** Families whose level is known no better than this have shapes as uncertain as a tap's place. Source: measured on invented finds. */
const VAGUE_FAMILY = 0.4;
/** With more rows than this a search through all of them is left out, and so it is with more observations. */
const MOST_ROWS = 20;
const MOST_OBSERVATIONS = 60;
/** From so many rows on, one that does not fit can be told from the others. */
const FEWEST_ROWS = 3;
/** Amps or watts further off than this, in standard deviations, are worth a word. Source: measured on invented finds. */
const ODD_METER = 4.5;

/**
 * Blunders in home-made readings: what shows without any fit, rows that do not belong to the others, a level no wheel of the family
 * has, and the one mistake that explains it best, named with the place where it was made.
 * A wrong tap or one leg read everywhere bends all rows alike and gives no hint: both are always tried. Costs two fits a test, after
 * a hint a few dozen.
 * @param estimate the curve out of all evidence as it stands
 * Source: comparison of evidence, Laplace's method (C. E. Rasmussen & C. K. I. Williams 2006, 5.2).
 */
export function findBlunders(blower: Blower, place: Place, estimate: FanEstimate): Warning[] {
  const suspicion = suspicionOf(estimate);
  return blower.evidence.flatMap((piece, i): Warning[] => {
    if (piece.kind !== 'readings' || piece.rows.length === 0) return [];
    const path = `${place.path}/evidence/${i}`;
    const plain = plainBlunders(blower, place.supply, piece);
    const found = plain.length > 0 ? plain : inTest(blower, place, i, piece, estimate, suspicion);
    return found.map((blunder) => ({ code: blunder.code, text: blunder.text, path: path + blunder.path }));
  });
}

function inTest(
  blower: Blower,
  place: Place,
  index: number,
  readings: ReadingsEvidence,
  estimate: FanEstimate,
  suspicion: Suspicion,
): Warning[] {
  const at = `${place.path}/evidence/${index}/rows/`;
  const odd = suspicion.odd.filter((o) => o.path.startsWith(at));
  const rowOf = (o: { path: string }) => Number(o.path.slice(at.length));
  if (readings.rows.length <= MOST_ROWS && estimate.posterior.checks.length <= MOST_OBSERVATIONS) {
    const suspects = [...new Set(odd.filter((o) => o.kind === 'pressure').map(rowOf))];
    const thoughts = secondThoughts(blower, place, index, readings, estimate);
    const named = likeliest(thoughts, blower, readings, estimate, suspicion, suspects);
    if (named) return [named];
  }
  if (suspicion.level !== null) return [{ ...causeOfLevel(blower, readings, suspicion.pressureRatio), path: '/rows' }];
  const meter = odd.find(
    (o) => o.kind === 'power' && Math.abs(o.leftOut) > ODD_METER * scatterOf(estimate, 'power', o),
  );
  return meter ? [meterDoubtful(`/rows/${rowOf(meter)}`)] : [];
}

/** The mistake that makes the readings likeliest, where it does so by far. */
function likeliest(
  thoughts: SecondThoughts,
  blower: Blower,
  readings: ReadingsEvidence,
  estimate: FanEstimate,
  suspicion: Suspicion,
  suspects: readonly number[],
): Warning | null {
  const vague = FAMILY[blower.wheel.family].psiShutOff.lnSd > VAGUE_FAMILY;
  const tap = otherTap(readings);
  const wholes: { explanation: Explanation; threshold: number }[] = [
    ...(tap
      ? [
          {
            explanation: tap,
            threshold:
              (vague ? THRESHOLD.tapOfVagueFamily : THRESHOLD.tap) +
              (tapIsMeasured(readings) ? THRESHOLD.tapMeasured : 0),
          },
        ]
      : []),
    { explanation: oneLegEverywhere(readings), threshold: THRESHOLD.oneLeg },
    ...(suspicion.doubtful ? levelExplanations(readings) : []).map((explanation) => ({
      explanation,
      threshold: THRESHOLD.level,
    })),
  ];
  const found: (Named | null)[] = wholes.map(({ explanation, threshold }) => {
    const after = thoughts.with(explanation.readings);
    if (after === null || scatterOf(after.estimate, 'pressure') > STILL_SCATTERS) return null;
    if (threshold === THRESHOLD.level && !levelSettled(after.estimate)) return null;
    const { lnStretch } = explanation;
    if (after.estimate.posterior.lnEvidence + lnStretch - estimate.posterior.lnEvidence < threshold) return null;
    return { ...explanation, explained: true, gain: likelierBy(thoughts.asItStands(), after, lnStretch) - threshold };
  });
  if (suspects.length > 0 && readings.rows.length >= FEWEST_ROWS)
    found.push(oddRow(thoughts, readings, suspects), exchangedRows(thoughts, readings, suspects));
  let best: Named | null = null;
  const worth = (n: Named) => (n.explained ? n.gain : n.gain - NAME_PREFERRED);
  for (const named of found) if (named && named.gain > 0 && (!best || worth(named) > worth(best))) best = named;
  return best && { code: best.code, path: best.path, text: best.text };
}

const meterDoubtful = (path: string): Warning => ({
  code: 'motor-reading-doubtful',
  text: 'The amps or watts of this row do not fit those of the other rows. Read the meter again: one wire in the clamp, everything else switched off.',
  path,
});
