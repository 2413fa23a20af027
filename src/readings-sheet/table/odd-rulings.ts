import { crossing } from '../../picture/lines/line-webs.ts';
import type { PageLine } from '../../picture/lines/page-lines.ts';

/**
 * A fold runs on to the paper's edges: this share of the table further than its rulings usually do, and on the other
 * side still so much. */
const FURTHER = 0.14;
const ON_BOTH_SIDES = 0.05;
/** Two rows that are both lower than this share of a usual one, and together about one, are one with a line in it. */
const LOW = 0.72;
const REGULAR = 0.16;
const LEAST_REGULAR = 4;

/**
 * Leaves out lines that cross a table and are none of its rulings: folds, which run on beyond it, and what cuts a row of
 * usual height in two. @param lines of one direction, in their order @param others those that cross them
 */
export function withoutOdd<L extends PageLine>(lines: readonly L[], others: readonly PageLine[]): L[] {
  return withoutCuts(withoutFolds(lines, others), others);
}

function withoutFolds<L extends PageLine>(lines: readonly L[], others: readonly PageLine[]): readonly L[] {
  if (lines.length < 4 || others.length < 2) return lines;
  const beyond = lines.map((line) => {
    const ends = others.map((o) => meeting(line, o));
    const [first, last] = [Math.min(...ends), Math.max(...ends)];
    const both = [first - line.from, line.to - last].map((length) => length / (last - first));
    return { less: Math.min(...both), more: Math.max(...both) };
  });
  const [less, more] = [middleOf(beyond.map((b) => b.less)), middleOf(beyond.map((b) => b.more))];
  return lines.filter((_, i) => beyond[i]!.less < less + ON_BOTH_SIDES || beyond[i]!.more < more + FURTHER);
}

function withoutCuts<L extends PageLine>(lines: readonly L[], others: readonly PageLine[]): L[] {
  const kept = [...lines];
  if (kept.length < 5 || !others.length) return kept;
  const other = others[others.length >> 1]!;
  const at = (line: PageLine) => meeting(other, line);
  const steps = () => kept.slice(1).map((line, i) => at(line) - at(kept[i]!));
  const usual = middleOf(steps());
  // only where rows are as high as each other can one be told to be cut
  const regular = steps().filter((step) => Math.abs(step / usual - 1) < REGULAR);
  if (regular.length < LEAST_REGULAR) return kept;
  // the first row is the header's
  for (let i = 2; i < kept.length - 1;) {
    const [above, below] = [at(kept[i]!) - at(kept[i - 1]!), at(kept[i + 1]!) - at(kept[i]!)];
    const whole = (above + below) / usual;
    if (above < LOW * usual && below < LOW * usual && whole > 0.7 && whole < 1.3) kept.splice(i, 1);
    else i++;
  }
  return kept;
}

/** Where along a line it meets another. */
function meeting(line: PageLine, other: PageLine): number {
  const found = line.upright ? crossing(line, other) : crossing(other, line);
  return found ? found[line.upright ? 1 : 0] : line.middle;
}

const middleOf = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[list.length >> 1]!;
