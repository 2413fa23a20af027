import { describe, expect, test } from 'vitest';
import { boxedPaper, curvePath } from '../paper.ts';
import { distanceFrom, FLOW, POWER, PRESSURE, readPlot } from './drawn.ts';

const SPEEDS = [1, 0.85, 0.7];
const pressureAt = (n: number) => (q: number) => 900 * n * n - 40 * (q - 0.6 * n) ** 2 * (q > 0.6 * n ? 1 : 0.4);

describe('lines that end on another line', () => {
  test('of equal efficiency leave the outermost curve whole', () => {
    const paper = boxedPaper();
    for (const n of SPEEDS) paper.line(curvePath(pressureAt(n), 0.3 * n, 3.7 * n), 2.6);
    for (const share of [0.8, 1.9]) {
      const c = pressureAt(1)(share) / share ** 2;
      paper.line(
        curvePath((q) => c * q * q, 0.7 * share, share),
        2,
      );
    }
    const { curves, named } = readPlot(paper);
    expect(named.distractors).toHaveLength(2);
    expect(curves).toHaveLength(SPEEDS.length);
    SPEEDS.forEach((n, k) => {
      const { rms, covered } = distanceFrom(curves[k]!.points, pressureAt(n), 0.3 * n, 3.7 * n);
      expect(rms).toBeLessThan(0.003);
      expect(covered).toBeGreaterThan(0.95);
    });
  });
});

describe('falling power', () => {
  test('over the same flows as the pressure of its speed is no pressure', () => {
    const paper = boxedPaper();
    for (const n of SPEEDS) {
      paper.line(
        curvePath((q) => 900 * n * n * (1 - (q / (3.6 * n)) ** 1.5), 0, 3.6 * n),
        2.6,
      );
      paper.line(
        curvePath((q) => n ** 3 * (560 - (190 / n) * (q / 3.6)), 0, 3.6 * n),
        2.6,
        [20, 60, 160],
      );
    }
    const { curves } = readPlot(paper, [FLOW, PRESSURE, POWER]);
    expect(curves.map((c) => c.quantity).sort()).toEqual([
      ...SPEEDS.map(() => 'shaft_power'),
      ...SPEEDS.map(() => 'static_pressure'),
    ]);
  });
});
