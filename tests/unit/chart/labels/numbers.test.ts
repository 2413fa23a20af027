import { describe, expect, test } from 'vitest';
import { withoutHalves, withWholes } from '../../../../src/chart/labels/blank-thousands.ts';
import { boxOf, type Word } from '../../../../src/chart/labels/chains.ts';
import { numbersBeyond } from '../../../../src/chart/labels/numbers-beyond.ts';
import type { Piece } from '../../../../src/chart/labels/pieces.ts';
import { fitScale } from '../../../../src/chart/labels/scale-fit.ts';
import type { Surroundings } from '../../../../src/chart/labels/surroundings.ts';
import type { TickGroup } from '../../../../src/chart/labels/tick-groups.ts';
import { tickLabel } from '../../../../src/chart/labels/tick-labels.ts';

const FRAME = { x0: 300, y0: 400, x1: 1300, y1: 1000 };
const all = { frame: FRAME } as Surroundings;
let id = 0;

/** Figures 10 wide and 16 high beside each other, the first at a place. */
function word(x: number, y: number, figures: number): Word {
  const pieces = Array.from({ length: figures }, (_, k): Piece => ({
    id: ++id,
    x0: x + 13 * k,
    x1: x + 13 * k + 10,
    y0: y,
    y1: y + 16,
    area: 100,
  }));
  return { ...boxOf(pieces), run: 'level', pieces, size: 16 };
}
const labelled = (side: 'bottom' | 'left', w: Word, text: string) =>
  tickLabel(all, side, w, { text, confidence: 0.95, glyphs: [] });

describe('a number with a blank in it', () => {
  const row = [
    labelled('bottom', word(530, 1010, 3), '500'),
    labelled('bottom', word(768, 1010, 1), '1'),
    labelled('bottom', word(793, 1010, 3), '000'),
    labelled('bottom', word(1018, 1010, 1), '1'),
    labelled('bottom', word(1043, 1010, 3), '500'),
  ];

  test('is read as a whole where its halves stand a blank apart', () => {
    const labels = withWholes(all, 'bottom', row);
    const fit = fitScale(labels)!;
    expect(fit.believed.map((b) => b.value)).toEqual([500, 1000, 1500]);
    const believed = new Set(fit.believed.map((b) => b.index));
    expect(withoutHalves(labels, (i) => believed.has(i)).map((l) => l.text)).toEqual(['500', '1 000', '1 500']);
  });

  test('two numbers further apart stay two', () => {
    const apart = [labelled('bottom', word(500, 1010, 1), '1'), labelled('bottom', word(560, 1010, 3), '500')];
    expect(withWholes(all, 'bottom', apart)).toEqual(apart);
  });
});

describe('numbers beyond a frame', () => {
  // 100 px a step: 0 at the bottom side, 6 at the top one
  const at = (steps: number) => word(270, 1000 - 100 * steps - 8, 2);
  const words = [0, 1, 2, 3, 4, 5].map(at);
  const group: TickGroup = { side: 'left', isInside: false, distance: 0.5, words };
  const fit = fitScale(words.map((w, k) => labelled('left', w, String(10 * k))))!;

  test('the next one is found where it would stand', () => {
    const next = [at(7), at(8)];
    expect(numbersBeyond(all, group, fit, [...words, ...next])).toEqual(next);
  });

  test('a word between two steps or out of line is none', () => {
    expect(numbersBeyond(all, group, fit, [at(7.4), word(180, 1000 - 700 - 8, 2)])).toEqual([]);
  });
});
