import { describe, expect, test } from 'vitest';
import { bodyRows } from '../../../src/readings-sheet/grid/body-rows.ts';
import { columnSides } from '../../../src/readings-sheet/grid/column-sides.ts';
import { inStep } from '../../../src/readings-sheet/grid/in-step.ts';
import { rowSides } from '../../../src/readings-sheet/grid/row-sides.ts';
import { leanOfRows, textRows } from '../../../src/readings-sheet/grid/text-rows.ts';
import { DIGIT, rowAt, wordAt } from './words-on-paper.ts';

const COLUMNS = [100, 300, 500];
const PITCH = 60;
const rows = Array.from({ length: 8 }, (_, r) => rowAt(200 + PITCH * r, COLUMNS));
const heights = (list: readonly { readonly y: number }[]) => list.map(({ y }) => y);

describe('rows of words', () => {
  test('that lean by a fiftieth are found to, and each on its own height once that is taken out', () => {
    const words = rows.flatMap((row) => COLUMNS.map((x) => wordAt(x, row.y + 0.02 * x)));
    const lean = leanOfRows(words, DIGIT);
    expect(lean).toBeCloseTo(0.02, 2);
    const level = words.map((w) => ({ ...w, cy: w.cy - lean * ((w.x0 + w.x1) / 2) }));
    expect(textRows(level, DIGIT).map((row) => row.words.length)).toEqual(rows.map(() => COLUMNS.length));
  });

  test('of letters over figures are no readings, nor is a note below', () => {
    const header = rowAt(140, COLUMNS, 10, 0.5);
    const units = rowAt(165, COLUMNS, 2, 0.2);
    const note = rowAt(200 + PITCH * 9, [100], 9, 0.3);
    expect(heights(bodyRows([header, units, ...rows, note], []))).toEqual(heights(rows));
  });

  test('of figures that read badly go on in step and column', () => {
    const bad = rowAt(200 + PITCH * 8, COLUMNS, 3, 0.2);
    expect(heights(bodyRows([...rows, bad], []))).toEqual([...heights(rows), bad.y]);
    const beside = rowAt(200 + PITCH * 8, [200, 400], 3, 0.2);
    expect(heights(bodyRows([...rows, beside], []))).toEqual(heights(rows));
  });

  test('of numbers above all rulings of a ruled table are the head of the sheet', () => {
    const head = [20, 80, 140].map((y) => rowAt(y, COLUMNS));
    const rulings = Array.from({ length: 9 }, (_, k) => 170 + PITCH * k);
    expect(heights(bodyRows([...head, ...rows], rulings))).toEqual([140, ...heights(rows)]);
    expect(heights(bodyRows([...head, ...rows], []))).toEqual([20, 80, 140, ...heights(rows)]);
  });

  test('of nothing but letters hold no readings', () => {
    expect(bodyRows([rowAt(100, COLUMNS, 10, 0.1), rowAt(150, COLUMNS, 10, 0.1)], [])).toEqual([]);
    expect(bodyRows([rowAt(100, [100], 2, 0.1)], [])).toEqual([]);
    expect(bodyRows([], [])).toEqual([]);
  });

  test('a bit of a fold half way between two is left out, a row written in closely is not', () => {
    const bit = rowAt(200 + PITCH * 3.5, [300], 1, 0.4);
    expect(heights(inStep([...rows.slice(0, 4), bit, ...rows.slice(4)]))).toEqual(heights(rows));
    const close = [0, 1, 2, 2.75, 3.75, 4.75, 5.75].map((k) => rowAt(200 + PITCH * k, COLUMNS));
    expect(inStep(close)).toHaveLength(close.length);
  });

  test('are parted half way, or at the ruling between them; an uneven step is doubted', () => {
    const without = rows.filter((_, r) => r !== 4);
    const { ys, isDoubtful } = rowSides(without, []);
    expect(ys[1]).toBe(230);
    expect(isDoubtful).toEqual([false, false, false, true, false, false, false]);
    expect(rowSides(rows, [225]).ys[1]).toBe(225);
  });

  test('between rulings a row is there although nothing is seen in it', () => {
    const rulings = Array.from({ length: 9 }, (_, r) => 170 + PITCH * r);
    const { ys, isDoubtful } = rowSides(
      rows.filter((_, r) => r !== 4),
      rulings,
    );
    expect(ys).toEqual(rulings);
    expect(isDoubtful.map(Number).join('')).toBe('00001000');
  });
});

describe('columns', () => {
  const outer = [50, 550] as const;

  test('are parted by blanks where nothing is ruled', () => {
    const sides = columnSides(rows, [], outer, DIGIT);
    expect(sides).toHaveLength(4);
    [50, 200, 400, 550].forEach((x, k) => expect(Math.abs(sides[k]! - x)).toBeLessThan(2));
  });

  test('are parted at rulings, but not at one that runs through the figures', () => {
    const sides = columnSides(rows, [180, 300, 420], outer, DIGIT);
    expect(sides.slice(1, -1)).toEqual([180, 420]);
  });

  test('what was struck out in one row of eight is no column and parts none', () => {
    const struck = rows.map((row, r) => (r === 3 ? { ...row, words: [...row.words, wordAt(400, row.y)] } : row));
    expect(columnSides(struck, [], outer, DIGIT)).toHaveLength(4);
  });

  test('bits of an upright fold under each other are no column, ones that stand unevenly are', () => {
    const slim = (x: number, y: number) => ({ ...wordAt(x, y, 1), x0: x - 2, x1: x + 2 });
    const with_ = (place: (r: number) => number) =>
      rows.map((row, r) => ({ ...row, words: [...row.words, slim(place(r), row.y)] }));
    expect(
      columnSides(
        with_(() => 400),
        [],
        outer,
        DIGIT,
      ),
    ).toHaveLength(4);
    expect(
      columnSides(
        with_((r) => 400 + 6 * (r % 3)),
        [],
        outer,
        DIGIT,
      ),
    ).toHaveLength(5);
  });
});
