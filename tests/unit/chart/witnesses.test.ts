import { expect, test } from 'vitest';
import type { Doubt } from '../../../src/chart/doubts.ts';
import { SIDE_NAMES } from '../../../src/chart/frame/find-sides.ts';
import type { SnappedFrame } from '../../../src/chart/frame/frame-snap.ts';
import type { FoundAxis } from '../../../src/chart/labels/name-axes.ts';
import type { ScaleGrid } from '../../../src/chart/grid/scale-grid.ts';
import { askFrame, askGrid, bearsOut, isTickedOut } from '../../../src/chart/witnesses.ts';

/** A grid with so many lines, every `spacing` of the axis. */
const grid = (lines: number, spacing: number, isRound = true): ScaleGrid => ({
  lines: [],
  lattice: {
    anchored: Array.from({ length: lines }, (_, index) => ({
      index,
      seen: 1,
      truth: (index + 1) * spacing,
    })),
    filled: 1,
    explained: 1,
    spacing,
    residual: 0,
  },
  isRound,
  anchors: [],
  bend: { at: () => 0, largest: 0, residual: 0 },
});
const end = (value: number) => ({ value, isRound: true, roughness: 0, moved: 0 });
const few: Doubt = {
  warning: {
    code: 'scale-few-labels',
    path: '/axes/0',
    text: 'Only 3 numbers of the flow scale could be read.',
  },
  confidence: 0.55,
  serious: true,
};
/** A scale from 0 to 1000 with a number at every `step`. */
const axis = (quantity: FoundAxis['quantity'], step: number, ticked: number): FoundAxis =>
  ({
    quantity,
    doubts: [few],
    from: { low: end(0), high: end(1000), fit: { step }, ticked, residual: 0.0004 },
  }) as unknown as FoundAxis;

test('a grid that keeps step with the numbers bears a scale out', () => {
  const { from } = axis('flow', 200, 0);
  expect(bearsOut(from, grid(9, 0.1))).toBe(true);
  expect(bearsOut(from, grid(4, 0.4))).toBe(true);
  // three lines may stand at round values by chance; 1000/8 is no part of 200
  expect(bearsOut(from, grid(3, 0.2))).toBe(false);
  expect(bearsOut(from, grid(7, 0.125))).toBe(false);
  expect(bearsOut(from, grid(9, 0.1, false))).toBe(false);
});

test('what a grid bears out is still said, and no more serious', () => {
  const [said] = askGrid(axis('flow', 200, 0), grid(9, 0.1));
  expect(said!.warning).toEqual(few.warning);
  expect([said!.serious, said!.confidence]).toEqual([false, 0.95]);
  expect(askGrid(axis('flow', 200, 0), grid(3, 0.2))).toEqual([few]);
  expect(askGrid(axis('flow', 200, 0), undefined)).toEqual([few]);
});

test('a scale that ends at no printed number stays doubted, whatever the grid', () => {
  const ends = { ...few, warning: { ...few.warning, code: 'scale-ends-unsure' } };
  const scale = { ...axis('flow', 200, 0), doubts: [few, ends] };
  const between = { ...scale, from: { ...scale.from, high: { ...end(980), roughness: 0.0022 }, fit: { step: 196 } } };
  expect(askGrid(scale, grid(9, 0.1)).map((d) => d.serious)).toEqual([false, false]);
  expect(askGrid(between as unknown as FoundAxis, grid(9, 0.1)).map((d) => d.serious)).toEqual([false, true]);
});

const frame = (open: string): SnappedFrame =>
  ({ sides: Object.fromEntries(SIDE_NAMES.map((n) => [n, { kind: n === open ? 'open' : 'line' }])) }) as SnappedFrame;

test('a frame that was hard to find is taken where its sides are printed and both scales end where they should', () => {
  const scales = [axis('flow', 200, 0), axis('static_pressure', 200, 0)].map((a) => [a, grid(9, 0.1)] as const);
  const never = () => false;
  expect(askFrame(0.9, frame(''), [], never)).toEqual([]);
  expect(askFrame(0.5, frame(''), scales, never).map((d) => d.serious)).toEqual([false]);
  const unsure = askFrame(0.5, frame('top'), scales, never);
  expect(unsure.map((d) => [d.serious, d.confidence, d.warning.text])).toEqual([
    [true, 0.5, 'The edges of the plot are hard to see: please check its corners.'],
  ]);
  expect(askFrame(0.55, frame('top'), scales, (side) => side === 'top')[0]!.serious).toBe(false);
  // a line of the grid may have been taken for the side
  expect(askFrame(0.4, frame('top'), scales, (side) => side === 'top')[0]!.serious).toBe(true);
  expect(askFrame(0.5, frame(''), scales.slice(0, 1), never)[0]!.serious).toBe(true);
});

test('a number that stands right at a side tells where it lies, however hard its line was to see', () => {
  const numbered = (quantity: FoundAxis['quantity'], places: readonly number[]): FoundAxis => {
    const scale = axis(quantity, 200, 6);
    const fit = { step: 200, believed: places.map((_, index) => ({ index, value: 0, isRepaired: false })) };
    return { ...scale, from: { ...scale.from, fit, labels: places.map((at) => ({ at })) } } as unknown as FoundAxis;
  };
  const asked = (top: number): boolean => {
    const scales = [numbered('flow', [0, 0.5, 1]), numbered('static_pressure', [0, 0.5, top])];
    return askFrame(
      0.35,
      frame('top'),
      scales.map((a) => [a, grid(9, 0.1)] as const),
      (side) => side === 'top',
    )[0]!.serious;
  };
  expect(asked(1.004)).toBe(false);
  // numbers go on beyond the side, or end before it
  expect(asked(1.2)).toBe(true);
  expect(asked(0.9)).toBe(true);
});

test('sharp ticks along a scale tell where the sides at its ends lie', () => {
  const scales = [[axis('flow', 200, 5), undefined] as const, [axis('static_pressure', 200, 3), undefined] as const];
  expect(isTickedOut('right', scales)).toBe(true);
  expect(isTickedOut('top', scales)).toBe(false);
});
