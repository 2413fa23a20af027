import type { Job } from '../../src/job/types.ts';
import type { PhotoWork } from '../photo/photo-work.ts';
import type { PlateWork } from '../plate/plate-work.ts';
import type { SheetWork } from '../sheet/sheet-work.ts';

/**
 * What somebody is working on: the job, and beside it the photos that are being read: charts (corners, axes, taps), plates
 * and sheets of readings. They are no part of the job until they are taken over.
 */
export type Doc = {
  job: Job;
  photos: Record<string, PhotoWork>;
  plates?: Record<string, PlateWork>;
  sheets?: Record<string, SheetWork>;
};

/** Texts that are not (yet) a value, by JSON Pointer into the job: "12 m", a row without its tube reading. */
export type HalfTyped = Record<string, string>;
