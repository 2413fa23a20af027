import type { Spelling } from '../cells/read-number.ts';
import { foreseen, type Known } from './smooth.ts';
import { weighColumn } from './weigh-column.ts';

/**
 * How well the readings of a column go with each other: the logarithm of how likely each is where the others are known,
 * their sum. Only differences between two ways to read one column mean anything. @param cells spellings of each row
 */
export function columnFit(cells: readonly (readonly Spelling[])[]): number {
  const known = weighColumn(cells, false).flatMap((read, row): Known[] =>
    read ? [{ row, value: read.value, weight: read.chance }] : [],
  );
  return known.reduce((sum, { row, value }) => {
    const guess = foreseen(row, known);
    if (!guess) return sum;
    return sum - Math.log(guess.spread) - Math.log(1 + ((value - guess.value) / guess.spread) ** 2);
  }, 0);
}
