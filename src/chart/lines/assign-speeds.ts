import type { AxisQuantity } from '../hints.ts';
import { relativeSpeeds } from './fan-laws.ts';
import type { FoundLine } from './find-lines.ts';
import type { LineValues } from './line-values.ts';
import { distanceToLine, type UnderstoodWord } from './near-words.ts';
import { SURE_ALONE, speedsOffLaw } from './speed-doubts.ts';
import { speedsByLaw, type LawfulSpeeds } from './speeds-by-law.ts';

/** The speeds of the curves of one family, and how they were told. */
export type Speeds = {
  /** by curve; null where none is printed for it */
  readonly speeds: readonly (number | null)[];
  /** curves whose nearest label says another speed than the order of the curves does */
  readonly conflicts: readonly number[];
  /** speeds printed in the plot that found no curve */
  readonly left: readonly number[];
  /** curves without a speed that are known to be of the same wheel as the others, all labels having found theirs */
  readonly unlabelled: readonly number[];
  /** curves whose speed lies off the fan laws, by which the others' follow from each other */
  readonly offLaw: readonly number[];
  /** by curve, as the fan laws have them: of the outermost's; null where it does not follow from the others */
  readonly shares: readonly (number | null)[];
};

/** A label further off than this belongs to a legend, sheet pixels. */
const BESIDE_PX = 55;
/** A label is clearly a curve's own where every other is so much further off; the order of curves is believed over less. */
const NEARER = 1.7;
const CLOSE_PX = 16;

/**
 * Gives each curve of one quantity its speed. Where the curves follow from each other by the fan laws, the labels and
 * the laws settle it together; else the faster wheel's curve lies further out, and labels stand beside their curves.
 * @param values of the same curves
 * @param known speeds of the pressure curves of the same wheel, where this is another quantity
 * @param others lines of other quantities: a label beside one of these is not theirs
 */
export function assignSpeeds(
  lines: readonly FoundLine[],
  values: readonly LineValues[],
  words: readonly UnderstoodWord[],
  quantity: AxisQuantity,
  known: readonly number[] = [],
  others: readonly FoundLine[] = [],
): Speeds {
  const outermost = lines.map((_, i) => i).sort((a, b) => reach(values[b]!) - reach(values[a]!));
  const inOrder = relativeSpeeds(
    outermost.map((i) => values[i]!),
    quantity,
  );
  const shares = lines.map((_, i) => inOrder[outermost.indexOf(i)]!);
  const same = known.length ? speedsLike(known, shares, outermost) : null;
  if (same) return { speeds: same, conflicts: [], left: [], unlabelled: [], offLaw: [], shares };
  const areOneWheel = shares.filter((s) => s !== null).length > 1;
  const lawful = lines.length > 1 ? speedsByLaw(lines, shares, words) : null;
  const told = lawful ? withTheRest(lawful, outermost) : byLabels(lines, words, outermost, areOneWheel, others);
  const isMatched = (w: UnderstoodWord) => w.speed_rpm !== null && told.speeds.includes(w.speed_rpm);
  const isAllMatched = words.every((w) => !w.isInside || !w.isSurelySpeed || isMatched(w));
  const isFamily = (i: number) => shares[i] !== null && areOneWheel;
  return {
    conflicts: [],
    ...told,
    left: [...new Set([...told.left, ...withoutCurve(words, told.speeds)])],
    offLaw: speedsOffLaw(told.speeds, shares),
    shares,
    unlabelled: lines.flatMap((_, i) => (told.speeds[i] === null && isAllMatched && isFamily(i) ? [i] : [])),
  };
}

/** More speeds stand in the plot than there are curves: those no curve has are missed curves, whatever else fits. */
function withoutCurve(words: readonly UnderstoodWord[], speeds: readonly (number | null)[]): number[] {
  const printed = new Set(
    words.flatMap((w) => (w.isInside && w.isSurelySpeed && w.speed_rpm !== null ? [w.speed_rpm] : [])),
  );
  return printed.size > speeds.length ? [...printed].filter((speed) => !speeds.includes(speed)) : [];
}

/** The pressure curves' speeds in the order of the curves, if the ratios between these bear it out; null if not. */
function speedsLike(
  known: readonly number[],
  shares: readonly (number | null)[],
  outermost: readonly number[],
): number[] | null {
  const fastest = [...new Set(known)].sort((a, b) => b - a);
  if (fastest.length !== shares.length) return null;
  const speeds = shares.map((_, i) => fastest[outermost.indexOf(i)]!);
  const fits = shares.every((s, i) => s === null || Math.abs(speeds[i]! / fastest[0]! / s - 1) < LIKE);
  return fits ? speeds : null;
}

const LIKE = 0.03;

type ByLabels = Pick<Speeds, 'speeds' | 'conflicts' | 'left'>;

/** As many labels left as curves: those that the fan laws do not know have them, if their order is right. */
function withTheRest({ speeds, left }: LawfulSpeeds, outermost: readonly number[]): LawfulSpeeds {
  const without = outermost.filter((i) => speeds[i] === null);
  if (!left.length || left.length !== without.length) return { speeds, left };
  const rest = [...left].sort((a, b) => b - a);
  const all = speeds.map((s, i) => s ?? rest[without.indexOf(i)]!);
  const isOrdered = outermost.every((i, k) => k === 0 || all[i]! < all[outermost[k - 1]!]!);
  return isOrdered ? { speeds: all, left: [] } : { speeds, left };
}

/**
 * By the labels that are speeds for sure, where the fan laws do not settle it.
 * @param areOneWheel the curves follow from each other by the fan laws: then no speed can be that of all
 */
function byLabels(
  lines: readonly FoundLine[],
  words: readonly UnderstoodWord[],
  outermost: readonly number[],
  areOneWheel: boolean,
  others: readonly FoundLine[],
): ByLabels {
  const sure = words.filter((w) => w.speed_rpm !== null && w.isSurelySpeed);
  const inside = sure.filter((w) => w.isInside);
  const labels = inside.length ? inside : sure;
  const distinct = [...new Set(labels.map((w) => w.speed_rpm!))].sort((a, b) => b - a);
  const none = lines.map(() => null);
  if (!distinct.length) return { speeds: none, conflicts: [], left: [] };
  if (distinct.length === 1) {
    const [only] = distinct as [number];
    // nothing bears out the only label of several curves: one that was hard to read may say any speed
    const isBelieved = lines.length === 1 || labels.some((w) => w.confidence > SURE_ALONE);
    if (!isBelieved) return { speeds: none, conflicts: [], left: [] };
    const distanceTo = (l: FoundLine): number => Math.min(...labels.map((w) => distanceToLine(w, l)));
    const nearest = lines.map(distanceTo);
    const isForAll = lines.length === 1 || !inside.length || Math.min(...nearest) > BESIDE_PX;
    const own = nearest.indexOf(Math.min(...nearest));
    const isClear = [...lines.filter((_, i) => i !== own), ...others].every(
      (l) => distanceTo(l) > NEARER * nearest[own]! + CLOSE_PX,
    );
    if (isForAll && areOneWheel) return { speeds: none, conflicts: [], left: inside.length ? [only] : [] };
    return {
      speeds: lines.map((_, i) => (isForAll || (i === own && isClear) ? only : null)),
      conflicts: [],
      left: [],
    };
  }
  // one curve and several speeds around it: those of a table
  if (!inside.length && lines.length < distinct.length) return { speeds: none, conflicts: [], left: [] };
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
): ByLabels {
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
