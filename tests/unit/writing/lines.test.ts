import { describe, expect, test } from 'vitest';
import { findLines } from '../../../src/writing/index.ts';
import { flatOf, lineOfBars } from './pictures.ts';

const [WIDTH, HEIGHT] = [700, 500];
const round = ({ x0, y0, x1, y1 }: { x0: number; y0: number; x1: number; y1: number }) => [x0, y0, x1, y1];

describe('lines of text', () => {
  test('dark and light ones are found where they stand', () => {
    const dark = lineOfBars(6, 100, 100, 40, 40);
    const light = lineOfBars(5, 300, 300, 40, 250);
    const { lines } = findLines(flatOf(WIDTH, HEIGHT, 150, [...dark, ...light]));
    expect(lines.map(({ isLight }) => isLight).sort()).toEqual([false, true]);
    for (const line of lines) {
      const [x0, y0, x1, y1] = line.isLight ? [300, 300, 450, 340] : [100, 100, 282, 140];
      round(line).forEach((v, i) => expect(Math.abs(v - [x0, y0, x1, y1][i]!)).toBeLessThanOrEqual(2));
    }
  });

  test('words far apart are lines of their own', () => {
    const words = [...lineOfBars(4, 60, 100, 40, 40), ...lineOfBars(4, 300, 100, 40, 40)];
    expect(findLines(flatOf(WIDTH, HEIGHT, 200, words)).lines).toHaveLength(2);
  });

  test('a point between figures is a mark of its line', () => {
    const figures = lineOfBars(5, 100, 100, 40, 40).map((bar, i) => ({ ...bar, x: bar.x + (i > 1 ? 14 : 0) }));
    const point = { x: 164, y: 132, w: 8, h: 8, grey: 40 };
    const [line] = findLines(flatOf(WIDTH, HEIGHT, 200, [...figures, point])).lines;
    expect(line!.letters).toHaveLength(5);
    expect(line!.marks).toHaveLength(1);
    expect(line!.marks[0]!.x0).toBeCloseTo(164, -1);
  });

  test('a figure and its line are one across a tilde', () => {
    const bars = [
      { x: 100, y: 100, w: 18, h: 40, grey: 40 },
      { x: 126, y: 116, w: 26, h: 7, grey: 40 },
      ...lineOfBars(3, 164, 100, 40, 40),
    ];
    const { lines } = findLines(flatOf(WIDTH, HEIGHT, 200, bars));
    expect(lines).toHaveLength(1);
    expect(lines[0]!.letters).toHaveLength(4);
  });

  test('letters that stand on a ruling are found without it', () => {
    const letters = lineOfBars(6, 200, 200, 40, 40);
    const ruling = { x: 60, y: 240, w: 560, h: 4, grey: 40 };
    const { lines, rulings } = findLines(flatOf(WIDTH, HEIGHT, 200, [...letters, ruling]));
    expect(lines).toHaveLength(1);
    expect(lines[0]!.letters).toHaveLength(6);
    const level = rulings.filter(({ y0, y1 }) => y0 === y1);
    expect(level.some(({ x0, x1, y0 }) => x0 <= 64 && x1 >= 616 && Math.abs(y0 - 242) <= 3)).toBe(true);
  });

  test('the sides of a box are rulings, what stands in it is a line', () => {
    const box = [
      { x: 150, y: 170, w: 320, h: 3, grey: 40 },
      { x: 150, y: 245, w: 320, h: 3, grey: 40 },
      { x: 150, y: 170, w: 3, h: 78, grey: 40 },
      { x: 467, y: 170, w: 3, h: 78, grey: 40 },
    ];
    const { lines, rulings } = findLines(flatOf(WIDTH, HEIGHT, 200, [...lineOfBars(5, 200, 188, 40, 40), ...box]));
    expect(lines.filter(({ isLight }) => !isLight).map(({ letters }) => letters.length)).toEqual([5]);
    const upright = rulings.filter(({ x0, x1 }) => x0 === x1).map(({ x0 }) => x0);
    expect(upright.some((x) => Math.abs(x - 151) < 4)).toBe(true);
    expect(upright.some((x) => Math.abs(x - 468) < 4)).toBe(true);
  });

  test('the sides of a low box are rulings although they are as thick as long', () => {
    const box = [
      { x: 150, y: 170, w: 200, h: 9, grey: 40 },
      { x: 150, y: 236, w: 200, h: 9, grey: 40 },
      { x: 150, y: 170, w: 9, h: 75, grey: 40 },
      { x: 341, y: 170, w: 9, h: 75, grey: 40 },
    ];
    const { lines } = findLines(flatOf(WIDTH, HEIGHT, 200, [...lineOfBars(4, 200, 190, 36, 40), ...box]));
    const dark = lines.filter(({ isLight }) => !isLight);
    expect(dark.map(({ letters }) => letters.length)).toEqual([4]);
    expect(dark[0]!.x0).toBeGreaterThan(190);
    expect(dark[0]!.x1).toBeLessThan(330);
  });

  test('figures of one width and the comma far between them are one number', () => {
    const figure = (x: number) => ({ x, y: 100, w: 22, h: 40, grey: 40 });
    const comma = { x: 148, y: 131, w: 8, h: 14, grey: 40 };
    const { lines } = findLines(
      flatOf(WIDTH, HEIGHT, 200, [figure(100), comma, figure(180), figure(214), ...lineOfBars(6, 100, 300, 40, 40)]),
    );
    const number = lines.filter(({ y0 }) => y0 < 200);
    expect(number.map(({ letters, marks }) => [letters.length, marks.length])).toEqual([[3, 1]]);
  });

  test('a dotted line to write on is a ruling, and its dots are no points of the number on it', () => {
    const dots = Array.from({ length: 16 }, (_, i) => ({ x: 90 + 14 * i, y: 144, w: 6, h: 6, grey: 40 }));
    const { lines, rulings } = findLines(flatOf(WIDTH, HEIGHT, 200, [...lineOfBars(4, 120, 100, 40, 40), ...dots]));
    expect(lines.map(({ letters, marks }) => [letters.length, marks.length])).toEqual([[4, 0]]);
    expect(rulings.some(({ x0, x1, y0 }) => x0 < 94 && x1 > 300 && Math.abs(y0 - 147) < 3)).toBe(true);
  });

  test('leaders of dots join nothing', () => {
    const dots = Array.from({ length: 12 }, (_, i) => ({ x: 190 + 20 * i, y: 132, w: 8, h: 8, grey: 40 }));
    const words = [...lineOfBars(4, 60, 100, 40, 40), ...lineOfBars(3, 440, 100, 40, 40)];
    const { lines } = findLines(flatOf(WIDTH, HEIGHT, 200, [...words, ...dots]));
    expect(lines.filter(({ letters }) => letters.length > 1).map(({ letters }) => letters.length)).toEqual([4, 3]);
  });

  test('cross strokes of neighbouring letters are no ruling', () => {
    const crossed = [0, 1, 2].flatMap((i) => [
      { x: 120 + 36 * i, y: 200, w: 8, h: 60, grey: 40 },
      { x: 106 + 36 * i, y: 236, w: 34, h: 8, grey: 40 },
    ]);
    expect(findLines(flatOf(WIDTH, HEIGHT, 200, crossed)).rulings).toEqual([]);
  });

  test('a picture of nothing has none', () => {
    expect(findLines(flatOf(WIDTH, HEIGHT, 128, []))).toMatchObject({ lines: [], rulings: [] });
  });
});
