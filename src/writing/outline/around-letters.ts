import { quantile } from '../crop/filters.ts';
import type { Photo } from '../../picture/raster.ts';
import type { Outline } from '../lay-flat.ts';
import { lettersOn, type LetterPlace } from './letters-near.ts';
import { viewOf } from './view.ts';

type Xy = readonly [number, number];

const VIEW_PX = 1100;
/** Fewer letters than this tell nothing. */
const LEAST_LETTERS = 12;
/** Grain is fainter than letters: what has less than this share of what the clearest have is left out. */
const FAINTEST = 0.5;
/** The clearest letters: this share is fainter. */
const CLEAREST = 0.9;
/** Letters of one plate stand within so many times their size of each other. */
const LINKED = 3.5;
/** Neighbours in a line stand within so many times their size, and tell how it runs. */
const BESIDE = 2.2;
/** Directions told apart, and how far those beside one count for it. */
const DIRECTIONS = 180;
const SPREAD = 3;
/** This share of the letters on every side may be specks. */
const SPECKS = 0.01;
/** Room around the letters, in sizes of one. */
const ROOM = 2.5;

/**
 * Where a plate whose edges do not stand out must lie: a rectangle around the letters that stand together, along their lines.
 * @returns null where too few letters stand together
 */
export function outlineAroundLetters(photo: Photo): Outline | null {
  const view = viewOf(photo.full, VIEW_PX);
  const letters = heaviest(together(clearAmong(lettersOn(view))));
  if (letters.length < LEAST_LETTERS) return null;
  const angle = directionOf(letters);
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  const along = Float32Array.from(letters, ({ x, y }) => x * ux + y * uy);
  const across = Float32Array.from(letters, ({ x, y }) => y * ux - x * uy);
  const room =
    ROOM *
    quantile(
      Float32Array.from(letters, ({ size }) => size),
      0.5,
    );
  const [left, right] = [quantile(along, SPECKS) - room, quantile(along, 1 - SPECKS) + room];
  const [top, bottom] = [quantile(across, SPECKS) - room, quantile(across, 1 - SPECKS) + room];
  const at = (a: number, b: number): Xy => [(a * ux - b * uy) * view.scale, (a * uy + b * ux) * view.scale];
  return { corners: [at(left, top), at(right, top), at(right, bottom), at(left, bottom)], bulges: [0, 0, 0, 0] };
}

function clearAmong(letters: readonly LetterPlace[]): LetterPlace[] {
  const least =
    FAINTEST *
    quantile(
      Float32Array.from(letters, ({ weight }) => weight),
      CLEAREST,
    );
  return letters.filter(({ weight }) => weight >= least);
}

/** Letters in groups of those that stand near each other. */
function together(letters: readonly LetterPlace[]): LetterPlace[][] {
  const left = new Set(letters);
  const groups: LetterPlace[][] = [];
  for (const seed of letters) {
    if (!left.delete(seed)) continue;
    const group = [seed];
    for (const one of group)
      for (const other of left)
        if (distance(one, other) < LINKED * Math.max(one.size, other.size)) {
          left.delete(other);
          group.push(other);
        }
    groups.push(group);
  }
  return groups;
}

const heaviest = (groups: readonly LetterPlace[][]): LetterPlace[] =>
  [...groups].sort((a, b) => weightOf(b) - weightOf(a))[0] ?? [];
const weightOf = (group: readonly LetterPlace[]) => group.reduce((sum, { weight }) => sum + weight ** 2, 0);
const distance = (a: LetterPlace, b: LetterPlace) => Math.hypot(a.x - b.x, a.y - b.y);

/** The direction in which most neighbours lie, rad, from -π/2 to π/2: that of the lines. */
function directionOf(letters: readonly LetterPlace[]): number {
  const counts = new Float64Array(DIRECTIONS);
  for (const [i, a] of letters.entries())
    for (const b of letters.slice(i + 1)) {
      const gap = distance(a, b);
      if (gap > BESIDE * Math.max(a.size, b.size) || gap === 0) continue;
      const turn = Math.atan2(b.y - a.y, b.x - a.x) / Math.PI;
      counts[Math.round((turn + 1) * DIRECTIONS) % DIRECTIONS]! += Math.min(a.weight, b.weight) / gap;
    }
  const around = (n: number) => {
    let sum = 0;
    for (let d = -SPREAD; d <= SPREAD; d++) sum += counts[(n + d + DIRECTIONS) % DIRECTIONS]!;
    return sum;
  };
  const best = counts.reduce((known, _, n) => (around(n) > around(known) ? n : known), 0);
  const angle = (best / DIRECTIONS) * Math.PI;
  return angle > Math.PI / 2 ? angle - Math.PI : angle;
}
