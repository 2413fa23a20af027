import type { ReadWord } from '../../writing/index.ts';
import type { WrittenNumber } from '../cells/read-cells.ts';
import type { Blot } from '../ink/blots.ts';
import type { HeadLabel } from './head-labels.ts';
import { isLikeDigit, looksLikeNumber } from './value-words.ts';

/**
 * The ink of the number behind a label: where its digits were read, else the first group that stands in its line. @param blots
 * all of the sheet's @param rowHeight usual step from row to row, flat pixels
 */
export function numberBehind(label: HeadLabel, blots: readonly Blot[], rowHeight: number): WrittenNumber {
  const { x0, x1, y0, y1, words } = label;
  const high = y1 - y0;
  const inLine = blots.filter(
    (b) => b.x0 > x0 - 0.1 * high && b.x1 < x1 + 0.2 * high && b.cy > y0 - 0.9 * high && b.cy < y1 + 0.7 * high,
  );
  const around = withoutUnderline(inLine, high).filter((b) => b.y1 - b.y0 < 1.3 * rowHeight);
  const near = onOneLine(around, (y0 + y1) / 2, high).sort((a, b) => a.x0 - b.x0);
  const tall = near.filter((b) => b.y1 - b.y0 > 0.6 * high);
  const digit = middleOf(tall.map((b) => b.y1 - b.y0)) ?? high;
  const group = firstGroup(near, digit);
  const read = digitsAmong(words);
  const own = read ? near.filter((b) => b.cx > read[0] - 0.1 * digit && b.cx < read[1] + 0.1 * digit) : [];
  // letters read only a part of what stands close together, or the group goes on into its unit
  const isPart = own.length > 0 && group.length > own.length && isClose(own, group, digit);
  return { blots: own.length && !isPart ? own : group, digit };
}

/** Ink between a name and its number that is so high, letter heights, is no colon: something was passed over. */
const HIGH = 0.6;

/** Whether ink as high as a figure stands between a label and the number taken for its value: that may be another label's. */
export function passesOver({ x0, y0, y1 }: HeadLabel, number: WrittenNumber, blots: readonly Blot[]): boolean {
  const from = Math.min(...number.blots.map((b) => b.x0));
  const high = y1 - y0;
  return blots.some(
    (b) =>
      b.y1 - b.y0 > HIGH * high &&
      b.x0 > x0 + 0.1 * high &&
      b.x1 < from &&
      Math.abs(b.cy - (y0 + y1) / 2) < BESIDE * high,
  );
}

/** Pieces further from their line's middle than this, letter heights, belong to the line above or below. */
const OFF_LINE = 0.8;
/** The line meant has its middle about as high as the label's, letter heights. */
const BESIDE = 0.6;

function onOneLine(blots: readonly Blot[], middle: number, high: number): Blot[] {
  const tall = blots.filter((b) => b.y1 - b.y0 > 0.6 * high);
  const beside = tall.filter((b) => Math.abs(b.cy - middle) < BESIDE * high);
  const line = middleOf((beside.length ? beside : tall).map((b) => b.cy)) ?? middle;
  const digit = middleOf(tall.map((b) => b.y1 - b.y0)) ?? high;
  return blots.filter((b) => Math.abs(b.cy - line) < OFF_LINE * Math.max(high, digit));
}

const middleOf = (list: number[]): number | undefined => list.sort((a, b) => a - b)[list.length >> 1];

/** A unit's letters stand off a number by more than this, usual digit heights, and by so many times its own blanks. */
const BLANK = 0.18;
const WIDER = 1.5;

/** A number as far as its widest blank: what stands behind that may be its unit; null where no blank stands out. */
export function beforeBlank({ blots, digit }: WrittenNumber): WrittenNumber | null {
  const gaps = blots.slice(1).map((b, i) => b.x0 - Math.max(...blots.slice(0, i + 1).map(({ x1 }) => x1)));
  const widest = Math.max(...gaps);
  const others = gaps.toSorted((a, b) => a - b).slice(0, -1);
  if (gaps.length < 2 || widest < BLANK * digit || widest < WIDER * Math.max(...others)) return null;
  return { blots: blots.slice(0, gaps.indexOf(widest) + 1), digit };
}

function firstGroup(near: readonly Blot[], digit: number): Blot[] {
  const group: Blot[] = [];
  let reached = -Infinity;
  for (const b of near) {
    const isLow = b.y1 - b.y0 < 0.5 * digit;
    if (!group.length && isLow) continue;
    if (group.length && b.x0 - reached > 0.55 * digit) break;
    group.push(b);
    reached = Math.max(reached, b.x1);
  }
  return group;
}

/** Whether a group goes on right beside its part: no blank parts them. */
function isClose(part: readonly Blot[], group: readonly Blot[], digit: number): boolean {
  const end = Math.max(...part.map((b) => b.x1));
  const next = group.filter((b) => b.x0 >= end - 0.1 * digit && !part.includes(b) && b.y1 - b.y0 > 0.5 * digit);
  return next.length > 0 && Math.min(...next.map((b) => b.x0)) - end < 0.24 * digit;
}

/** Thin pieces under the digits, or several on one height, are a printed line to write on. */
function withoutUnderline(blots: readonly Blot[], high: number): Blot[] {
  const isThin = (b: Blot) => b.y1 - b.y0 < 0.25 * high;
  const onOneHeight = (b: Blot) => blots.filter((o) => isThin(o) && Math.abs(o.cy - b.cy) < 0.12 * high).length;
  return blots.filter((b) => !isThin(b) || (b.x1 - b.x0 < 0.6 * high && onOneHeight(b) < 3));
}

/** Where the number behind a label begins and ends, its unit left out; null where no word looks like one. */
function digitsAmong(words: readonly ReadWord[]): readonly [number, number] | null {
  const numbers = words.filter(({ text }) => looksLikeNumber(text));
  // a lone ring before a number is the sign of a diameter
  const word =
    numbers.find(({ text }) => !/^[0Oo]$/.test(text)) ?? numbers[0] ?? words.find(({ text }) => /\d/.test(text));
  if (!word) return null;
  const { glyphs } = word;
  const end = glyphs.findIndex((g, i) => i > 0 && !isLikeDigit(g.text));
  const last = glyphs[end < 0 ? glyphs.length - 1 : end - 1]!;
  return [word.x0, last.x1];
}
