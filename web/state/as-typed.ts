import type { Job } from '../../src/job/types.ts';
import { withValueAt } from './pointer.ts';

/** A value put into the job together with the words it was typed in; an empty text forgets the words. */
export function withTyped(job: Job, pointer: string, value: unknown, text: string | null): Job {
  const next = withValueAt(job, pointer, value);
  const asTyped = { ...next.asTyped };
  if (text === null || text.trim() === '') delete asTyped[pointer];
  else asTyped[pointer] = text;
  return { ...next, asTyped };
}
