import { choleskyFactor, solveLower, solveUpper } from '../../numeric/cholesky.ts';

/** A bent page's side is smooth enough for a polynomial of so many terms, looked at in so many places. */
const TERMS = 6;
const PLACES = 61;
/**
 * How far a printed side may leave it, photo pixels (root mean square). Of 139 sides of 38 invented photos, pages that
 * curl and wave among them, none left it by more than 1.0; a course that steps over to a rule above the plot leaves it by
 * a tenth of the step.
 */
const MOST_OFF_PX = 2.5;

/**
 * Whether a side's course bends as paper does, and does not step from one printed line to another and back.
 * @param at distance across, px, at a distance along the side
 * @param length_px of the side
 * Source: least squares on Chebyshev polynomials, e.g. Press et al., Numerical Recipes, ch. 5 and 15.
 */
export function isGentle(at: (t: number) => number, length_px: number): boolean {
  const rows = Array.from({ length: PLACES }, (_, k) => termsAt((2 * k) / (PLACES - 1) - 1));
  const places = rows.map((_, k) => at((k / (PLACES - 1)) * length_px));
  const square = new Float64Array(TERMS * TERMS);
  const right = new Float64Array(TERMS);
  rows.forEach((row, k) =>
    row.forEach((u, i) => {
      right[i]! += u * places[k]!;
      row.forEach((v, j) => (square[i * TERMS + j]! += u * v));
    }),
  );
  const factor = choleskyFactor(square, TERMS)!;
  solveLower(factor, TERMS, right);
  solveUpper(factor, TERMS, right);
  const off = rows.map((row, k) => places[k]! - row.reduce((sum, u, i) => sum + u * right[i]!, 0));
  return Math.sqrt(off.reduce((sum, v) => sum + v * v, 0) / PLACES) < MOST_OFF_PX;
}

/** Chebyshev polynomials of the first kind at x, -1..1. Source: their recurrence. */
function termsAt(x: number): number[] {
  const out = [1, x];
  while (out.length < TERMS) out.push(2 * x * out.at(-1)! - out.at(-2)!);
  return out;
}
