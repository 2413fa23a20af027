import { scatterOf, strangerAmong, suspicionOf } from '../fan/blunders.ts';
import { estimateFan, type FanEstimate } from '../fan/estimate.ts';
import type { Warning } from '../issues/result.ts';
import type { Blower, ReadingsEvidence } from '../job/types.ts';
import { checkReadings } from '../readings/index.ts';
import { EXPLANATIONS, TAP_EXPLANATIONS, type Explanation } from './explanations.ts';
import { gatherEvidence, type Place } from './gather.ts';

/** How much likelier, in ln, the readings must be with a blunder than without, before it is named. Source: feasibility figures. */
const TAP_THRESHOLD = 2;
const THRESHOLD = 4;
/** With more rows than this a search through all of them is left out. */
const MOST_ROWS = 20;
/** From so many rows on, one that does not fit can be told from the others. */
const FEWEST_ROWS = 3;
/** Amps or watts further off than this, in standard deviations, are worth a word. Source: measured on invented finds. */
const ODD_METER = 4.5;

/**
 * Blunders in home-made readings: rows that do not belong to the others, a level no wheel of the family has, and, only after such a
 * hint, the one mistake that would explain it best, named with the place where it was made.
 * A wrong tap bends all rows alike and gives no hint: it is always tried. Costs a few fits, and after a hint some dozens.
 * @param estimate the curve out of all evidence as it stands
 * Source: comparison of evidence, Laplace's method (C. E. Rasmussen & C. K. I. Williams 2006, 5.2).
 */
export function findBlunders(blower: Blower, place: Place, estimate: FanEstimate): Warning[] {
  const suspicion = suspicionOf(estimate);
  return blower.evidence.flatMap((piece, i): Warning[] => {
    if (piece.kind !== 'readings' || piece.rows.length === 0) return [];
    const path = `${place.path}/evidence/${i}`;
    const odd = suspicion.odd.filter((o) => o.path.startsWith(`${path}/rows/`));
    const oddPressures = piece.rows.length < FEWEST_ROWS ? [] : odd.filter((o) => o.kind === 'pressure');
    const hinted = oddPressures.length > 0 || suspicion.level !== null;
    const refit = (readings: ReadingsEvidence): FanEstimate | null => {
      if (checkReadings(readings, path).length > 0) return null;
      const evidence = blower.evidence.map((e, k) => (k === i ? readings : e));
      const found = estimateFan(gatherEvidence({ ...blower, evidence }, place).evidence);
      const complete = found?.posterior.checks.length === estimate.posterior.checks.length;
      return complete ? found : null;
    };
    const best = likeliest(piece, hinted, estimate.posterior.lnEvidence, refit);
    if (best) return [{ code: best.code, text: best.text, path: path + best.path }];
    const stranger =
      oddPressures.length > 0 ? strangerAmong(gatherEvidence(blower, place).evidence, estimate, oddPressures) : null;
    if (stranger !== null) return [rowDoubtful(piece, stranger)];
    if (suspicion.level !== null) return [levelUnusual(suspicion.level, path)];
    const meter = odd.find((o) => o.kind === 'power' && Math.abs(o.leftOut) > ODD_METER);
    return meter ? [meterDoubtful(meter.path)] : [];
  });
}

/** The explanation that makes the readings likeliest, where it does so by far: by more where even then they scatter. */
function likeliest(
  readings: ReadingsEvidence,
  hinted: boolean,
  before: number,
  refit: (readings: ReadingsEvidence) => FanEstimate | null,
): Explanation | null {
  const makers = [
    ...TAP_EXPLANATIONS.map((make) => ({ make, threshold: TAP_THRESHOLD })),
    ...(hinted && readings.rows.length <= MOST_ROWS ? EXPLANATIONS : []).map((make) => ({
      make,
      threshold: THRESHOLD,
    })),
  ];
  let best: { explanation: Explanation | null; gain: number } = { explanation: null, gain: 0 };
  for (const { make, threshold } of makers)
    for (const explanation of make(readings)) {
      const found = refit(explanation.readings);
      if (found === null) continue;
      const gain = (found.posterior.lnEvidence + explanation.lnStretch - before) / scatterOf(found) ** 2 - threshold;
      if (gain > best.gain) best = { explanation, gain };
    }
  return best.explanation;
}

/** A row that nothing explains: say what to look at. */
function rowDoubtful(readings: ReadingsEvidence, path: string): Warning {
  const hole = readings.rows[Number(path.split('/').at(-1))]?.orificeDiameter_m;
  if (hole != null && hole > 0)
    return {
      code: 'wrong-hole',
      text: 'This row does not fit the others. Measure its hole again, look for leaks at the cap, and read both legs of the tube.',
      path: `${path}/orificeDiameter_m`,
    };
  const text = 'This row does not fit the others. Take it again, and read both legs of the tube.';
  return { code: 'row-doubtful', text, path };
}

const levelUnusual = (level: number, path: string): Warning => ({
  code: 'level-unusual',
  text:
    level < 0
      ? 'These pressures are far below what a wheel of this kind, size and speed makes. Does the belt slip, does the wheel turn backwards, was one leg of the tube read, is the diameter right?'
      : 'These pressures are far above what a wheel of this kind, size and speed makes. Are the wheel’s kind, diameter and speed right, and the unit of the readings?',
  path: `${path}/rows`,
});

const meterDoubtful = (path: string): Warning => ({
  code: 'motor-reading-doubtful',
  text: 'The amps or watts of this row do not fit those of the other rows. Read the meter again: one wire in the clamp, everything else switched off.',
  path,
});
