import { expect, test } from 'vitest';
import type { FoundAxis } from '../../../../src/chart/labels/name-axes.ts';
import { isLikelyShare, powerShare } from '../../../../src/chart/labels/power-witness.ts';

const axis = (quantity: string, unit: string, max: number) =>
  ({ quantity, unit, max, doubts: [] as FoundAxis['doubts'] }) as FoundAxis;

test('flow, pressure and power of one fan go together; a thousand missed does not', () => {
  // 1 m³/s · 1000 Pa = 1 kW of air power at the ends of the scales
  const share = powerShare([
    axis('flow', 'm³/h', 3600),
    axis('static_pressure', 'kPa', 1),
    axis('shaft_power', 'kW', 1.5),
  ])!;
  expect(share).toBeCloseTo(1.5, 9);
  expect(isLikelyShare(share)).toBe(true);
  const missed = powerShare([
    axis('flow', 'm³/h', 3.6),
    axis('total_pressure', 'kPa', 1),
    axis('shaft_power', 'kW', 1.5),
  ])!;
  expect(isLikelyShare(missed)).toBe(false);
  expect(powerShare([axis('flow', 'm³/h', 3600), axis('static_pressure', 'kPa', 1)])).toBeNull();
});

test('a power whose unit is a guess is no witness', () => {
  const guessed = {
    ...axis('shaft_power', 'kW', 220),
    doubts: [{ warning: { code: 'unit-unread', text: '', path: '/axes/2' }, confidence: 0.4, serious: true }],
  };
  expect(powerShare([axis('flow', 'L/s', 100), axis('static_pressure', 'Pa', 2000), guessed])).toBeNull();
});
