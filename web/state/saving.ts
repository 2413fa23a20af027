import type { Job } from '../../src/job/types.ts';
import type { Answer } from '../api.ts';

/** `conflict`: somebody saved another version since; nothing is overwritten until the user chooses. */
export type SaveState = 'idle' | 'saving' | 'saved' | 'offline' | 'refused' | 'conflict';

type Put = (jobId: string, job: Job, etag: string | null) => Promise<Answer<unknown>>;

/**
 * Puts valid jobs on disk, one call at a time, the newest last. A failed call loses nothing: the job stays in the
 * browser's drafts and is tried again with `retry`.
 */
export function createSaver(put: Put, onChange: (state: SaveState, jobId: string, etag: string | null) => void) {
  let waiting: { jobId: string; job: Job } | null = null;
  let failed: { jobId: string; job: Job } | null = null;
  let busy: Promise<void> | null = null;
  const etags = new Map<string, string | null>();

  async function work(): Promise<void> {
    while (waiting) {
      const { jobId, job } = waiting;
      waiting = null;
      onChange('saving', jobId, etags.get(jobId) ?? null);
      const answer = await put(jobId, job, etags.get(jobId) ?? null);
      if (answer.ok) {
        etags.set(jobId, answer.etag);
        failed = null;
        onChange('saved', jobId, answer.etag);
      } else {
        failed = { jobId, job };
        onChange(stateOf(answer.problem.status), jobId, etags.get(jobId) ?? null);
      }
    }
    busy = null;
  }

  return {
    /** The version on disk a job was opened from. */
    knows(jobId: string, etag: string | null): void {
      etags.set(jobId, etag);
    },
    save(jobId: string, job: Job): void {
      waiting = { jobId, job };
      busy ??= work();
    },
    retry(): void {
      if (failed && !waiting) waiting = failed;
      if (waiting) busy ??= work();
    },
    /** Leave the other version behind: the next save is unconditional. */
    overwrite(jobId: string): void {
      etags.set(jobId, null);
      this.retry();
    },
    async settled(): Promise<void> {
      while (busy) await busy;
    },
  };
}

function stateOf(status: number): SaveState {
  if (status === 412) return 'conflict';
  if (status === 400 || status === 413 || status === 422) return 'refused';
  return 'offline';
}
