import type { Ruling } from '../../writing/written.ts';
import type { Box } from './boxes.ts';

/** A line that runs through a word is a stroke of its letters, a scratch or a shadow: no side of a box does. */
export function clearRulings(rulings: readonly Ruling[], words: readonly Box[]): Ruling[] {
  return rulings.filter((ruling) => !words.some((word) => runsThrough(ruling, word)));
}

/** How far inside a word a line must run, in parts of its height: boxes of words are a little loose. */
const INSIDE = 0.25;

function runsThrough({ x0, y0, x1, y1 }: Ruling, word: Box): boolean {
  const room = INSIDE * (word.y1 - word.y0);
  const [left, right, top, bottom] = [word.x0 + room, word.x1 - room, word.y0 + room, word.y1 - room];
  if (left >= right) return false;
  // the part of the line within the word's width and height (Liang & Barsky 1984)
  let [from, to] = [0, 1];
  for (const [step, ahead] of [
    [x0 - x1, x0 - left],
    [x1 - x0, right - x0],
    [y0 - y1, y0 - top],
    [y1 - y0, bottom - y0],
  ] as const) {
    if (step === 0 && ahead < 0) return false;
    if (step < 0) from = Math.max(from, ahead / step);
    if (step > 0) to = Math.min(to, ahead / step);
  }
  return from < to;
}

/** A side of a box runs beside its words, in parts of their height; one that begins below them is of the next row. */
const BESIDE = 0.25;
const BESIDE_AND_BELOW = 0.6;
const reachOver = ({ y0, y1 }: Ruling, top: number, bottom: number) =>
  Math.min(Math.max(y0, y1), bottom) - Math.max(Math.min(y0, y1), top);

/**
 * The strip between the nearest upright rulings on both sides of a box, at its height.
 * @returns left and right, infinite where there is no ruling
 */
export function stripOf(box: Box, rulings: readonly Ruling[]): readonly [number, number] {
  const middle = (box.x0 + box.x1) / 2;
  const height = box.y1 - box.y0;
  const beside = rulings
    .filter((r) => Math.abs(r.y1 - r.y0) > 3 * Math.abs(r.x1 - r.x0))
    .filter((r) => reachOver(r, box.y0, box.y1) > BESIDE * height)
    .filter((r) => reachOver(r, box.y0, box.y1 + height) > BESIDE_AND_BELOW * height)
    .map((r) => (r.x0 + r.x1) / 2);
  return [
    Math.max(...beside.filter((x) => x < middle), -Infinity),
    Math.min(...beside.filter((x) => x > middle), Infinity),
  ];
}
