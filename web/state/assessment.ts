import { batch, computed, effect, signal } from '@preact/signals';
import type { Assessment } from '../../src/assessment.ts';
import type { Issue, Warning } from '../../src/issues/result.ts';
import type { Job } from '../../src/job/types.ts';
import { createLatest } from './latest.ts';
import { job, jobId } from './job.ts';
import type { PointsByBlower } from './worker-protocol.ts';
import { askAdvisor, askWorker } from './worker.ts';

/** The last good answer and the job it was worked out from; they stay while the next is being worked out. */
export const answered = signal<{ job: Job; assessment: Assessment; points: PointsByBlower } | null>(null);
export const assessment = computed<Assessment | null>(() => answered.value?.assessment ?? null);
/** why the job as it stands cannot be worked out; empty when it can */
export const issues = signal<Issue[]>([]);
/** the answer shown is not yet the answer to what is typed */
export const thinking = signal(false);
/** the core itself failed: said plainly, nothing is lost */
export const trouble = signal<string | null>(null);

/** what only the slow look at the readings finds: it stays beside quicker answers until the next slow look */
export const foundAtRest = signal<readonly Warning[]>([]);

/** Puts the answers of another job away: they must not stand beside this one. */
export function forgetAnswers(): void {
  batch(() => {
    answered.value = null;
    foundAtRest.value = [];
    issues.value = [];
    trouble.value = null;
  });
}

/** Keeps the assessment in step with the job; `onValid` hears of every job that passed the check. */
export function followJob(onValid: (job: Job) => void): void {
  const latest = createLatest(
    (wanted: Job) => askWorker({ kind: 'judge', job: wanted, points: true }),
    (answer, question, more) =>
      batch(() => {
        thinking.value = more;
        if (answer.kind === 'assessment') {
          answered.value = { job: answer.job, assessment: answer.assessment, points: answer.points };
          issues.value = [];
          trouble.value = null;
          onValid(question);
          if (!more) adviseSoon(answer.job, answer.assessment);
        } else if (answer.kind === 'issues') {
          issues.value = answer.issues;
          trouble.value = null;
        } else if (answer.kind === 'trouble') {
          trouble.value = answer.detail;
        }
      }),
    (error) => {
      thinking.value = false;
      trouble.value = String(error);
    },
  );
  effect(() => {
    if (jobId.value === '') return;
    thinking.value = true;
    latest.want(job.value);
  });
}

/** A pause in typing this long, and the search for advice begins [ms]. */
const QUIET_ms = 350;
let quiet: ReturnType<typeof setTimeout> | undefined;
/** the search for what to measure or change goes on */
export const advising = signal(false);

const advisor = createLatest(
  (wanted: Job) => askAdvisor({ kind: 'advise', job: wanted }),
  (answer, question, more) => {
    advising.value = more;
    const shown = answered.peek();
    if (answer.kind === 'assessment' && shown?.job === question) {
      const quick = shown.assessment.warnings;
      batch(() => {
        foundAtRest.value = answer.assessment.warnings.filter((w) => !quick.some((q) => isSame(q, w)));
        answered.value = { ...shown, assessment: answer.assessment };
      });
    }
  },
  () => {
    advising.value = false;
  },
);

/** Whether two remarks say the same about the same field. */
export const isSame = (a: Warning, b: Warning): boolean => a.code === b.code && a.path === b.path;

/** What to measure or change follows when the hand rests; the verdict does not wait for it. */
function adviseSoon(judged: Job, { blowers, cases }: Assessment): void {
  clearTimeout(quiet);
  const settles = cases.some(({ sections }) => sections.some(({ judged, ok }) => judged && !ok));
  advising.value = settles || blowers.some((b) => b.verdict !== 'yes');
  // blunders in readings are looked for then too, so a yes is looked at again as well
  quiet = setTimeout(() => advisor.want(judged), QUIET_ms);
}

/** Issues at a field or below it. */
export const issuesAt = (pointer: string): Issue[] =>
  issues.value.filter((issue) => issue.path === pointer || issue.path.startsWith(`${pointer}/`));
