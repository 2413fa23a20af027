import { describe, expect, test } from 'vitest';
import { scaleEnds } from '../../../../src/chart/labels/scale-ends.ts';
import { mendPoints } from '../../../../src/chart/labels/mend-points.ts';
import { fitScale, type ScaleLabel } from '../../../../src/chart/labels/scale-fit.ts';
import { tickNumbers } from '../../../../src/chart/labels/tick-number.ts';

const label = (at: number, text: string, confidence = 0.95): ScaleLabel => ({
  at,
  numbers: tickNumbers(text),
  confidence,
});
const even = (texts: readonly string[], from = 0, to = 1) =>
  texts.map((t, i) => label(from + ((to - from) * i) / (texts.length - 1), t));

describe('a scale by what most labels say', () => {
  test('a label that was read wrong is thrown out', () => {
    const fit = fitScale(even(['0', '100', '200', '800', '400', '500']))!;
    expect(fit.scale).toBe('linear');
    expect(fit.believed.map((b) => b.value)).toEqual([0, 100, 200, 400, 500]);
    expect(fit.against).toBe(1);
    expect(fit.step).toBe(100);
  });

  test('a tick read as a last figure leaves a number a little off, and the scale stands without it', () => {
    const fit = fitScale(even(['0.0', '2.5', '5.0', '7.5', '10.0', '12.51', '15.0', '17.51', '20.0', '22.5']))!;
    expect(fit.step).toBe(2.5);
    expect(fit.believed).toHaveLength(8);
    expect(fit.against).toBe(2);
    // numbers that keep no step with each other are no scale all the same
    expect(fitScale(even(['0', '11', '23', '34', '46', '57', '69'].map((t) => `${t}.3`)))).toBeNull();
  });

  test('the other labels settle whether a mark sets off thousands', () => {
    const fit = fitScale(even(['0', '500', '1.000', '1.500', '2.000']))!;
    expect(fit.believed.map((b) => b.value)).toEqual([0, 500, 1000, 1500, 2000]);
    const small = fitScale(even(['0', '0.500', '1.000', '1.500', '2.000']))!;
    expect(small.believed.map((b) => b.value)).toEqual([0, 0.5, 1, 1.5, 2]);
  });

  test('1, 2, 5, 10 at their logarithms are a log scale', () => {
    const fit = fitScale([label(0, '100'), label(0.301, '200'), label(0.699, '500'), label(1, '1000')])!;
    expect(fit.scale).toBe('log');
    expect(Math.exp(fit.offset)).toBeCloseTo(100, 0);
  });

  const onLog = (values: readonly number[], least: number, most: number) =>
    values.map((v) => label(Math.log(v / least) / Math.log(most / least), String(v)));

  test('a log scale of less than two octaves is told by how its numbers close up', () => {
    expect(fitScale(onLog([40, 50, 60, 70, 80, 90, 100], 30, 200))!.scale).toBe('log');
    expect(fitScale(onLog([2000, 3000, 4000], 1000, 5000))!.scale).toBe('log');
  });

  test('equal steps are linear, however few and however narrow', () => {
    expect(fitScale(even(['600', '700', '800', '900', '1000']))!.scale).toBe('linear');
    expect(fitScale(even(['2000', '3000', '4000']))!.scale).toBe('linear');
  });

  test('where all points were lost, the label with the leading nought tells, and it is said', () => {
    const labels = even(['0', '05', '10', '15', '20', '25']);
    const { fit, isUnsure } = mendPoints(labels, fitScale(labels)!);
    expect(fit.believed.map((b) => b.value)).toEqual([0, 1, 1.5, 2, 2.5]);
    expect(fit.step).toBe(0.5);
    expect(isUnsure).toBe(true);
    const sound = even(['0', '5', '10', '15', '20', '25']);
    const whole = fitScale(sound)!;
    expect(mendPoints(sound, whole)).toEqual({ fit: whole, isUnsure: false });
  });

  test('noughts in front that have told where the point was are believed, and so is 10 behind 08', () => {
    const labels = even(['00', '02', '04', '06', '08', '10']);
    const { fit, isUnsure } = mendPoints(labels, fitScale(labels)!);
    expect(fit.believed.map((b) => b.value)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
    expect(isUnsure).toBe(false);
  });

  test('noughts alone are 0.0 without its point: all the others lost theirs too', () => {
    const labels = even(['00', '25', '50', '75', '100', '125']);
    const { fit, isUnsure } = mendPoints(labels, fitScale(labels)!);
    expect(fit.believed.map((b) => b.value)).toEqual([0, 2.5, 5, 7.5, 10, 12.5]);
    expect(isUnsure).toBe(true);
  });

  test('points read on several labels and on none of the others tell that the others lost theirs', () => {
    const labels = even(['0', '25', '50', '7.5', '10.0', '125', '150', '175']);
    const { fit, isUnsure } = mendPoints(labels, fitScale(labels)!);
    expect(fit.believed.map((b) => b.value)).toEqual([0, 2.5, 5, 7.5, 10, 12.5, 15, 17.5]);
    expect(fit).toMatchObject({ step: 2.5, against: 0 });
    expect(isUnsure).toBe(false);
  });

  test('where several labels have their points, one that lost its own is believed', () => {
    const labels = even(['0', '2.5', '5.0', '75', '10.0', '12.5', '999', '17.5']);
    const { fit, isUnsure } = mendPoints(labels, fitScale(labels)!);
    expect(fit.believed.map((b) => b.value)).toEqual([0, 2.5, 5, 7.5, 10, 12.5, 17.5]);
    expect(fit.believed.find((b) => b.value === 7.5)!.isRepaired).toBe(true);
    expect(fit.against).toBe(1);
    expect(isUnsure).toBe(false);
  });

  test('a point read once, or where others have theirs, mends nothing', () => {
    const once = even(['0', '25', '50', '7.5', '100', '125', '150', '175']);
    const whole = fitScale(once)!;
    expect(mendPoints(once, whole)).toEqual({ fit: whole, isUnsure: true });
    const pointed = even(['0', '2.5', '5.0', '.75', '1.00', '12.5', '15.0', '17.5']);
    const own = fitScale(pointed)!;
    expect(mendPoints(pointed, own)).toEqual({ fit: own, isUnsure: true });
  });

  test('numbers without an order are no scale', () => {
    expect(fitScale(even(['183', '1723', '2521', '45', '933']))).toBeNull();
    expect(fitScale(even(['0', '100']))).toBeNull();
  });
});

describe('the ends of a scale', () => {
  const pointsOf = (labels: readonly ScaleLabel[]) => labels.map((l) => [l.at, l.numbers[0]!.value] as const);

  test('a scale whose numbers stop before the frame does is carried on to the next step', () => {
    const labels = even(['3500', '4000', '4500', '5000', '5500', '6000', '6500'], 0.126, 0.874);
    const { low, high } = scaleEnds(fitScale(labels)!, pointsOf(labels), true);
    expect([low.value, high.value]).toEqual([3000, 7000]);
  });

  test('ticks that a bent page has moved smoothly still end at round values', () => {
    const bend = (s: number) => s + 0.03 * s * (1 - s);
    const labels = [0, 1, 2, 3, 4, 5, 6].map((k) => label(bend(k / 6), String(1000 * k)));
    const { low, high, residual } = scaleEnds(fitScale(labels, 0.02)!, pointsOf(labels), true);
    expect([low.value, high.value]).toEqual([0, 6000]);
    expect(residual).toBeLessThan(0.0005);
  });

  test('ends that lie between the printed numbers are no printed numbers', () => {
    const labels = even(['0', '200', '400', '600', '800', '1000'], 0.0323, 0.9129);
    const { low, high } = scaleEnds(fitScale(labels)!, pointsOf(labels), true);
    // half a per cent of the scale
    expect(Math.abs(low.value + 36.7)).toBeLessThan(5.7);
    expect(Math.abs(high.value - 1098.9)).toBeLessThan(5.7);
    expect(low.roughness).toBeGreaterThan(0);
  });
});
