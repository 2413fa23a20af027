import type { FittedLine } from '../../picture/lines/fit-lines.ts';
import type { PageLine } from '../../picture/lines/page-lines.ts';

/** A ruling goes as far as so many points in a row are on average this share as strong as it usually is. */
const RUN = 10;
const STRONG = 0.45;

/** A line cut to where it is strong: a square of the paper may carry a ruling on, faintly, beyond its end. */
export function strongSpan(line: FittedLine): PageLine {
  const { along, strength } = line.points;
  const n = along.length;
  if (n < 3 * RUN) return line;
  const isStrong = (i: number) => {
    let sum = 0;
    for (let k = i; k < i + RUN; k++) sum += strength[k]!;
    return sum > STRONG * line.strength * RUN;
  };
  let [first, last] = [0, n - RUN];
  while (first < n - RUN && !isStrong(first)) first++;
  while (last > first && !isStrong(last)) last--;
  return first < last ? { ...line, from: along[first]!, to: along[last + RUN - 1]! } : line;
}
