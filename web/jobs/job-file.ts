import type { Job } from '../../src/job/types.ts';
import { fileName } from './file-name.ts';
import { askWorker } from '../state/worker.ts';
import { openNew } from '../state/bench.ts';

/** A job as a plain file, to carry on a stick or send by message. */
export function saveToFile(job: Job): void {
  const address = URL.createObjectURL(new Blob([JSON.stringify(job, null, 2)], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = `${fileName(job.name)}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** Opens a job file as a job of its own. @returns null when it went well, else why not, in one sentence */
export async function openFromFile(file: File): Promise<string | null> {
  let raw: unknown;
  try {
    raw = JSON.parse(await file.text());
  } catch {
    return '';
  }
  const answer = await askWorker({ kind: 'check', raw });
  if (answer.kind === 'job') {
    openNew(answer.job);
    return null;
  }
  return answer.kind === 'issues' ? (answer.issues[0]?.message ?? '') : '';
}
