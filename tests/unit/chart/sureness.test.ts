import { expect, test } from 'vitest';
import type { Doubt } from '../../../src/chart/doubts.ts';
import { stepSureness, sureness } from '../../../src/chart/sureness.ts';

const doubt = (path: string, confidence: number, serious = false): Doubt => ({
  warning: { code: 'x', text: '', path },
  confidence,
  serious,
});
const shown = {
  axes: [
    { id: 'x', quantity: 'flow' },
    { id: 'y1', quantity: 'static_pressure' },
    { id: 'y2', quantity: 'efficiency' },
    { id: 'y3', quantity: 'shaft_power' },
  ],
  curves: [
    { yAxis: 'y1', quantity: 'static_pressure' },
    { yAxis: 'y2', quantity: 'efficiency' },
  ],
} as const;

test('two doubts about one step count as the graver of them', () => {
  expect(stepSureness([])).toBe(0.98);
  expect(stepSureness([doubt('/axes/0', 0.9), doubt('/axes/0', 0.7)])).toBe(0.7);
  const { overall } = sureness(shown, [doubt('/axes/0', 0.9), doubt('/axes/0', 0.7)]);
  expect(overall).toBeCloseTo(0.7, 9);
});

test('doubts about different steps add up', () => {
  const { overall, needsReview } = sureness(shown, [doubt('/axes/0', 0.7), doubt('/curves/0', 0.75)]);
  expect(overall).toBeCloseTo((0.7 * 0.75) / 0.98, 9);
  expect(needsReview).toBe(true);
  expect(sureness(shown, [doubt('/axes/0', 0.7), doubt('/axes/1', 0.75)]).overall).toBeCloseTo(overall, 9);
  const curves = [...shown.curves, ...shown.curves];
  const both = [doubt('/curves/0', 0.75), doubt('/curves/2', 0.7)];
  expect(sureness({ ...shown, curves }, both).overall).toBeCloseTo(0.7, 9);
  expect(sureness(shown, [doubt('/axes/0', 0.9), doubt('/curves/0', 0.9)]).needsReview).toBe(false);
});

test('one serious doubt asks for a look, however sure the rest', () => {
  expect(sureness(shown, [doubt('/frameCorners_px', 0.9, true)]).needsReview).toBe(true);
  expect(sureness(shown, [doubt('/curves', 0.9, true)]).needsReview).toBe(true);
  expect(sureness(shown, [doubt('/seeds/1', 0.9, true)]).needsReview).toBe(true);
});

test('doubts about an efficiency and about a power scale without a curve are said and do not count', () => {
  const doubts = [doubt('/axes/2', 0.3, true), doubt('/curves/1', 0.3, true), doubt('/axes/3', 0.3, true)];
  expect(sureness(shown, doubts)).toEqual({ overall: 0.98, needsReview: false });
  const withPower = { ...shown, curves: [...shown.curves, { yAxis: 'y3', quantity: 'shaft_power' } as const] };
  expect(sureness(withPower, doubts).needsReview).toBe(true);
});
