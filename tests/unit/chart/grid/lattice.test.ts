import { describe, expect, test } from 'vitest';
import { fractionAt, valueAt, type AxisScale } from '../../../../src/chart/axes.ts';
import { fitEvenSteps, fitLattice } from '../../../../src/chart/grid/lattice.ts';

const linear: AxisScale = { scale: 'linear', min: 0, max: 5500 };
const log: AxisScale = { scale: 'log', min: 100, max: 3000 };
const lines = (places: number[], strength = 10) => places.map((at) => ({ at, strength }));
const truths = (fit: ReturnType<typeof fitLattice>, axis: AxisScale) =>
  fit!.anchored.map((a) => Math.round(valueAt(axis, a.truth) * 1000) / 1000);

describe('axis', () => {
  test.each([linear, log])('$scale: a value and its fraction undo each other', (axis) => {
    for (const value of [150, 999.5, 2500]) expect(valueAt(axis, fractionAt(axis, value))).toBeCloseTo(value, 8);
    expect(valueAt(axis, 0)).toBeCloseTo(axis.min, 9);
    expect(valueAt(axis, 1)).toBeCloseTo(axis.max, 9);
  });

  test('a log axis has no zero', () => {
    expect(() => fractionAt(log, 0)).toThrow(new RangeError('value: expected above zero on a log axis, received 0'));
  });
});

describe('round values under grid lines', () => {
  test('every 500 of 0..5500', () => {
    const fit = fitLattice(lines([1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((k) => k / 11)), linear, 0.008);
    expect(truths(fit, linear)).toEqual([500, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 4500, 5000]);
  });

  test('a bent page shifts them and they are still told', () => {
    const bent = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((k) => k / 11).map((u) => u + 0.06 * u * (1 - u));
    const fit = fitLattice(lines(bent), linear, 0.008);
    expect(truths(fit, linear)).toEqual([500, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 4500, 5000]);
  });

  test('a missing line and one that does not belong are no trouble', () => {
    const places = [1, 2, 4, 5, 6, 7, 8, 9, 10].map((k) => k / 11);
    const fit = fitLattice([...lines(places), { at: 0.58, strength: 6 }], linear, 0.008);
    expect(truths(fit, linear)).toEqual([500, 1000, 2000, 2500, 3000, 3500, 4000, 4500, 5000]);
  });

  test('a frame that begins and ends between round values', () => {
    const axis: AxisScale = { scale: 'linear', min: 430, max: 2338.6 };
    const places = [500, 750, 1000, 1250, 1500, 1750, 2000, 2250].map((v) => fractionAt(axis, v));
    expect(truths(fitLattice(lines(places), axis, 0.008), axis)).toEqual([
      500, 750, 1000, 1250, 1500, 1750, 2000, 2250,
    ]);
  });

  test('strong lines settle what the fine ones between them are', () => {
    const axis: AxisScale = { scale: 'linear', min: 0, max: 1000 };
    const fine = Array.from({ length: 15 }, (_, k) => (k + 1) / 16).map((at, k) => ({
      at: at + 0.02 * at * (1 - at),
      strength: k % 4 === 3 ? 20 : 5,
    }));
    expect(truths(fitLattice(fine, axis, 0.008), axis)).toEqual(fine.map((_, k) => 62.5 * (k + 1)));
  });

  test('decades on a log axis', () => {
    const values = [200, 300, 400, 500, 600, 700, 800, 900, 1000, 2000];
    const fit = fitLattice(lines(values.map((v) => fractionAt(log, v))), log, 0.008);
    expect(truths(fit, log)).toEqual(values);
  });

  test('an open end may lie elsewhere', () => {
    const places = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((k) => (k / 11) * 1.025);
    const fit = fitLattice(lines(places), linear, 0.008, { low: false, high: true });
    expect(truths(fit, linear)).toEqual([500, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 4500, 5000]);
  });

  test('lines that stand at no round values of the scale are not explained away', () => {
    const axis: AxisScale = { scale: 'linear', min: 0, max: 4700 };
    expect(fitLattice(lines([1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((k) => k / 11)), axis, 0.03)).toBeNull();
  });

  test('they may still divide the frame evenly, and so serve as a ruler', () => {
    const bent = [1, 2, 3, 4, 5, 6, 7, 8].map((k) => k / 9).map((u) => u + 0.04 * u * (1 - u));
    const fit = fitEvenSteps(lines(bent), 0.03)!;
    expect(fit.anchored.map((a) => Math.round(a.truth * 9))).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(fitEvenSteps(lines([0.13, 0.41, 0.52, 0.83]), 0.03)).toBeNull();
  });

  test('no lines, no lattice', () => {
    expect(fitLattice([], linear, 0.008)).toBeNull();
  });
});
