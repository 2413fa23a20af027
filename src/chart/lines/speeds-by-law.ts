import { distanceToLine, type UnderstoodWord } from './near-words.ts';
import type { FoundLine } from './find-lines.ts';

/** Speeds of a family told by its labels and the fan laws together. */
export type LawfulSpeeds = {
  readonly speeds: readonly (number | null)[];
  /** speeds printed for sure that none of the curves has */
  readonly left: readonly number[];
};

/** What a label says may differ by this share from what the fan laws say: speeds are printed in round numbers. */
const ROUND = 0.009;
/** Labels this near stand beside the line, sheet pixels. */
const BESIDE_PX = 55;
/** A nearer label counts more than one of a legend, one said with its unit more than a bare number. */
const AWAY = 0.7;
const BARE = 0.7;
/** Wheels hardly ever turn slower. */
const SLOW_RPM = 300;
const SLOW = 0.6;
/** A number that lost a figure is half a witness; one that would have to be another figure is hardly any. */
const MENDED = 0.5;
const MISREAD = 0.1;
/** So much must be said for a set of speeds, and so much more than for any other. */
const ENOUGH = 1.2;
const CLEARLY = 0.3;

type Label = { word: UnderstoodWord; far: readonly number[]; weight: number };
type Witness = { label: number; line: number; speed: number; weight: number };

/**
 * Chooses the speed of the outermost curve that most labels bear out, the ratios between the curves being known, and
 * gives every curve the speed printed for it. A number of which a figure was lost or misread is mended where only one
 * round speed fits both it and the fan laws. What no print supports stays null.
 * @param shares of the outermost curve's speed, by line; null where a line does not belong to the family
 * @returns null where labels and fan laws together don't settle it
 */
export function speedsByLaw(
  lines: readonly FoundLine[],
  shares: readonly (number | null)[],
  words: readonly UnderstoodWord[],
): LawfulSpeeds | null {
  const labels = words
    .filter((w) => w.figures !== null)
    .map((word): Label => {
      const far = lines.map((l) => distanceToLine(word, l));
      const isSlow = word.speed_rpm !== null && word.speed_rpm < SLOW_RPM;
      const weight = (word.isSurelySpeed ? 1 : BARE) * (isSlow ? SLOW : 1) * (0.5 + 0.5 * word.confidence);
      return { word, far, weight };
    })
    .filter(({ word, far }) => word.isSurelySpeed || Math.min(...far) < BESIDE_PX);
  let best: { score: number; base: number; witnesses: Witness[] } | null = null;
  let second = 0;
  for (const { word } of labels)
    for (const share of shares) {
      if (word.speed_rpm === null || share === null) continue;
      const first = witnessesOf(labels, shares, word.speed_rpm / share);
      const base = middleOf(first.filter((w) => w.weight > 0).map((w) => w.speed / shares[w.line]!));
      if (base === null) continue;
      const witnesses = witnessesOf(labels, shares, base);
      const score = witnesses.reduce((sum, w) => sum + w.weight, 0);
      const isSame = best !== null && Math.abs(best.base / base - 1) < ROUND;
      if (!best || score > best.score) {
        if (best && !isSame) second = Math.max(second, best.score);
        best = { score, base, witnesses };
      } else if (!isSame) second = Math.max(second, score);
    }
  if (!best || best.score < ENOUGH || best.score < second + CLEARLY || best.witnesses.length < 2) return null;
  const speeds = lines.map((_, i) => best.witnesses.find((w) => w.line === i)?.speed ?? null);
  return { speeds, left: leftOf(labels, speeds) };
}

/** For each line the label that fits its speed best. @param base speed of the outermost curve */
function witnessesOf(labels: readonly Label[], shares: readonly (number | null)[], base: number): Witness[] {
  const pairs = labels.flatMap(({ word, far, weight }, label) =>
    shares.flatMap((share, line): Witness[] => {
      if (share === null) return [];
      const place = far[line]! < BESIDE_PX ? 1 : AWAY;
      const meant = base * share;
      if (word.speed_rpm !== null && Math.abs(word.speed_rpm / meant - 1) < ROUND)
        return [{ label, line, speed: word.speed_rpm, weight: weight * place }];
      const mended = mendedSpeed(word.figures!, meant);
      const trust = String(mended).length === word.figures!.length ? MISREAD : MENDED;
      return mended === null ? [] : [{ label, line, speed: mended, weight: trust * weight * place }];
    }),
  );
  const out: Witness[] = [];
  for (const pair of pairs.sort((a, b) => b.weight - a.weight))
    if (!out.some((w) => w.line === pair.line || w.label === pair.label)) out.push(pair);
  return out;
}

/** The only round speed near what the fan laws say from which the figures differ by one. */
function mendedSpeed(figures: string, meant: number): number | null {
  const round = Array.from(
    { length: Math.ceil((2 * ROUND * meant) / 10) + 1 },
    (_, k) => 10 * (Math.ceil((meant * (1 - ROUND)) / 10) + k),
  ).filter((n) => n <= meant * (1 + ROUND) && isOneApart(figures, String(n)));
  return round.length === 1 ? round[0]! : null;
}

/** Whether one figure lost, added or misread makes one number of the other. */
function isOneApart(a: string, b: string): boolean {
  let same = 0;
  while (same < Math.min(a.length, b.length) && a[same] === b[same]) same++;
  const [restA, restB] = [a.slice(same), b.slice(same)];
  return restA.slice(1) === restB || restA === restB.slice(1) || restA.slice(1) === restB.slice(1);
}

/** Sure labels that say a speed no curve has, and are no misreading of one that a curve has. */
const leftOf = (labels: readonly Label[], speeds: readonly (number | null)[]): number[] => [
  ...new Set(
    labels
      .filter(({ word }) => word.isSurelySpeed && word.speed_rpm !== null)
      .map(({ word }) => word.speed_rpm!)
      .filter((s) => !speeds.some((n) => n !== null && (n === s || isOneApart(String(s), String(n))))),
  ),
];

const middleOf = (values: readonly number[]): number | null =>
  values.length ? [...values].sort((a, b) => a - b)[values.length >> 1]! : null;
