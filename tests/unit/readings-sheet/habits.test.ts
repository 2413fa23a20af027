import { describe, expect, test } from 'vitest';
import { askWords } from '../../../src/readings-sheet/cells/ask-words.ts';
import type { ReadCell } from '../../../src/readings-sheet/cells/read-cells.ts';
import { readNumber } from '../../../src/readings-sheet/cells/read-number.ts';
import { habitsOf, leavingOpen, withoutHabits } from '../../../src/readings-sheet/cells/reading-habits.ts';
import { respelt, settleHabits } from '../../../src/readings-sheet/cells/settle-habits.ts';
import { columnFit } from '../../../src/readings-sheet/columns/column-fit.ts';
import type { DigitReader } from '../../../src/readings-sheet/digits/digit-network.ts';
import type { Blot } from '../../../src/readings-sheet/ink/blots.ts';

const said = (text: string) => ({ text, confidence: 0.9, glyphs: [] });
const HABIT = { digits: '1', words: '7' };

describe('habits of the two readers', () => {
  test('are what they differ in again and again, not once', () => {
    const pairs = ['1523', '1569', '1453', '1354'].map((digits) => ({ digits, words: digits.replace('1', '7') }));
    expect(habitsOf([...pairs, { digits: '39', words: '38' }, { digits: '12', words: '1' }])).toEqual([HABIT]);
    expect(habitsOf(pairs.slice(0, 2))).toEqual([]);
  });

  test('say nothing where they are passed over', () => {
    expect(withoutHabits('7523', '1523', [HABIT])).toBe('1523');
    expect(withoutHabits('7523', '7523', [HABIT])).toBe('7523');
    expect(withoutHabits('2', '7', [HABIT])).toBe('2');
    const spellings = [
      { text: '7523', logLikelihood: -1 },
      { text: '1523', logLikelihood: 0 },
    ];
    expect(askWords(spellings, [said('7523')])[0]!.text).toBe('7523');
    expect(askWords(spellings, [said('7523')], [HABIT])[0]!.text).toBe('1523');
  });

  test('leave both figures open to the reader of digits, others as they are', () => {
    const shares = new Float32Array([0, 0.9, 0, 0, 0, 0, 0, 0.06, 0, 0.04, 0]);
    const open = leavingOpen(() => shares, [HABIT])({ width: 1, height: 1, ink: new Float32Array(1) });
    expect(open[1]).toBeCloseTo(0.48);
    expect(open[7]).toBeCloseTo(0.48);
    expect(open[9]).toBeCloseTo(0.04);
  });
});

describe('a column fits', () => {
  const spellings = (texts: readonly string[]) => texts.map((text) => [{ text, logLikelihood: 0 }]);

  test('better where it goes smoothly', () => {
    const smooth = ['1632', '1548', '1390', '1223', '945', '527', '16'];
    const jumping = smooth.map((text, row) => (row % 2 ? text.replace('1', '7') : text));
    expect(columnFit(spellings(smooth))).toBeGreaterThan(columnFit(spellings(jumping)) + 5);
  });
});

/** Figures four pixels wide on a field that says which figure each pixel is of, and how the reader of digits sees them. */
const TRUE = ['1632', '1548', '1390', '1223', '1045', '927', '716'];
const LINE = 8;
const field = { width: 40, height: LINE * TRUE.length, values: new Float32Array(40 * LINE * TRUE.length) };
TRUE.forEach((text, row) =>
  [...text].forEach((d, i) => field.values.fill(1 + Number(d), row * LINE * 40 + 8 * i, row * LINE * 40 + 8 * i + 4)),
);

function cellOf(text: string, words: string, row: number, digits: DigitReader): ReadCell {
  const blots = [...text].map((_, i): Blot => {
    const [x0, x1, y0] = [8 * i, 8 * i + 4, LINE * row];
    const pixels = Array.from({ length: 4 }, (_, k) => y0 * field.width + x0 + k);
    return { x0, x1, y0, y1: y0 + 1, pixels, cx: x0 + 2, cy: y0 + 0.5, level: 10 };
  });
  return {
    row,
    column: 0,
    blots,
    isStained: false,
    isCut: false,
    content: { kind: 'number', blots, isOne: true },
    heard: { blots, digit: 1, own: readNumber(blots, field, 1, digits), reads: [said(words)] },
    spellings: [],
  };
}

/** A reader that takes some figures for others. */
const seeing =
  (as: (figure: number) => number): DigitReader =>
  ({ ink }) => {
    const shares = new Float32Array(11).fill(0.001);
    shares[as(Math.round(Math.max(...ink) * 10) - 1)] = 0.99;
    return shares;
  };

describe('habits are settled', () => {
  const read = (digits: DigitReader, words: (text: string) => string) => {
    const cells = TRUE.map((text, row) => [cellOf(text, words(text), row, digits)]);
    return respelt(cells, field, digits, settleHabits(cells, field, digits)).map(([cell]) => cell!.spellings[0]!.text);
  };
  const swapped = (text: string) => text.replaceAll('1', '7');

  test('for the reader of digits where the columns go with it', () => {
    expect(
      read(
        seeing((d) => d),
        swapped,
      ),
    ).toEqual(TRUE);
  });

  test('for the reader of words where they go with that', () => {
    expect(
      read(
        seeing((d) => (d === 1 ? 7 : d)),
        (text) => text,
      ),
    ).toEqual(TRUE);
  });
});
