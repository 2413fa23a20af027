import type { Field } from '../crop/filters.ts';
import { inkOf, type Polarity } from '../ink/masks.ts';
import { dottedLines } from '../ink/dotted-lines.ts';
import { findPieces } from '../ink/pieces.ts';
import { partRulings } from '../ink/rulings.ts';
import type { TextBox } from '../surface.ts';
import type { Ruling } from '../written.ts';
import { chainLetters } from './chain.ts';
import { reachedOn } from './reach.ts';
import { lineOf, type TextLine } from './text-lines.ts';

/** More lines than any plate has: the rest is grain. */
const MOST_LINES = 75;
/** Lines that share more of the smaller one's area are two views of one. */
const SAME_PLACE = 0.35;
/** Lines of so many letters are surely text. */
const ENOUGH_LETTERS = 4;
/** Lines that run otherwise than the rest have to be long; short ones may only have letters that hang below the line. */
const LONG = 12;
const MOST_APART = 0.02;
/** Shares of what is usual on the plate. */
const SMALLER = 0.3;
const FAINTER = 0.3;

export type FoundLines = {
  readonly lines: readonly TextLine[];
  readonly rulings: readonly Ruling[];
  /** 1 where a ruling was taken out */
  readonly ruled: Uint8Array;
};

/** Finds lines of text, dark and light, and the rulings among them. @param grey a surface laid flat */
export function findLines(grey: Field): FoundLines {
  const ink = inkOf(grey);
  const ruled = new Uint8Array(grey.values.length);
  const rulings: Ruling[] = [];
  const lines: TextLine[] = [];
  for (const polarity of ['dark', 'light'] satisfies Polarity[]) {
    const parted = partRulings(ink[polarity], grey.values);
    rulings.push(...parted.rulings);
    for (let k = 0; k < ruled.length; k++) ruled[k]! |= parted.ruled[k]!;
    const pieces = findPieces(parted.ink);
    const dotted = dottedLines(pieces.list);
    const dots = new Set(dotted.flatMap((line) => line.dots));
    rulings.push(...dotted.map(({ ruling }) => ruling));
    const isDotted = new Uint8Array(pieces.list.length + 1);
    for (const { id } of dots) isDotted[id] = 1;
    if (dots.size) for (let k = 0; k < ruled.length; k++) ruled[k]! |= isDotted[pieces.labels[k]!]!;
    const chains = chainLetters(
      pieces.list.filter((piece) => !dots.has(piece)),
      grey.height,
    );
    lines.push(...chains.map((chain) => lineOf(chain, pieces, polarity === 'light')));
  }
  const apart = bestApart(lines.filter(likelyText(lines)).filter(isNoBar(lines))).slice(0, MOST_LINES);
  return { lines: withCommonSlope(apart).map((line) => reachedOn(line, grey.width)), rulings, ruled };
}

/** Sides of two boxes that stand wall to wall are too thick for a ruling: a lone bar much higher than most letters is none. */
function isNoBar(lines: readonly TextLine[]): (line: TextLine) => boolean {
  const heights = lines.flatMap(({ letters, y0, y1 }) => (letters.length >= ENOUGH_LETTERS ? [y1 - y0] : []));
  const usual = heights.sort((a, b) => a - b)[heights.length >> 1] ?? Infinity;
  return ({ letters: [piece, ...others] }) => {
    const [width, height] = [piece!.x1 - piece!.x0, piece!.y1 - piece!.y0];
    const isFull = piece!.area > BAR.full * width * height;
    return others.length > 0 || !isFull || height < BAR.slender * width || height < BAR.higher * usual;
  };
}
const BAR = { slender: 3.6, full: 0.8, higher: 1.4 };

/** Grain and dirt: far smaller, or far fainter, than what is surely text. */
function likelyText(lines: readonly TextLine[]): (line: TextLine) => boolean {
  const sure = lines.filter(({ letters }) => letters.length >= ENOUGH_LETTERS);
  if (sure.length < 3) return () => true;
  const heights = sure.map(({ y0, y1 }) => y1 - y0).sort((a, b) => a - b);
  const lowest = SMALLER * heights[heights.length >> 1]!;
  const worths = sure.map((line) => line.worth / Math.sqrt(line.letters.length)).sort((a, b) => a - b);
  const faintest = FAINTER * worths[worths.length >> 1]!;
  return (line) =>
    line.letters.length >= ENOUGH_LETTERS ||
    (line.y1 - line.y0 >= lowest && line.worth / Math.sqrt(line.letters.length) >= faintest);
}

/** Short lines tell little of how they run: they run as the long ones do. */
function withCommonSlope(lines: readonly TextLine[]): TextLine[] {
  const slopes = lines.filter(({ letters }) => letters.length >= ENOUGH_LETTERS).map(({ slope }) => slope);
  const common = slopes.sort((a, b) => a - b)[slopes.length >> 1];
  if (common === undefined) return [...lines];
  const tells = ({ letters, slope }: TextLine) =>
    letters.length >= ENOUGH_LETTERS && (letters.length >= LONG || Math.abs(slope - common) < MOST_APART);
  return lines.map((line) => (tells(line) ? line : lineOf(line, line.pieces, line.isLight, common)));
}

/** Of lines in one place the one with the sharpest and most letters. */
function bestApart(lines: readonly TextLine[]): TextLine[] {
  const kept: TextLine[] = [];
  for (const line of [...lines].sort((a, b) => b.worth - a.worth))
    if (!kept.some((other) => sharedPlace(line, other) > SAME_PLACE)) kept.push(line);
  return kept;
}

/** The part of the smaller one's area that two boxes share, 0..1. */
export function sharedPlace(a: TextBox, b: TextBox): number {
  const w = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0);
  const h = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
  if (w <= 0 || h <= 0) return 0;
  return (w * h) / Math.min((a.x1 - a.x0) * (a.y1 - a.y0), (b.x1 - b.x0) * (b.y1 - b.y0));
}
