import type { FoundLine } from './find-lines.ts';
import type { LineValues } from './line-values.ts';
import { distanceToLine, type UnderstoodWord } from './near-words.ts';
import { isSurelySpeed } from './word-meanings.ts';

/** The speeds of the curves of one family, and how they were told. */
export type Speeds = {
  /** by curve; null where none is printed for it */
  readonly speeds: readonly (number | null)[];
  /** curves whose nearest label says another speed than the order of the curves does */
  readonly conflicts: readonly number[];
  /** speeds printed in the plot that found no curve */
  readonly left: readonly number[];
};

/** A label further off than this belongs to a legend, sheet pixels. */
const BESIDE_PX = 55;
/** The order of curves is believed over a label that is this much nearer to another curve. */
const NEARER = 1.7;
const CLOSE_PX = 16;

/**
 * Gives each curve of one quantity its speed: the faster wheel's curve lies further out, so where there are as many
 * speeds as curves their order settles it, and the labels beside the curves must agree.
 * @param values of the same curves
 */
export function assignSpeeds(
  lines: readonly FoundLine[],
  values: readonly LineValues[],
  words: readonly UnderstoodWord[],
): Speeds {
  const inside = words.filter((w) => w.isInside && w.speed_rpm !== null);
  const sure = inside.filter((w) => isSurelySpeed(w.text));
  const labels = sure.length
    ? inside.filter((w) => isSurelySpeed(w.text) || isBeside(w, lines))
    : inside.filter((w) => isBeside(w, lines));
  const distinct = [...new Set(labels.map((w) => w.speed_rpm!))].sort((a, b) => b - a);
  const none = lines.map(() => null);
  if (!distinct.length) {
    const page = [
      ...new Set(words.filter((w) => w.speed_rpm !== null && isSurelySpeed(w.text)).map((w) => w.speed_rpm!)),
    ];
    return { speeds: page.length === 1 ? lines.map(() => page[0]!) : none, conflicts: [], left: [] };
  }
  if (distinct.length === 1) {
    const [only] = distinct as [number];
    const nearest = lines.map((l) => Math.min(...labels.map((w) => distanceToLine(w, l))));
    const isForAll = lines.length === 1 || Math.min(...nearest) > BESIDE_PX;
    const own = nearest.indexOf(Math.min(...nearest));
    return { speeds: lines.map((_, i) => (isForAll || i === own ? only : null)), conflicts: [], left: [] };
  }
  const outermost = lines.map((_, i) => i).sort((a, b) => reach(values[b]!) - reach(values[a]!));
  if (distinct.length === lines.length) {
    const speeds: (number | null)[] = [...none];
    outermost.forEach((i, k) => (speeds[i] = distinct[k]!));
    return {
      speeds,
      conflicts: lines.flatMap((_, i) => (disagrees(labels, lines, i, speeds[i]!) ? [i] : [])),
      left: [],
    };
  }
  return byDistance(lines, labels, outermost);
}

/** How far out a curve lies: highest value times largest flow. */
const reach = ({ flow, value }: LineValues): number => Math.max(...flow) * Math.max(...value);

const isBeside = (word: UnderstoodWord, lines: readonly FoundLine[]): boolean =>
  lines.some((l) => distanceToLine(word, l) < BESIDE_PX);

/** Whether a curve's own label stands clearly nearer to another curve; labels of a legend tell nothing by their place. */
function disagrees(labels: readonly UnderstoodWord[], lines: readonly FoundLine[], i: number, speed: number): boolean {
  const own = labels.filter((w) => w.speed_rpm === speed && isBeside(w, lines));
  if (!own.length) return false;
  return own.every((w) => {
    const nearest = Math.min(...lines.map((l) => distanceToLine(w, l)));
    return distanceToLine(w, lines[i]!) > NEARER * nearest + CLOSE_PX;
  });
}

/** More or fewer labels than curves: each label goes to the nearest curve that has none, in the order of speeds. */
function byDistance(
  lines: readonly FoundLine[],
  labels: readonly UnderstoodWord[],
  outermost: readonly number[],
): Speeds {
  const speeds: (number | null)[] = lines.map(() => null);
  const pairs = labels
    .flatMap((w) => lines.map((l, i) => ({ speed: w.speed_rpm!, i, far: distanceToLine(w, l) })))
    .filter((p) => p.far < BESIDE_PX)
    .sort((a, b) => a.far - b.far);
  for (const { speed, i } of pairs) if (speeds[i] === null && !speeds.includes(speed)) speeds[i] = speed;
  const inOrder = outermost.map((i) => speeds[i]).filter((s) => s !== null) as number[];
  const isOrdered = inOrder.every((s, k) => k === 0 || s < inOrder[k - 1]!);
  return {
    speeds,
    conflicts: isOrdered ? [] : lines.flatMap((_, i) => (speeds[i] === null ? [] : [i])),
    left: [...new Set(labels.map((w) => w.speed_rpm!))].filter((s) => !speeds.includes(s)),
  };
}
