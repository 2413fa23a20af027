import type { BlowerResult } from '../assessment.ts';
import type { Warning } from '../issues/result.ts';
import type { Job } from '../job/types.ts';
import { judge } from '../judge.ts';
import { reason } from '../operate/reasons.ts';

/**
 * The result of a blower whose readings hold a blunder: a verdict that would be another one without the doubted readings
 * is none, and what to measure next is just those. A verdict they do not change stands.
 * @param index of the blower in the job; @param blunders found in its readings, empty where there are none
 */
export function withDoubtedReadings(
  job: Job,
  index: number,
  result: BlowerResult,
  blunders: readonly Warning[],
): BlowerResult {
  const [first] = blunders;
  if (!first) return result;
  const without = verdictWithout(job, index, blunders);
  if (without === result.verdict) return result;
  const said = { as_written: result.verdict, left_out: without ?? 'unsure' };
  return {
    ...result,
    verdict: 'unsure',
    reasons: [reason('readings-doubtful', first.path, said), ...result.reasons],
    measureNext: [
      {
        measurement: 'reading-again',
        text: `${first.text} Take it again, or put right what was written.`,
        values: { code: first.code },
        // what is left out cannot be worse known than what is measured again
        expectedDoubtRemoved: without === 'unsure' || without === null ? 0 : 1,
        detail: { path: first.path, code: first.code },
      },
      ...result.measureNext,
    ],
    remedies: [],
  };
}

/** What the blower would be judged without the doubted rows or tests; null where nothing is left to judge by. */
function verdictWithout(job: Job, index: number, blunders: readonly Warning[]): BlowerResult['verdict'] | null {
  const blower = job.blowers[index]!;
  const at = `/blowers/${index}/evidence/`;
  const places = blunders
    .filter(({ path }) => path.startsWith(at))
    .map(({ path }) => path.slice(at.length).split('/'))
    .map(([piece, rows, row]) => ({ piece: Number(piece), row: rows === 'rows' && row ? Number(row) : null }));
  const evidence = blower.evidence.flatMap((piece, i) => {
    const here = places.filter((place) => place.piece === i);
    if (piece.kind !== 'readings' || here.length === 0) return [piece];
    if (here.some(({ row }) => row === null)) return [];
    const rows = piece.rows.filter((_, k) => !here.some(({ row }) => row === k));
    return rows.length > 0 ? [{ ...piece, rows }] : [];
  });
  if (evidence.length === 0) return null;
  const alone: Job = { ...job, blowers: [{ ...blower, evidence }] };
  return judge(alone).assessment.blowers[0]!.verdict;
}
