import { describe, expect, test } from 'vitest';
import { bestPath } from '../../../../src/chart/trace/best-path.ts';
import { bridgeGaps } from '../../../../src/chart/trace/bridge.ts';
import { oddBeginnings } from '../../../../src/chart/family.ts';
import { foresee, type StrokeStep } from '../../../../src/chart/trace/foresee.ts';
import { chainMarkers } from '../../../../src/chart/trace/marker-chain.ts';
import type { CurveReading } from '../../../../src/chart/index.ts';
import type { Likeness } from '../../../../src/chart/trace/likeness.ts';
import { SOLID, styleAlong } from '../../../../src/chart/trace/stroke-style.ts';
import type { TracedCurve } from '../../../../src/chart/trace/trace.ts';
import { untangle } from '../../../../src/chart/trace/untangle.ts';

const traced = (y: (x: number) => number, from = 0, to = 300): TracedCurve => {
  const n = Math.round((to - from) / 2.5) + 1;
  const x = Float64Array.from({ length: n }, (_, i) => from + 2.5 * i);
  const trace = { x, y: Float64Array.from(x, y), seen: new Float64Array(n).fill(1) };
  return { trace, drawn: 'line', colour: [200, 200, 200], width: 3, doubts: [], looseEnds: [], doubt_px: 0 };
};
/** Steps of five pixels along a course. */
const stepsAlong = (y: (x: number) => number, to: number): StrokeStep => {
  let step: StrokeStep | null = null;
  for (let x = 0, depth = 0; x <= to; x += 5, depth++)
    step = { x, y: y(x), angle: Math.atan2(y(x + 1) - y(x - 1), 2), quality: 1, parent: step, depth };
  return step!;
};

describe('curves that changed places at a crossing', () => {
  const rising = (x: number) => 200 - 0.5 * x;
  const falling = (x: number) => 50 + 0.5 * x;
  const middle = 150;

  test('get their own branches back', () => {
    const a = traced((x) => (x < middle ? rising(x) : falling(x)));
    const b = traced((x) => (x < middle ? falling(x) : rising(x)));
    const { curves, unsure } = untangle([a, b]);
    expect(curves[0]!.trace.y.at(-1)).toBeCloseTo(rising(300), 1);
    expect(curves[1]!.trace.y.at(-1)).toBeCloseTo(falling(300), 1);
    expect(unsure).toEqual([]);
  });

  test('keep them where they were right', () => {
    const { curves } = untangle([traced(rising), traced(falling), null]);
    expect(curves[0]!.trace.y.at(-1)).toBeCloseTo(rising(300), 6);
    expect(curves[2]).toBeNull();
  });
});

describe('a gap', () => {
  const course = (i: number) => 40 + 0.004 * (i - 60) ** 2;
  test('is bridged from the course on both sides, not from the letters beside it', () => {
    const x = Float64Array.from({ length: 121 }, (_, i) => 2.5 * i);
    const y = Float64Array.from({ length: 121 }, (_, i) => course(i) + (i >= 46 && i <= 74 ? 9 : 0));
    const hidden = Uint8Array.from({ length: 121 }, (_, i) => (i >= 48 && i <= 72 ? 1 : 0));
    bridgeGaps(x, y, hidden);
    for (const i of [50, 60, 70]) expect(Math.abs(y[i]! - course(i))).toBeLessThan(1);
    expect(x[60]).toBeCloseTo(150, 1);
  });
});

describe('how a stroke goes on', () => {
  test('straight', () => {
    const { angle, chord } = foresee(
      stepsAlong((x) => 0.5 * x, 100),
      5,
      24,
    );
    expect(angle).toBeCloseTo(Math.atan(0.5), 3);
    expect(chord).toBeCloseTo(Math.atan(0.5), 3);
  });

  test('round a bend: it turns on as it has been turning', () => {
    const radius = 120;
    const circle = (x: number) => radius - Math.sqrt(radius ** 2 - x ** 2);
    const last = stepsAlong(circle, 60);
    const slope = Math.asin((60 + 5) / radius);
    expect(foresee(last, 5, 24).angle).toBeGreaterThan(last.angle + 0.02);
    expect(foresee(last, 5, 24).angle).toBeCloseTo(slope, 1);
  });
});

describe('dashes', () => {
  const picture = (isInk: (x: number) => boolean): Likeness => {
    const [width, height] = [420, 21];
    const like = new Uint8Array(width * height);
    for (let x = 0; x < width; x++) if (isInk(x)) for (let y = 9; y <= 11; y++) like[y * width + x] = 100;
    return { width, height, like, hidden: new Uint8Array(width * height) };
  };
  const path = Array.from({ length: 81 }, (_, k): StrokeStep => ({
    x: 5 * k,
    y: 10,
    angle: 0,
    quality: 1,
    parent: null,
    depth: k,
  }));

  test('are told by gaps that come again and again', () => {
    const style = styleAlong(
      picture((x) => x % 18 < 11),
      path,
    );
    expect(style.longestDash).toBeCloseTo(11, 0);
    expect(style.longestGap).toBeCloseTo(7, 0);
  });

  test('are not seen in a solid line with a label on it', () => {
    expect(
      styleAlong(
        picture((x) => x < 150 || x > 190),
        path,
      ),
    ).toBe(SOLID);
    expect(
      styleAlong(
        picture(() => true),
        path,
      ),
    ).toBe(SOLID);
  });
});

describe('markers', () => {
  const place = (x: number, y: number, alike = 0.95) => ({ x, y, alike });
  test('of one curve are chained; a legend’s sample and another curve’s stay out', () => {
    const curve = [0, 1, 2, 3, 4, 5, 6, 7].map((k) => place(60 + 80 * k, 200 + 3 * k * k));
    const legend = place(720, 60, 0.95);
    const other = [0, 1, 2, 3].map((k) => place(100 + 80 * k, 500));
    const places = [...curve, legend, ...other];
    expect(chainMarkers(places, 4, 800)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });
});

describe('a family of curves', () => {
  const curve = (first: number, last: number): CurveReading => ({
    id: 'c1',
    yAxis: 'y1',
    quantity: 'static_pressure',
    speed_rpm: null,
    points: [
      [first, 100],
      [last, 0],
    ],
    points_px: [],
    expectedError: 0,
    confidence: 1,
  });

  test('begins alike: one that begins far later is looked at', () => {
    expect(oddBeginnings([curve(0, 4), curve(0.02, 3), curve(1.6, 2.6)])).toEqual([
      { curve: 2, end: 'first', flow: 1.6 },
    ]);
    expect(oddBeginnings([curve(0.9, 4), curve(0.7, 3), curve(0.6, 2.6)])).toEqual([]);
    expect(oddBeginnings([curve(2, 4)])).toEqual([]);
  });
});

test('the best path through a table of rewards goes round what is not worth its turns', () => {
  // columns of three rows: the good row is the middle one, with one bait at the edge
  const reward = Float32Array.from([0, 1, 0, 0, 1, 0, 1.2, 1, 0, 0, 1, 0]);
  expect(Array.from(bestPath(reward, 4, 3, 0.5).row)).toEqual([1, 1, 1, 1]);
  expect(bestPath(reward, 4, 3, 0.5).gathered).toBeCloseTo(4, 6);
});
