/** A point of a column: its row, its value and how surely it is that value. */
export type Known = { readonly row: number; readonly value: number; readonly weight: number };

/** What a column would hold in a row if it went on smoothly, and how far values usually stand off that. */
export type Foreseen = { readonly value: number; readonly spread: number };

const REACH_ROWS = 2.2;
/** Readings are not smoother than this share of the column's range. */
const LEAST_SPREAD = 0.012;

/**
 * What one row of a column should hold, from the rows around it: a parabola through them, near ones counting most.
 * The spread is what the same guess misses the other rows by.
 * @returns null where fewer than four others are known
 * Source: W. S. Cleveland, Robust locally weighted regression, J. Am. Stat. Assoc. 74 (1979).
 */
export function foreseen(row: number, column: readonly Known[]): Foreseen | null {
  const others = column.filter((k) => k.row !== row && k.weight > 0.2);
  if (others.length < 4) return null;
  const value = localFit(row, others);
  const misses = others
    .map((k) =>
      Math.abs(
        k.value -
          localFit(
            k.row,
            others.filter((o) => o !== k),
          ),
      ),
    )
    .sort((a, b) => a - b);
  const values = others.map((k) => k.value);
  const range = Math.max(...values) - Math.min(...values);
  const isEnd = row < Math.min(...others.map((k) => k.row)) || row > Math.max(...others.map((k) => k.row));
  const spread = Math.max(1.5 * misses[misses.length >> 1]!, LEAST_SPREAD * range, 1e-9);
  return { value, spread: isEnd ? 2.5 * spread : spread };
}

/** Weighted parabola at a row; straight where too few rows are near. */
function localFit(row: number, points: readonly Known[]): number {
  const m = new Float64Array(9);
  const v = new Float64Array(3);
  for (const { row: r, value, weight } of points) {
    const s = r - row;
    const w = weight * Math.exp(-0.5 * (s / REACH_ROWS) ** 2) + 1e-6;
    const powers = [1, s, s * s];
    for (let i = 0; i < 3; i++) {
      v[i]! += w * powers[i]! * value;
      for (let j = 0; j < 3; j++) m[3 * i + j]! += w * powers[i]! * powers[j]!;
    }
  }
  // a little stiffness, so that few points bend the parabola little
  m[8]! += 0.3 * m[8]! + 1e-9;
  const solved = solve3(m, v);
  return solved ? solved[0]! : v[0]! / m[0]!;
}

function solve3(m: Float64Array, v: Float64Array): Float64Array | null {
  const rows = [0, 1, 2].map((i) => [m[3 * i]!, m[3 * i + 1]!, m[3 * i + 2]!, v[i]!]);
  for (let c = 0; c < 3; c++) {
    const best = rows.slice(c).reduce((a, b) => (Math.abs(b[c]!) > Math.abs(a[c]!) ? b : a));
    if (Math.abs(best[c]!) < 1e-12) return null;
    rows[rows.indexOf(best)] = rows[c]!;
    rows[c] = best;
    for (let r = 0; r < 3; r++)
      if (r !== c) {
        const f = rows[r]![c]! / best[c]!;
        for (let k = c; k < 4; k++) rows[r]![k]! -= f * best[k]!;
      }
  }
  return Float64Array.from(rows.map((row, i) => row[3]! / row[i]!));
}
