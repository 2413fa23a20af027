/**
 * Lower Cholesky factor L of a symmetric positive definite matrix, A = L·Lᵀ.
 * @param a row-major n × n, only the lower triangle is read
 * @returns row-major L, or null where a pivot is not positive (the matrix is not positive definite)
 * Source: G. H. Golub & C. F. Van Loan, Matrix Computations (4th ed. 2013) §4.2.
 */
export function choleskyFactor(a: Float64Array, n: number): Float64Array | null {
  const l = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= l[i * n + k]! * l[j * n + k]!;
      if (i === j) {
        if (!(sum > 0)) return null;
        l[j * n + j] = Math.sqrt(sum);
      } else {
        l[i * n + j] = sum / l[j * n + j]!;
      }
    }
  }
  return l;
}

/** Solves L·y = b in place. */
export function solveLower(l: Float64Array, n: number, b: Float64Array): Float64Array {
  for (let i = 0; i < n; i++) {
    let sum = b[i]!;
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * b[k]!;
    b[i] = sum / l[i * n + i]!;
  }
  return b;
}

/** Solves Lᵀ·x = b in place: turns independent unit deviates into deviates with covariance (L·Lᵀ)⁻¹. */
export function solveUpper(l: Float64Array, n: number, b: Float64Array): Float64Array {
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i]!;
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i]! * b[k]!;
    b[i] = sum / l[i * n + i]!;
  }
  return b;
}
