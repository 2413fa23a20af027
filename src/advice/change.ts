import type { ChangeValues, PatchOperation } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import type { JudgedBlower } from '../judge.ts';

/** Something practical that could be changed: what to do in words, and the same as JSON Patch (RFC 6902) on the job. */
export type Change = {
  kind: ChangeKind;
  what: string;
  /** the numbers and names that `what` stands on, units in their names: other languages are made from them */
  values: ChangeValues;
  patch: PatchOperation[];
};

/** What a proposal may look at. */
export type ChangeSituation = {
  job: Job;
  /** place of the blower in the job */
  index: number;
  judged: JudgedBlower;
  /** sections on whose way a machine gets too little or dust may settle, by place in the job */
  short: ReadonlySet<number>;
  /** trunks and branches where dust would settle */
  slow: ReadonlySet<number>;
  /** somewhere more air is wanted */
  needsAir: boolean;
  motorOverloaded: boolean;
};

/** One kind of change: proposals from the smallest to the largest. Adding a kind is one file and one line in `changes/index.ts`. */
export type ChangeMaker = { kind: ChangeKind; propose(situation: ChangeSituation): Omit<Change, 'kind'>[] };

/** Kinds in the order of what they cost a workshop. Common practice, no source. */
export const CHANGE_KINDS = [
  'open-gate',
  'seal-gates',
  'add-gate',
  'throttle',
  'bleed-valve',
  'straightener',
  'shorter-hose',
  'smooth-hose',
  'filters',
  'pulley',
  'wider-pipe',
  'narrower-pipe',
  'motor',
  'belt-drive',
] as const;
export type ChangeKind = (typeof CHANGE_KINDS)[number];

/** Pointer into the job. */
export const at = (...steps: (string | number)[]): string => steps.map((s) => `/${s}`).join('');

/** Sets a field whether or not it is there: `add` on an object member replaces it (RFC 6902 4.1). */
export const set = (path: string, value: unknown): PatchOperation => ({ op: 'add', path, value });
