import type { Job } from '../../src/job/types.ts';

/** Where an entry of an array goes in an edit: its new index, or null when it is taken away. */
export type Moves = (index: number) => number | null;

/** What people typed, by JSON Pointer, after the entries of one array have moved: texts follow their entries. */
export function typedMoved(job: Job, array: string, moves: Moves): Record<string, string> {
  const prefix = `${array}/`;
  const kept: Record<string, string> = {};
  for (const [pointer, text] of Object.entries(job.asTyped ?? {})) {
    if (!pointer.startsWith(prefix)) {
      kept[pointer] = text;
      continue;
    }
    const [index = '', ...rest] = pointer.slice(prefix.length).split('/');
    const to = moves(Number(index));
    if (to !== null) kept[[array, to, ...rest].join('/')] = text;
  }
  return kept;
}

/** What people typed, without the texts of values that an edit has changed otherwise. */
export const typedWithout = (job: Job, gone: (pointer: string) => boolean): Record<string, string> =>
  Object.fromEntries(Object.entries(job.asTyped ?? {}).filter(([pointer]) => !gone(pointer)));
