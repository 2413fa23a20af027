import { describe, expect, test } from 'vitest';
import { fractionOf } from '../../../fixtures/generate/chart/chart.ts';
import { MANNERS } from '../../../fixtures/generate/chart/manners.ts';
import { composePage, type Page } from '../../../fixtures/generate/page/page.ts';
import { randomFrom } from '../../../fixtures/generate/random.ts';
import { unitByName } from '../../../src/units/index.ts';

const manners = Object.keys(MANNERS);
const pages: Page[] = Array.from({ length: 4 * manners.length }, (_, k) =>
  composePage(randomFrom(500 + k), { manner: manners[k % manners.length]! }),
);
const charts = pages.flatMap((p) => p.charts);

describe('invented pages', () => {
  test('have on every chart a primary pressure curve that spans a good part of the frame', () => {
    for (const { axes, curves } of charts) {
      const x = axes.find((a) => a.id === 'x')!;
      const primary = curves.filter((c) => c.curve.primary);
      expect(primary.length).toBeGreaterThan(0);
      for (const { curve } of primary) {
        expect(curve.quantity).toBe(axes.find((a) => a.id === 'y1')!.quantity);
        expect(fractionOf(x, curve.to) - fractionOf(x, curve.from)).toBeGreaterThan(0.12);
      }
    }
  });

  test('print enough numbers on each axis to tell a scale by, never one on top of another', () => {
    for (const { axes } of charts)
      for (const axis of axes) {
        expect(axis.ticks.length).toBeGreaterThanOrEqual(3);
        expect(new Set(axis.printed).size).toBe(axis.printed.length);
        expect(axis.ticks).toEqual(axis.ticks.toSorted((a, b) => a - b));
      }
  });

  test('use units the program knows, with its factors', () => {
    for (const { axes } of charts)
      for (const { unit, siFactor } of axes) expect(unitByName(unit)!.factor / siFactor).toBeCloseTo(1, 4);
  });

  test('keep every speed by the fan laws', () => {
    for (const { curves, axes } of charts) {
      const [fast, slow] = curves.filter((c) => c.curve.primary && c.curve.variant === null).map((c) => c.curve);
      if (!fast?.speed_rpm || !slow?.speed_rpm || axes[0]!.scale === 'log') continue;
      const ratio = slow.speed_rpm / fast.speed_rpm;
      const flow = (slow.from + slow.to) / 2;
      // printed speeds are rounded to ten
      expect(slow.value(flow) / (ratio ** 2 * fast.value(flow / ratio))).toBeCloseTo(1, 1);
    }
  });

  test('cover every manner, axes of all kinds, logarithms, lower panels, markers and lines that are no curves', () => {
    const seen = (is: (c: (typeof charts)[number]) => boolean) => charts.filter(is).length;
    expect(new Set(charts.map((c) => c.chart.style.name))).toEqual(new Set(manners));
    expect(seen((c) => c.axes.some((a) => a.id === 'y2'))).toBeGreaterThan(5);
    expect(seen((c) => c.axes.some((a) => a.id === 'y3'))).toBeGreaterThan(0);
    expect(seen((c) => c.axes.some((a) => a.scale === 'log'))).toBeGreaterThan(2);
    expect(seen((c) => c.lower !== null)).toBeGreaterThan(0);
    expect(seen((c) => c.distractors.length > 0)).toBeGreaterThan(2);
    expect(seen((c) => c.curves.some((k) => k.curve.drawn !== 'line'))).toBeGreaterThan(2);
    expect(seen((c) => c.axes.some((a) => a.multiplier > 1))).toBeGreaterThan(2);
  });
});
