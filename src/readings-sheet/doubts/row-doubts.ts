import { mostCommon } from '../columns/most-common.ts';
import type { Weighed } from '../columns/weigh-column.ts';

/** What is known of where rows stand, besides their numbers. */
export type RowPlaces = {
  /** for each row: the step to its neighbours is no usual one */
  readonly isDoubtful: readonly boolean[];
  /** nothing stands between the header and the first row where another row would have room */
  readonly isFirstSure: boolean;
};

/** Three numbers in a row are no chance; one that is not even likely says nothing. */
const ENOUGH_NUMBERS = 3;
const LIKELY = 0.5;

/**
 * Which rows may be in a wrong place: where the steps between rows are uneven, where a row does not carry the number its
 * place asks for; and all of them where the first is not the first.
 * @param numbers the column that numbers the rows, null where there is none
 */
export function rowDoubts(
  { isDoubtful, isFirstSure }: RowPlaces,
  numbers: readonly (Weighed | null)[] | null,
): boolean[] {
  const starts = (numbers ?? []).map((read, row) => (read && read.chance > LIKELY ? read.value - row : null));
  const known = starts.filter((start) => start !== null);
  const { value: start, count: agreeing } = mostCommon(known) ?? { value: null, count: 0 };
  const isNumbered = agreeing >= ENOUGH_NUMBERS && agreeing > known.length / 2;
  const isShifted = isNumbered ? start !== 1 : !isFirstSure;
  return isDoubtful.map((is, row) => {
    const own = starts[row] ?? null;
    const isOther = isNumbered && own !== null && own !== start;
    // where its number says so, a row is in its place however uneven the steps
    const isTold = isNumbered && own === start;
    return isShifted || isOther || (is && !isTold);
  });
}

/** One row may have been filled in half and the next the other way round; more of them are one row in two. */
const SPLIT = 2;

/**
 * Whether rows were torn apart: where a sheet was not laid flat one row's cells come to stand in two, each of which has what
 * the other lacks, and no row is where it was written. @param filled for each row which of its cells hold something
 */
export function areTorn(filled: readonly (readonly boolean[])[]): boolean {
  const pairs = filled.slice(1).filter((row, i) => {
    const above = filled[i]!;
    return row.some(Boolean) && above.some(Boolean) && row.every((is, c) => is !== above[c]);
  });
  return pairs.length >= SPLIT;
}
