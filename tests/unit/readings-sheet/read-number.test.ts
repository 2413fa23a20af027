import { describe, expect, test } from 'vitest';
import { cellContent } from '../../../src/readings-sheet/cells/cell-content.ts';
import { readNumber } from '../../../src/readings-sheet/cells/read-number.ts';
import { createDigitReader } from '../../../src/readings-sheet/digits/digit-network.ts';
import { DIGIT_WEIGHTS } from '../../../src/readings-sheet/digits/digit-weights.ts';
import { findBlots } from '../../../src/readings-sheet/ink/blots.ts';
import type { Field } from '../../../src/writing/crop/filters.ts';

const read = createDigitReader(DIGIT_WEIGHTS);
const HIGH = 30;

/** Digits as a seven-year-old draws them, in strokes of points 0..10; `|` parts strokes. */
const STROKES: Record<string, string> = {
  '0': '5,0 1,2 0,5 1,8 5,10 9,8 10,5 9,2 5,0',
  '1': '5,0 5,10',
  '2': '0,2 3,0 7,0 9,3 6,6 0,10 9,10',
  '3': '0,1 4,0 8,1 8,3 4,5 8,6 9,8 5,10 0,9',
  '4': '6,10 6,0 0,7 9,7',
  '7': '0,0 9,0 4,10',
};

/** Numbers written on a field, a pen three pixels wide; a point after a digit is written with it. */
function written(text: string, extra: readonly (readonly [number, number, number, number])[] = []): Field {
  const [width, height] = [40 + 26 * text.length, 70];
  const values = new Float32Array(width * height);
  const line = (ax: number, ay: number, bx: number, by: number) => {
    const steps = Math.ceil(Math.hypot(bx - ax, by - ay) * 3) + 1;
    for (let i = 0; i <= steps; i++) {
      const [x, y] = [ax + ((bx - ax) * i) / steps, ay + ((by - ay) * i) / steps].map(Math.round) as [number, number];
      for (let v = y - 1; v <= y + 1; v++) for (let u = x - 1; u <= x + 1; u++) values[v * width + u] = 0.5;
    }
  };
  let x = 20;
  for (const letter of text) {
    if (letter === '.') {
      line(x, 20 + HIGH, x + 1, 20 + HIGH);
      x += 8;
      continue;
    }
    for (const stroke of (STROKES[letter] ?? '').split('|')) {
      const points = stroke.split(' ').map((p) => p.split(',').map(Number) as [number, number]);
      points.slice(1).forEach(([u, v], i) => {
        const [pu, pv] = points[i]!;
        line(x + pu * 1.7, 20 + pv * 3, x + u * 1.7, 20 + v * 3);
      });
    }
    x += 26;
  }
  for (const [ax, ay, bx, by] of extra) line(ax, ay, bx, by);
  return { width, height, values };
}

const blotsOf = (field: Field) => findBlots(field, 0.2, 4).sort((a, b) => a.x0 - b.x0);
const spelt = (field: Field) => readNumber(blotsOf(field), field, HIGH, read)[0]?.text;

describe('a number in a cell', () => {
  test.each(['2047', '31.2', '7.04', '340'])('%s', (text) => {
    expect(spelt(written(text))).toBe(text);
  });

  test('a point that is only a speck at the end does not count', () => {
    expect(spelt(written('42.'))).toBe('42');
  });

  test('a mark as wide as it is high is a comma where it hangs below the line', () => {
    const comma = written(
      '20 47',
      [72, 76, 80, 84].map((x) => [x, 48, x, 56] as const),
    );
    expect(spelt(comma)).toBe('20.47');
  });

  test('bare paper spells nothing', () => {
    expect(spelt(written(''))).toBeUndefined();
  });
});

describe('what a cell holds', () => {
  const contentOf = (field: Field) => cellContent(blotsOf(field), field, HIGH, read);

  test('two short strokes repeat the cell above', () => {
    const ditto = written('   ', [
      [50, 24, 50, 33],
      [58, 24, 58, 33],
    ]);
    expect(contentOf(ditto)).toEqual({ kind: 'ditto', isSure: true });
  });

  test('a dash is nothing', () => {
    expect(contentOf(written('   ', [[50, 35, 75, 35]]))).toMatchObject({ kind: 'empty' });
  });

  test('what is struck out does not count, the number beside it does', () => {
    const field = written('243  370', [[14, 36, 94, 33]]);
    const content = contentOf(field);
    expect(content).toMatchObject({ kind: 'number', isOne: true });
    expect(content.kind === 'number' && readNumber(content.blots, field, HIGH, read)[0]!.text).toBe('370');
  });

  test('of two numbers neither is the one', () => {
    expect(contentOf(written('24    37'))).toMatchObject({ kind: 'number', isOne: false });
  });
});
