import { describe, expect, test } from 'vitest';
import { chainWords, joinLines, LINE_GAP } from '../../../../src/chart/labels/chains.ts';
import type { Piece } from '../../../../src/chart/labels/pieces.ts';

const FRAME = { x0: 300, y0: 100, x1: 1300, y1: 800 };
let id = 0;
const piece = (x: number, y: number, wide: number, high: number): Piece => ({
  id: ++id,
  x0: x,
  y0: y,
  x1: x + wide,
  y1: y + high,
  area: 0.6 * wide * high,
});
const chained = (pieces: readonly Piece[]) => chainWords({ frame: FRAME }, pieces);
const xs = (pieces: readonly Piece[]) => pieces.map((p) => p.x0).sort((a, b) => a - b);

describe('pieces of ink as words', () => {
  test('a label outside and a marker just inside the frame are no word, nor a line', () => {
    const label = [piece(262, 400, 14, 24), piece(279, 400, 14, 24)];
    const marker = piece(306, 402, 20, 20);
    const words = chained([...label, marker]);
    expect(words.map((w) => xs(w.pieces))).toEqual(expect.arrayContaining([xs(label), [marker.x0]]));
    expect(joinLines(words, FRAME)).toHaveLength(2);
  });

  test('a label that begins in the plot and runs across its side is one line, unless it is a number of the scale', () => {
    const [inside, outside] = [piece(1270, 400, 16, 24), piece(1306, 400, 16, 24)];
    const words = chained([inside, outside]);
    expect(joinLines(words, FRAME, LINE_GAP, () => true).map((w) => xs(w.pieces))).toEqual([xs([inside, outside])]);
    expect(joinLines(words, FRAME, LINE_GAP, (w) => w.x0 < FRAME.x1)).toHaveLength(2);
  });

  test('figures on one side of it still are', () => {
    const label = [piece(230, 400, 14, 24), piece(247, 400, 14, 24), piece(264, 400, 14, 24)];
    expect(chained(label).map((w) => xs(w.pieces))).toEqual([xs(label)]);
  });

  test('an upright title close to the numbers keeps the letters that stand beside them', () => {
    const title = [600, 582, 564, 546, 510].map((y) => piece(212, y, 20, 15));
    const last = title[4]!;
    const number = [piece(240, 506, 14, 24), piece(257, 506, 14, 24), piece(274, 506, 14, 24)];
    const words = chained([...title, ...number]);
    expect(words.map((w) => w.run)).toEqual(expect.arrayContaining(['upright', 'level']));
    expect(xs(words.find((w) => w.run === 'level')!.pieces)).toEqual(xs(number));
    expect(words.some((w) => w.run === 'upright' && w.pieces.includes(last))).toBe(true);
  });

  test('a title of two letters that touch and a bracket takes the bracket beside a number', () => {
    const title = [piece(212, 573, 15, 14), piece(217, 561, 11, 11), piece(212, 551, 19, 7)];
    const bracket = piece(212, 591, 19, 6);
    const number = [0, 1, 2, 3].map((k) => piece(238 + 14 * k, 588, 10, 16));
    const words = chained([...title, bracket, ...number]);
    expect(xs(words.find((w) => w.run === 'level')!.pieces)).toEqual(xs(number));
    expect(words.some((w) => w.run === 'upright' && w.pieces.includes(bracket))).toBe(true);
  });

  test('a stroke that broke off a thin figure stays in its number', () => {
    const number = [piece(400, 850, 10, 16), piece(414, 855, 10, 11), piece(428, 850, 10, 16)];
    const top = piece(414, 850, 8, 3);
    expect(chained([...number, top]).map((w) => w.pieces.length)).toEqual([4]);
  });

  test('a dash between two words makes one line of them, a blank as wide does not', () => {
    const words = chained([500, 512, 524, 580, 592, 604].map((x) => piece(x, 850, 10, 18)));
    const dash = piece(550, 858, 14, 2);
    expect(joinLines(words, FRAME)).toHaveLength(2);
    expect(joinLines(words, FRAME, LINE_GAP, () => false, [dash])).toHaveLength(1);
  });

  test('the words of a table over each other are no upright title, and take nothing from the numbers over them', () => {
    const rows = [0, 1, 2, 3].flatMap((row) => [0, 1, 2, 3, 4].map((k) => piece(150 + 26 * k, 860 + 21 * row, 12, 19)));
    const number = [piece(240, 780, 14, 24), piece(257, 780, 14, 24)];
    const words = chained([...rows, ...number]);
    expect(words.map((w) => xs(w.pieces))).toContainEqual(xs(number));
  });

  test('a comma as large as a small letter joins the figures it stands between', () => {
    const [seven, comma, five] = [piece(500, 900, 18, 30), piece(521, 923, 5, 10), piece(529, 900, 18, 30)];
    const words = chained([seven, comma, five]);
    expect(words.map((w) => xs(w.pieces))).toEqual([[500, 521, 529]]);
  });

  test('a small letter by itself is a word', () => {
    expect(chained([piece(500, 900, 9, 11)])).toHaveLength(1);
  });

  test('figures that touch in a row are no column with what stands under them', () => {
    const number = piece(262, 820, 60, 22);
    const unit = [piece(255, 850, 22, 22), piece(280, 850, 62, 22)];
    const others = [900, 918, 936].map((x) => piece(x, 820, 14, 22));
    const words = chained([number, ...unit, ...others]);
    expect(words.every((w) => w.run === 'level')).toBe(true);
    expect(words.map((w) => xs(w.pieces))).toEqual(expect.arrayContaining([xs([number]), xs(unit)]));
  });

  test('the blanks of a line go by its capitals where most letters are small ones', () => {
    // "Pres. (Pa)": small letters 15 px high, capitals 20, the blank between them 24
    const first = [piece(500, 305, 12, 20), ...[515, 530, 545].map((x) => piece(x, 310, 12, 15))];
    const second = [piece(581, 305, 12, 20), ...[596, 611, 626].map((x) => piece(x, 310, 12, 15))];
    expect(joinLines(chained([...first, ...second]), FRAME)).toHaveLength(1);
  });
});
