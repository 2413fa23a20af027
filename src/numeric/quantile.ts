/**
 * Quantile of a sample by linear interpolation between order statistics.
 * @param sorted values in rising order, at least one
 * @param p      0..1
 * Source: R. J. Hyndman & Y. Fan, Am. Statistician 50 (1996) 361–365, definition 7.
 */
export function quantileOfSorted(sorted: ArrayLike<number>, p: number): number {
  const at = p * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (at - low) * (sorted[high]! - sorted[low]!);
}

/** 95 % interval of a sample that is widened, where needed, to hold `best`. */
export function interval95(sample: Float64Array, best: number): [number, number] {
  const sorted = Float64Array.from(sample).sort();
  return [Math.min(best, quantileOfSorted(sorted, 0.025)), Math.max(best, quantileOfSorted(sorted, 0.975))];
}
