import { describe, expect, test } from 'vitest';
import { boxedPaper, curvePath, onPaper, type Xy } from '../paper.ts';
import { distanceFrom, readPlot } from './drawn.ts';

type Course = (flow: number) => number;
const falling =
  (shutOff: number, free: number): Course =>
  (q) =>
    shutOff * (1 - (q / free) ** 2.2);
const GOOD = 0.002;

describe('without a tap', () => {
  test('every speed of a family is found, and nothing else', () => {
    const family = [1, 0.85, 0.7, 0.55].map((n) => ({ course: falling(900 * n * n, 3.6 * n), to: 3.6 * n }));
    const paper = boxedPaper();
    for (const { course, to } of family) paper.line(curvePath(course, 0, to), 2.6);
    const { curves, found } = readPlot(paper);
    expect(found.lines).toHaveLength(4);
    expect(found.unexplained).toEqual([]);
    family.forEach(({ course, to }, k) => {
      const { rms, covered } = distanceFrom(curves[k]!.points, course, 0, to);
      expect(rms).toBeLessThan(GOOD);
      expect(covered).toBeGreaterThan(0.97);
    });
  });

  test('a solid and a dashed line that cross keep their own ways', () => {
    const pressure = falling(850, 3.7);
    const rising: Course = (q) => 200 + 190 * q - 14 * q * q;
    const paper = boxedPaper()
      .line(curvePath(pressure, 0, 3.7), 2.6)
      .line(curvePath(rising, 0, 3.6), 2.6, [20, 20, 20], [16, 9]);
    const { lines } = readPlot(paper).found;
    expect(lines).toHaveLength(2);
    const bare = lines.map((l) => l.worth.bare).sort((a, b) => a - b);
    expect(bare[0]).toBeLessThan(0.1);
    expect(bare[1]).toBeGreaterThan(0.2);
  });

  test('a label is not taken for a line, nor the box around it', () => {
    const pressure = falling(850, 3.7);
    const paper = boxedPaper().line(curvePath(pressure, 0, 3.7), 2.6);
    const [x, y] = onPaper(2.6, 850);
    paper.line(
      [
        [x, y],
        [x + 150, y],
        [x + 150, y + 30],
        [x, y + 30],
        [x, y],
      ],
      1.6,
    );
    for (let k = 0; k < 7; k++) {
      const left = x + 12 + 18 * k;
      const letter: Xy[] =
        k % 2
          ? [
              [left, y + 22],
              [left + 5, y + 8],
              [left + 10, y + 22],
            ]
          : [
              [left, y + 8],
              [left, y + 22],
              [left + 9, y + 22],
              [left + 9, y + 8],
            ];
      paper.line(letter, 2);
    }
    const { lines } = readPlot(paper).found;
    expect(lines).toHaveLength(1);
  });

  test('a curve that ends on the box around a legend does not go on along it', () => {
    const rising = (q: number) => 300 + 120 * q;
    const [x, y] = onPaper(3, rising(3));
    const box: Xy[] = [
      [x - 120, y],
      [x + 150, y],
      [x + 150, y - 120],
      [x - 120, y - 120],
      [x - 120, y],
    ];
    const paper = boxedPaper()
      .line(curvePath(rising, 0, 3), 2.6)
      .line(box, 1.6);
    for (const row of [30, 75])
      for (let k = 0; k < 6; k++) {
        const left = x - 60 + 18 * k;
        const letter: Xy[] = [
          [left, y - row - 16],
          [left, y - row],
          [left + 9, y - row],
          [left + 9, y - row - 16],
        ];
        paper.line(letter, 2);
      }
    const { found } = readPlot(paper);
    expect(found.lines).toHaveLength(1);
    const { trace } = found.lines[0]!;
    expect(trace.y.at(-1)! - Math.min(...trace.y)).toBeLessThan(3);
    const rise = (a: number, b: number) => (trace.y[a]! - trace.y[b]!) / (trace.x[b]! - trace.x[a]!);
    expect(rise(trace.x.length - 12, trace.x.length - 1)).toBeCloseTo(rise(0, 40), 1);
  });

  test('ticks inside the frame are no print without a curve', () => {
    const pressure = falling(850, 3.7);
    const paper = boxedPaper().line(curvePath(pressure, 0, 3.7), 2.6);
    for (let k = 1; k < 40; k++) {
      const [x, y] = onPaper(k / 10, 0);
      paper.line(
        [
          [x, y - 2],
          [x, y - 14],
        ],
        1.8,
      );
    }
    expect(readPlot(paper).found.unexplained).toEqual([]);
  });

  test('a deep dip is a part of its curve', () => {
    const dip = (q: number) => 700 - 45 * q * q + 240 * Math.cos(2.6 * q);
    const { found, curves } = readPlot(boxedPaper().line(curvePath(dip, 0, 3), 2.6));
    expect(found.lines).toHaveLength(1);
    expect(distanceFrom(curves[0]!.points, dip, 0, 3).covered).toBeGreaterThan(0.97);
  });

  test('a curve that a label interrupts near its beginning is found whole', () => {
    const pressure = falling(850, 3.7);
    const paper = boxedPaper()
      .line(curvePath(pressure, 0, 0.3), 2.6)
      .line(curvePath(pressure, 0.75, 3.7), 2.6);
    const [x, y] = onPaper(0.33, pressure(0.5));
    for (let k = 0; k < 5; k++) {
      const left = x + 4 + 18 * k;
      paper.line(
        [
          [left, y - 8],
          [left, y + 8],
          [left + 9, y + 8],
          [left + 9, y - 8],
        ],
        2,
      );
    }
    const { curves, found } = readPlot(paper);
    expect(found.lines).toHaveLength(1);
    const { rms, covered } = distanceFrom(curves[0]!.points, pressure, 0, 3.7);
    expect(rms).toBeLessThan(GOOD);
    expect(covered).toBeGreaterThan(0.97);
  });

  test('dashes with rings on them are no word', () => {
    const pressure = falling(950, 2.2);
    const paper = boxedPaper().line(curvePath(pressure, 0.2, 2.15), 2, [20, 20, 20], [20, 8]);
    for (let q = 0.2; q < 2.15; q += q < 1.3 ? 0.4 : 0.1) paper.ring(onPaper(q, pressure(q)), 7);
    const { curves } = readPlot(paper);
    expect(distanceFrom(curves[0]!.points, pressure, 0.2, 2.15).covered).toBeGreaterThan(0.97);
  });

  test('test points without a line are one curve', () => {
    const pressure = falling(850, 3.5);
    const paper = boxedPaper();
    for (let k = 0; k < 10; k++) paper.ring(onPaper(0.2 + 0.34 * k, pressure(0.2 + 0.34 * k)), 7);
    const { curves, found } = readPlot(paper);
    expect(found.lines.map((l) => l.drawn)).toEqual(['markers']);
    expect(distanceFrom(curves[0]!.points, pressure, 0.2, 3.26).rms).toBeLessThan(0.006);
  });

  test('an empty plot has no curve, and says so', () => {
    const { curves, doubts } = readPlot(boxedPaper());
    expect(curves).toEqual([]);
    expect(doubts.map((d) => d.warning.text)).toContain('No curve was found in this plot: please tap one.');
  });
});
