/**
 * The chain of cells, one per column, that gathers most reward while moving at most one row from column to column.
 * @param reward columns × rows, column by column
 * @param bend   what a move to a neighbouring row costs, in units of reward
 * @returns the row in each column, and the reward gathered
 * Source: definition (dynamic programming over columns, R. Bellman 1957).
 */
export function bestPath(
  reward: Float32Array,
  columns: number,
  rows: number,
  bend: number,
): { row: Int16Array; gathered: number } {
  const from = new Int8Array(columns * rows);
  let previous = reward.slice(0, rows);
  for (let c = 1; c < columns; c++) {
    const next = new Float32Array(rows);
    const base = c * rows;
    for (let r = 0; r < rows; r++) {
      let best = previous[r]!;
      let step = 0;
      if (r > 0 && previous[r - 1]! - bend > best) {
        best = previous[r - 1]! - bend;
        step = -1;
      }
      if (r + 1 < rows && previous[r + 1]! - bend > best) {
        best = previous[r + 1]! - bend;
        step = 1;
      }
      next[r] = best + reward[base + r]!;
      from[base + r] = step;
    }
    previous = next;
  }
  let end = 0;
  for (let r = 1; r < rows; r++) if (previous[r]! > previous[end]!) end = r;
  const row = new Int16Array(columns);
  row[columns - 1] = end;
  for (let c = columns - 1; c > 0; c--) row[c - 1] = row[c]! + from[c * rows + row[c]!]!;
  return { row, gathered: previous[end]! };
}
