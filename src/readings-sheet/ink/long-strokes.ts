import type { Field } from '../../writing/crop/filters.ts';
import type { Blot } from './blots.ts';

/** What runs on for this share of the table is a ruling that was not found, a fold, an edge: no letter. */
const LONG = 0.22;
/** Such a stroke is no thicker than this, and strays no further from its course, flat pixels. */
const THICKEST = 8;
const STRAY = 3.5;
/** Its course is followed in pieces of this length, flat pixels: paper bends. */
const PIECE = 60;

/**
 * Takes long thin strokes out of connected ink: where figures touch a fold or a ruling that was not found, the figures
 * are left. @param size width and height of the table, flat pixels @returns whether anything was taken out of the field
 */
export function takeOutLong(field: Field, blots: readonly Blot[], [wide, high]: readonly [number, number]): boolean {
  let some = false;
  for (const blot of blots) {
    if (blot.x1 - blot.x0 > LONG * wide) some = takeOut(field, blot, true) || some;
    if (blot.y1 - blot.y0 > LONG * high) some = takeOut(field, blot, false) || some;
  }
  return some;
}

type Run = { at: number; from: number; to: number };

function takeOut({ width, values }: Field, blot: Blot, level: boolean): boolean {
  const runs = runsOf(blot, width, level).filter(({ from, to }) => to - from <= THICKEST);
  const pieces = new Map<number, Run[]>();
  for (const run of runs) {
    const piece = Math.floor(run.at / PIECE);
    pieces.set(piece, [...(pieces.get(piece) ?? []), run]);
  }
  let some = false;
  for (const list of pieces.values()) {
    const course = courseOf(list);
    if (!course) continue;
    for (const { at, from, to } of list) {
      if (Math.abs((from + to) / 2 - course(at)) > STRAY) continue;
      some = true;
      for (let across = from; across < to; across++) values[level ? across * width + at : at * width + across] = 0;
    }
  }
  return some;
}

/** Stretches of ink across the direction of a stroke, place by place along it. */
function runsOf(blot: Blot, width: number, level: boolean): Run[] {
  const places = new Map<number, number[]>();
  for (const pixel of blot.pixels) {
    const [x, y] = [pixel % width, Math.floor(pixel / width)];
    const [at, across] = level ? [x, y] : [y, x];
    const list = places.get(at);
    if (list) list.push(across);
    else places.set(at, [across]);
  }
  const runs: Run[] = [];
  for (const [at, list] of places) {
    list.sort((a, b) => a - b);
    let from = list[0]!;
    list.forEach((across, i) => {
      if (list[i + 1] === across + 1) return;
      runs.push({ at, from, to: across + 1 });
      from = list[i + 1]!;
    });
  }
  return runs;
}

/** So many of a piece's places must lie on the course, or there is no stroke in it. */
const COVERED = 0.55;
const SLOPES = [-0.06, -0.04, -0.02, 0, 0.02, 0.04, 0.06];

/** The straight course most runs of a piece lie on. */
function courseOf(runs: readonly Run[]): ((at: number) => number) | null {
  const middle = runs.reduce((sum, { at }) => sum + at, 0) / runs.length;
  let [best, most] = [(at: number) => at, 0];
  for (const slope of SLOPES) {
    const counts = new Map<number, Set<number>>();
    for (const { at, from, to } of runs) {
      const bin = Math.round(((from + to) / 2 - slope * (at - middle)) / 2);
      for (const b of [bin - 1, bin, bin + 1]) counts.set(b, (counts.get(b) ?? new Set<number>()).add(at));
    }
    for (const [bin, places] of counts)
      if (places.size > most) [best, most] = [(at) => 2 * bin + slope * (at - middle), places.size];
  }
  const length = Math.max(...runs.map(({ at }) => at)) - Math.min(...runs.map(({ at }) => at)) + 1;
  return most >= COVERED * Math.max(length, PIECE / 3) ? best : null;
}
