/** A loss coefficient on a velocity pressure, how surely it is known, and who says so. */
export type Coefficient = {
  /** loss / velocity pressure [-] */
  k: number;
  /** one relative standard deviation, from the spread between sources [-] */
  doubt: number;
  source: string;
};

/** A table of one variable: `[x, k]` rows, x rising. */
export type Rows = readonly (readonly [x: number, k: number])[];

/** Straight line between the rows; the first and last row hold beyond the ends. */
export function alongRows(rows: Rows, x: number): number {
  const [first, last] = [rows[0], rows[rows.length - 1]];
  if (first === undefined || last === undefined) throw new RangeError('alongRows: expected at least one row');
  if (x <= first[0]) return first[1];
  let below = first;
  for (const row of rows) {
    if (x < row[0]) return below[1] + ((x - below[0]) / (row[0] - below[0])) * (row[1] - below[1]);
    below = row;
  }
  return last[1];
}
