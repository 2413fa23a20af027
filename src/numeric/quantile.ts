/**
 * The k-th smallest value (from 0) of a sample, which is reordered on the way: everything before it is not greater.
 * @param values at least k + 1 numbers, none NaN
 * Source: C. A. R. Hoare, Commun. ACM 4 (1961) 321–322 (FIND).
 */
export function selectSmallest(values: Float64Array, k: number, from = 0): number {
  let low = from;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1]!;
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const kept = values[i]!;
        values[i++] = values[j]!;
        values[j--] = kept;
      }
    }
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else break;
  }
  return values[k]!;
}

/**
 * Quantile of a sample by linear interpolation between order statistics; the sample is reordered.
 * @param p 0..1
 * Source: R. J. Hyndman & Y. Fan, Am. Statistician 50 (1996) 361–365, definition 7.
 */
export function quantile(values: Float64Array, p: number): number {
  const at = p * (values.length - 1);
  const k = Math.floor(at);
  const low = selectSmallest(values, k);
  return at === k ? low : low + (at - k) * (selectSmallest(values, k + 1, k + 1) - low);
}

/** 95 % interval of a sample that is widened, where needed, to hold `best`. */
export function interval95(sample: Float64Array, best: number): [number, number] {
  const values = Float64Array.from(sample);
  return [Math.min(best, quantile(values, 0.025)), Math.max(best, quantile(values, 0.975))];
}
