import type { Claim, Row } from './claim.ts';

/** Ways to pick rows of fixtures/reference/fittings.json. */

/** Its tolerance: a program table equals its declared source to 0.01. */
export const TABLE = 0.01;

export const called = (name: string) => (row: Row) => row.fitting === name;
export const method =
  (...names: string[]) =>
  (row: Row) =>
    names.includes(row.method);
export const not = (pick: (row: Row) => boolean) => (row: Row) => !pick(row);
export const both = (a: (row: Row) => boolean, b: (row: Row) => boolean) => (row: Row) => a(row) && b(row);

/** Rows of one name that are one number of the program. */
export const one = (section: string, name: string, table: string, ours: () => { k: number }): Claim => ({
  section,
  rows: called(name),
  table,
  within: TABLE,
  is: (row) => [ours().k, row.K],
});
