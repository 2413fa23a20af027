import { computed } from '@preact/signals';
import type { Warning } from '../../src/issues/result.ts';
import { answered, foundAtRest, isSame } from './assessment.ts';
import { job } from './job.ts';
import { valueAt } from './pointer.ts';

/**
 * What is doubted about the job as typed. A blunder named while the hand rested stays where it is while the next figure is
 * typed, until the readings are looked at again or its row is gone: a remark that comes and goes is not read.
 */
export const remarks = computed<readonly Warning[]>(() => {
  const quick = answered.value?.assessment.warnings ?? [];
  const kept = foundAtRest.value.filter(
    (found) => !quick.some((q) => isSame(q, found)) && valueAt(job.value, found.path) !== undefined,
  );
  return [...quick, ...kept];
});

/** Remarks about a field and what lies below it. */
export const remarksAt = (path: string): Warning[] =>
  remarks.value.filter((warning) => warning.path === path || warning.path.startsWith(`${path}/`));
