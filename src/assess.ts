import { withDoubtedReadings } from './advice/doubted-readings.ts';
import { measurementsToTake } from './advice/measure-next.ts';
import { remediesFor } from './advice/remedies.ts';
import type { Assessment } from './assessment.ts';
import type { Job } from './job/types.ts';
import { findBlunders } from './evidence/blunders.ts';
import { judge, placeOf, pricesIn } from './judge.ts';
import { ranked } from './operate/judge-blower.ts';
import { withMends } from './advice/mends.ts';

/**
 * Everything the program concludes from a job: the judgement of every blower, what to measure next where it is unsure,
 * the smallest changes that would make a no or a not-sure a yes, and what would keep dust from settling. Pure and deterministic: the same job gives the same bytes.
 * @param job a checked job (`checkJob`)
 */
export function assess(job: Job): Assessment {
  const judgement = judge(job);
  const { air, warnings } = judgement.assessment;
  const blunders = judgement.blowers.map(({ candidate: { blower, estimate } }, i) =>
    estimate === null ? [] : findBlunders(blower, placeOf(job, air, i), estimate),
  );
  const results = judgement.assessment.blowers.map((result, i) =>
    withDoubtedReadings(
      job,
      i,
      {
        ...result,
        measureNext: result.verdict === 'unsure' ? measurementsToTake(job, judgement, i) : [],
        remedies: result.verdict === 'yes' ? [] : remediesFor(job, judgement, i),
      },
      blunders[i]!,
    ),
  );
  const blowers = ranked(results, pricesIn(job));
  const cases = withMends(job, judgement);
  return { ...judgement.assessment, cases, blowers, warnings: [...warnings, ...blunders.flat()] };
}
