import type { Assessment, Reason, Remedy } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import { candidateOf } from '../blower-curve.ts';
import { judge, placeOf, type Judgement } from '../judge.ts';
import type { Change } from './change.ts';
import { changedJob } from './changed-job.ts';
import { quickCandidate } from './quick-candidate.ts';
import { remedyOf } from './remedy-words.ts';
import { findChanges, type Looks, type Tried } from './search.ts';
import { shortfallOf, yardstickOf } from './shortfall.ts';
import { worthChanging } from './situation.ts';
import { tightPlans, withPlans } from './tight-plans.ts';

/**
 * The smallest practical changes that turn a blower's no or not-sure into a yes. Every one is judged by the program itself on
 * the changed job; none that passes trades one failure for another.
 */

/** Draws for a rough look: the search goes by the middle, they only tell how wide the curve's doubt is. */
const LOOK_DRAWS = 96;
/** A shop of more sections would take longer than anybody waits. */
const MOST_SECTIONS = 60;

/**
 * Work one search may do, in rough looks at one case of a shop of twenty sections: a few seconds on a small machine. Counted, not
 * timed, so that the same job gives the same answer everywhere.
 */
const WORK = 4000;
const THOROUGH_COSTS_LOOKS = 4;
const NEW_CURVE_COSTS_LOOKS = 12;

/** How many looks each of so many blowers in doubt may cost in this shop, so many plans at a time. */
const looksAllowed = (job: Job, { assessment }: Judgement, plans: number): number => {
  const inDoubt = assessment.blowers.filter((b) => b.verdict !== 'yes').length;
  const states = new Set(assessment.cases.map((c) => c.filterState)).size;
  // and the heaviest plan for the motor
  const cases = (plans + 1) * states;
  return Math.floor(WORK / (cases * ((job.ductwork.sections.length + 20) / 20)) / inDoubt);
};

/** @param index place of the blower in the job */
export function remediesFor(job: Job, judgement: Judgement, index: number): Remedy[] {
  const own = ownAssessment(judgement, index);
  if (job.ductwork.sections.length > MOST_SECTIONS || !worthChanging(own)) return [];
  const by = yardstickOf(own);
  const plans = tightPlans(own, by);
  let left = looksAllowed(job, judgement, plans.size);
  const spend = (looks: number): boolean => (left -= looks) >= 0;
  const { air } = judgement.assessment;
  const { candidate } = judgement.blowers[index]!;
  const rough = candidateOf(job.blowers[index]!, placeOf(job, air, index), LOOK_DRAWS);
  const reasonsNow = troubles(own.blowers[0]!.reasons);
  const remedies = new Map<readonly Change[], Remedy>();

  const judged = (changed: Job, changes: Change[]): Tried => {
    const known = quickCandidate(rough, changed, air, index);
    const { blowers, assessment } = judge(
      withPlans(alone(changed, index), plans),
      LOOK_DRAWS,
      new Map([[known.blower.id, known]]),
    );
    return { job: changed, changes, judged: blowers[0]!, assessment, lacking: shortfallOf(assessment, by) };
  };
  const looks: Looks = {
    look: (before, change) =>
      spend(1) ? judged(changedJob(before.job, change.patch), [...before.changes, change]) : null,
    confirm({ job: changed, changes }) {
      if (!spend(THOROUGH_COSTS_LOOKS)) return null;
      const id = job.blowers[index]!.id;
      const known = quickCandidate(candidate, changed, air, index);
      const first = judge(alone(changed, index), undefined, new Map([[id, known]])).assessment;
      if (first.blowers[0]!.verdict !== 'yes') return false;
      const curveStays = changes.every((c) => c.patch.every(({ path }) => !CURVE_HANGS_ON.test(path)));
      if (!curveStays && !spend(NEW_CURVE_COSTS_LOOKS)) return null;
      const after = curveStays ? first : judge(alone(changed, index)).assessment;
      const { verdict, reasons } = after.blowers[0]!;
      if (verdict !== 'yes' || [...troubles(reasons)].some((code) => !reasonsNow.has(code))) return false;
      remedies.set(changes, remedyOf(judgement, job, index, changes, after));
      return true;
    },
  };
  return findChanges(judged(job, []), index, by, looks).map((changes) => remedies.get(changes)!);
}

/** The outlet of a blower nobody measured is guessed from the run behind it. */
const CURVE_HANGS_ON = /^\/(blowers|ductwork\/discharge)\//;

/** The same job with this one blower in it. */
const alone = (job: Job, index: number): Job => ({ ...job, blowers: [job.blowers[index]!] });

/** Codes of whatever is more than a note. */
const troubles = (reasons: readonly Reason[]): Set<string> =>
  new Set(reasons.filter((r) => r.severity !== 'note').map((r) => r.code));

function ownAssessment({ assessment }: Judgement, index: number): Assessment {
  const blower = assessment.blowers[index]!;
  return {
    ...assessment,
    blowers: [blower],
    cases: assessment.cases.filter((c) => c.blowerId === blower.blowerId),
  };
}
