/**
 * Pairs rows with columns so that the costs add up to the least; a row stays alone where that is cheaper.
 * @param cost one list per row; infinite where the two cannot be a pair. @param alone cost of a row without a partner
 * @returns the column of each row, or null. Source: H. W. Kuhn 1955, by shortest augmenting paths with prices.
 */
export function pairUp(cost: readonly (readonly number[])[], alone: number): (number | null)[] {
  const rows = cost.length;
  const columns = cost[0]?.length ?? 0;
  // a column of its own for every row that stays alone; row and column 0 are the path's start
  const width = columns + rows;
  const price = (row: number, column: number) =>
    column <= columns ? Math.min(cost[row - 1]![column - 1]!, 1e9) : alone;
  const rowPrice = new Float64Array(rows + 1);
  const columnPrice = new Float64Array(width + 1);
  const rowOf = new Int32Array(width + 1);
  for (let start = 1; start <= rows; start++) {
    rowOf[0] = start;
    const least = new Float64Array(width + 1).fill(Infinity);
    const before = new Int32Array(width + 1);
    const done = new Uint8Array(width + 1);
    let column = 0;
    while (rowOf[column] !== 0) {
      done[column] = 1;
      const row = rowOf[column]!;
      let next = 0;
      let step = Infinity;
      for (let c = 1; c <= width; c++) {
        if (done[c]) continue;
        const reduced = price(row, c) - rowPrice[row]! - columnPrice[c]!;
        if (reduced < least[c]!) {
          least[c] = reduced;
          before[c] = column;
        }
        if (least[c]! < step) {
          step = least[c]!;
          next = c;
        }
      }
      for (let c = 0; c <= width; c++) {
        if (done[c]) {
          rowPrice[rowOf[c]!]! += step;
          columnPrice[c]! -= step;
        } else least[c]! -= step;
      }
      column = next;
    }
    for (; column !== 0; column = before[column]!) rowOf[column] = rowOf[before[column]!]!;
  }
  const columnOf: (number | null)[] = Array.from({ length: rows }, () => null);
  for (let c = 1; c <= columns; c++)
    if (rowOf[c]! > 0 && cost[rowOf[c]! - 1]![c - 1]! < 1e9) columnOf[rowOf[c]! - 1] = c - 1;
  return columnOf;
}
