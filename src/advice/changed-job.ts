import jsonPatch, { type Operation } from 'fast-json-patch';
import type { PatchOperation } from '../assessment.ts';
import type { Job } from '../job/types.ts';

const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** The job with a patch (RFC 6902) applied; the job itself stays as it was. */
export const changedJob = (job: Job, patch: readonly PatchOperation[]): Job =>
  jsonPatch.applyPatch(copy(job), copy(patch) as Operation[], false, true).newDocument;
