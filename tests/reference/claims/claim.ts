/** A row of a reference file as JSON has it. */
export type Row = Record<string, any>;

/** What is known of a coefficient: the centre, one relative standard deviation, and a difference too small to matter. */
export type Known = { k: number; doubt: number; floor?: number };

/**
 * What the program makes of some rows of a reference file: one of its own table rows (`is`, to the file's tolerance), a
 * source that disagrees and must lie within two deviations (`near`), or nothing, and why (`aside`).
 */
export type Claim = {
  section: string;
  rows: (row: Row) => boolean;
} & (
  | { is: (row: Row) => [ours: number, theirs: number]; within: number; table: string }
  | { near: (row: Row) => [ours: Known, theirs: number] }
  | { aside: string }
);

/** How many standard deviations a source that disagrees may lie off. */
export const TWO = 2;
