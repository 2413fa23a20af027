import type { Job } from '../../src/job/types.ts';
import type { PhotoWork } from '../photo/photo-work.ts';

/**
 * What somebody is working on: the job, and beside it the photos that are still being read
 * (corners, axes, taps), which are no part of the job until their curve is used.
 */
export type Doc = { job: Job; photos: Record<string, PhotoWork> };

/** Texts that are not (yet) a value, by JSON Pointer into the job: "12 m", a row without its tube reading. */
export type HalfTyped = Record<string, string>;
