/** A stroke seen less than this was bridged. */
const LEAST_SEEN = 0.2;

/** Runs of points of a trace where no stroke was seen: first and last index of each. */
export function* hiddenStretches(seen: ArrayLike<number>): Generator<[number, number]> {
  let from = -1;
  for (let i = 0; i < seen.length; i++) {
    if (seen[i]! < LEAST_SEEN) {
      if (from < 0) from = i;
    } else {
      if (from >= 0 && i - from > 3) yield [from, i];
      from = -1;
    }
  }
}
