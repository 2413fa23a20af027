import type { Evidence, Job } from '../../src/job/types.ts';
import { textsWithout } from '../state/pointer.ts';

/** The job without what this photo said of a blower in evidence of one kind, and without the words typed about it. */
export function withoutPhoto(job: Job, blowerId: string, photoId: string, kind: Evidence['kind']): Job {
  const at = job.blowers.findIndex((blower) => blower.id === blowerId);
  const blower = job.blowers[at];
  if (!blower) return job;
  let asTyped = job.asTyped ?? {};
  const evidence = [...blower.evidence];
  for (let i = evidence.length - 1; i >= 0; i -= 1) {
    const piece = evidence[i];
    if (!piece || piece.kind !== kind || !('photoId' in piece) || piece.photoId !== photoId) continue;
    evidence.splice(i, 1);
    asTyped = textsWithout(asTyped, `/blowers/${at}/evidence`, i);
  }
  return { ...job, blowers: job.blowers.map((b) => (b === blower ? { ...b, evidence } : b)), asTyped };
}
