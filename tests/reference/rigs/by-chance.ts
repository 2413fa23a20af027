/** A bound is called missed only where chance alone would miss it once in two hundred times. */
const BY_CHANCE = 0.005;

/** Chance of at most so many hits in n trials of chance p. */
function atMost(hits: number, n: number, p: number): number {
  let sum = 0;
  let lnTerm = n * Math.log(1 - p);
  for (let k = 0; k <= hits; k++) {
    sum += Math.exp(lnTerm);
    lnTerm += Math.log(((n - k) / (k + 1)) * (p / (1 - p)));
  }
  return sum;
}

/** So many of n are not too few for a share of at least p. */
export const heldAtLeast = (held: number, n: number, p: number): boolean => atMost(held, n, p) > BY_CHANCE;
/** So many of n are not too many for a share of at most p. */
export const heldAtMost = (held: number, n: number, p: number): boolean => atMost(n - held, n, 1 - p) > BY_CHANCE;
