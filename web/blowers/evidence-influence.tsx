import { signal, useSignalEffect } from '@preact/signals';
import type { Influence } from '../../src/index.ts';
import type { Blower, Job } from '../../src/job/types.ts';
import { answered } from '../state/assessment.ts';
import { askAdvisor } from '../state/worker.ts';
import { texts } from '../texts/index.ts';
import { isolated, sayNumber } from '../words/say.ts';

/** By blower, for the job shown; what belongs to another job stays out of sight. */
const found = signal<Record<string, { job: Job; influence: Influence[] }>>({});
const asked = new WeakMap<Job, Set<string>>();

/** What one piece of evidence does for the band where this shop runs the blower; worked out behind the advice. */
export function EvidenceInfluence({ blower, index }: { blower: Blower; index: number }) {
  useSignalEffect(() => askFor(blower.id));
  const now = found.value[blower.id];
  const influence = now && now.job === answered.value?.job ? now.influence[index] : undefined;
  if (influence?.together == null || influence.without === null) return null;
  return (
    <span class="second block">
      {texts.value.readings.influence(isolated(percent(influence.without)), isolated(percent(influence.together)))}
    </span>
  );
}

function askFor(blowerId: string): void {
  const now = answered.value;
  const blower = now?.job.blowers.find((b) => b.id === blowerId);
  const flow_m3_s = now?.assessment.cases.find((c) => c.blowerId === blowerId && c.operatingPoint)?.operatingPoint
    ?.flow_m3_s;
  if (!now || !blower || flow_m3_s === undefined) return;
  const ofJob = asked.get(now.job) ?? new Set<string>();
  if (ofJob.has(blowerId)) return;
  asked.set(now.job, ofJob.add(blowerId));
  const { site, supply } = now.job;
  void askAdvisor({ kind: 'influence', request: { site, supply, blower }, flow_m3_s }).then((answer) => {
    if (answer.kind !== 'influence' || answered.peek()?.job !== now.job) return;
    found.value = { ...found.peek(), [blowerId]: { job: now.job, influence: answer.influence } };
  });
}

/** Kept on one line by spaces that do not break. */
const percent = (share: number): string => `±\u00a0${sayNumber(100 * share, share < 0.1 ? 1 : 0)}\u00a0%`;
