import { assess, checkJob, evidencePoints, influenceOfEvidence, judge } from '../../src/index.ts';
import type { Job } from '../../src/job/types.ts';
import type { PointsByBlower, WorkerAnswer, WorkerQuestion } from './worker-protocol.ts';

/** Runs the core away from the page, so that no answer ever costs a frame. */
function answer(question: WorkerQuestion): WorkerAnswer {
  switch (question.kind) {
    case 'judge': {
      const checked = checkJob(question.job);
      if (!checked.ok) return { kind: 'issues', issues: checked.issues };
      const points = question.points ? pointsOf(checked.value) : {};
      return { kind: 'assessment', job: checked.value, assessment: judge(checked.value).assessment, points };
    }
    case 'advise': {
      const checked = checkJob(question.job);
      if (!checked.ok) return { kind: 'issues', issues: checked.issues };
      return { kind: 'assessment', job: checked.value, assessment: assess(checked.value), points: {} };
    }
    case 'influence':
      return { kind: 'influence', influence: influenceOfEvidence(question.request, question.flow_m3_s) };
    case 'check': {
      const checked = checkJob(question.raw);
      return checked.ok ? { kind: 'job', job: checked.value } : { kind: 'issues', issues: checked.issues };
    }
  }
}

const pointsOf = ({ blowers, site, supply, ductwork }: Job): PointsByBlower =>
  Object.fromEntries(blowers.map((blower) => [blower.id, evidencePoints(blower, { site, supply, ductwork })]));

addEventListener('message', ({ data }: MessageEvent<{ id: number; question: WorkerQuestion }>) => {
  let reply: WorkerAnswer;
  try {
    reply = answer(data.question);
  } catch (error) {
    reply = { kind: 'trouble', detail: error instanceof Error ? error.message : String(error) };
  }
  postMessage({ id: data.id, answer: reply });
});
