import { choleskyFactor, solveLower } from './cholesky.ts';
import { normalQuantile } from './normal.ts';

/**
 * Standard normal deviates, `count` draws of `dimensions` numbers, the same for the same arguments.
 *
 * Each dimension is sampled evenly (a Latin hypercube), draws come in mirrored pairs (z, −z), and the first dimensions are
 * freed of chance correlation, so that means and variances of anything linear in them are exact and chances settle fast.
 * @returns row-major count × dimensions; shared between callers, not to be written to
 * Sources: M. D. McKay, R. J. Beckman & W. J. Conover, Technometrics 21 (1979) 239–245 (Latin hypercube);
 * R. L. Iman & W. J. Conover, Commun. Stat. B 11 (1982) 311–334 (correlation taken out by a triangular factor);
 * J. M. Hammersley & K. W. Morton, Math. Proc. Camb. Phil. Soc. 52 (1956) 449–475 (mirrored draws).
 */
export function normalDeviates(count: number, dimensions: number, seed = 1): Float64Array {
  const key = `${count}/${dimensions}/${seed}`;
  let found = made.get(key);
  if (found === undefined) {
    if (made.size >= KEPT) made.clear();
    found = makeDeviates(count, dimensions, seed);
    made.set(key, found);
  }
  return found;
}

/** The last few tables: the same draws serve every case and every remedy. */
const made = new Map<string, Float64Array>();
const KEPT = 8;
const UNCORRELATED = 40;

function makeDeviates(count: number, dimensions: number, seed: number): Float64Array {
  const half = Math.ceil(count / 2);
  const strata = Float64Array.from({ length: half }, (_, i) => normalQuantile((i + 0.5) / half));
  const out = new Float64Array(count * dimensions);
  const random = splitMix32(seed);
  const column = new Float64Array(half);
  for (let j = 0; j < dimensions; j++) {
    column.set(strata);
    for (let i = half - 1; i > 0; i--) {
      const k = Math.floor(random() * (i + 1));
      const kept = column[i]!;
      column[i] = column[k]!;
      column[k] = kept;
    }
    for (let i = 0; i < half; i++) out[i * dimensions + j] = column[i]!;
  }
  const clean = Math.min(dimensions, UNCORRELATED, half >> 2);
  uncorrelate(out, half, dimensions, clean);
  for (let i = 0; i + half < count; i++)
    for (let j = 0; j < dimensions; j++) out[(i + half) * dimensions + j] = -out[i * dimensions + j]!;
  return out;
}

/** Makes the first `clean` columns of the first `rows` rows exactly uncorrelated with unit mean square. */
function uncorrelate(z: Float64Array, rows: number, width: number, clean: number) {
  const covariance = new Float64Array(clean * clean);
  for (let i = 0; i < rows; i++)
    for (let a = 0; a < clean; a++)
      for (let b = 0; b <= a; b++) covariance[a * clean + b]! += (z[i * width + a]! * z[i * width + b]!) / rows;
  const factor = choleskyFactor(covariance, clean);
  if (factor === null) return;
  const row = new Float64Array(clean);
  for (let i = 0; i < rows; i++) {
    for (let a = 0; a < clean; a++) row[a] = z[i * width + a]!;
    solveLower(factor, clean, row);
    for (let a = 0; a < clean; a++) z[i * width + a] = row[a]!;
  }
}

/** Uniform numbers in [0, 1) from a 32-bit state. Source: G. L. Steele et al., OOPSLA 2014 (SplitMix), 32-bit form. */
function splitMix32(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let t = state ^ (state >>> 16);
    t = Math.imul(t, 0x21f0aaad);
    t ^= t >>> 15;
    t = Math.imul(t, 0x735a2d97);
    t ^= t >>> 15;
    return (t >>> 0) / 4294967296;
  };
}
