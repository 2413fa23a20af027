/**
 * Symmetric positive definite systems whose entries lie within three places of the diagonal, as cubic B-splines give.
 * Stored as n rows of four: `a[4·i + d]` is the entry in row i, column i − d.
 */
export const BAND = 4;

/**
 * Cholesky factor in place, L·Lᵀ = A, in the same storage.
 * @returns false where the matrix is not positive definite
 * Source: G. H. Golub & C. F. Van Loan, Matrix Computations (4th ed. 2013) §4.3.5.
 */
export function factorBand(a: Float64Array, n: number): boolean {
  for (let i = 0; i < n; i++) {
    for (let d = Math.min(i, BAND - 1); d >= 0; d--) {
      const j = i - d;
      let sum = a[BAND * i + d]!;
      for (let k = Math.max(0, i - BAND + 1); k < j; k++) sum -= a[BAND * i + i - k]! * a[BAND * j + j - k]!;
      if (d > 0) a[BAND * i + d] = sum / a[BAND * j]!;
      else if (sum > 0) a[BAND * i] = Math.sqrt(sum);
      else return false;
    }
  }
  return true;
}

/** Solves A·x = b in place, with A's factor from `factorBand`. */
export function solveBand(l: Float64Array, n: number, b: Float64Array): Float64Array {
  for (let i = 0; i < n; i++) {
    let sum = b[i]!;
    for (let k = Math.max(0, i - BAND + 1); k < i; k++) sum -= l[BAND * i + i - k]! * b[k]!;
    b[i] = sum / l[BAND * i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i]!;
    for (let k = i + 1; k < Math.min(n, i + BAND); k++) sum -= l[BAND * k + k - i]! * b[k]!;
    b[i] = sum / l[BAND * i]!;
  }
  return b;
}
