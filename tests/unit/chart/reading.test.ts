import { describe, expect, test } from 'vitest';
import { ChartHints, preparePhoto, readHintedChart, type AxisHint, type FullHints } from '../../../src/chart/index.ts';
import { matchOf } from './distance.ts';
import { boxedPaper, CORNERS, curvePath, onPaper, Paper, type Xy } from './paper.ts';

const AXES: AxisHint[] = [
  { id: 'x', quantity: 'flow', unit: 'm³/s', scale: 'linear', min: 0, max: 4 },
  { id: 'y1', quantity: 'static_pressure', unit: 'Pa', scale: 'linear', min: 0, max: 1000 },
];
const missed = CORNERS.map(([x, y], k): [number, number] => [
  x + [17, -23, 12, -9][k]!,
  y + [-14, 19, 21, -16][k]!,
]) as FullHints['frameCorners_px'];

type Pressure = (flow: number) => number;
const falling =
  (shutOff: number, free: number): Pressure =>
  (q) =>
    shutOff * (1 - (q / free) ** 2.2);
const humped: Pressure = (q) => 620 + 150 * Math.sin(1.9 * q - 1) - 28 * q ** 2;

const hints = (...points: Xy[]): FullHints =>
  ChartHints.parse({
    frameCorners_px: missed,
    axes: AXES,
    seeds: points.map(([x, y]) => ({ yAxis: 'y1', quantity: 'static_pressure', speed_rpm: 2900, point_px: [x, y] })),
  }) as FullHints;

/** Reads the paper and compares each curve with what was drawn, in shares of the frame. */
function read(paper: Paper, curves: { pressure: Pressure; from: number; to: number; tap: number }[]) {
  const result = readHintedChart(preparePhoto(paper), hints(...curves.map((c) => onPaper(c.tap, c.pressure(c.tap)))));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  const matches = result.value.curves.map((curve, k) => {
    const { pressure, from, to } = curves[k]!;
    const truth = Array.from({ length: 241 }, (_, i): Xy => {
      const q = from + ((to - from) * i) / 240;
      return [q / 4, pressure(q) / 1000];
    });
    return matchOf(
      curve.points.map(([q, p]): Xy => [q / 4, p / 1000]),
      truth,
    );
  });
  return { reading: result.value, matches };
}

describe('a tapped curve on clean paper', () => {
  const pressure = falling(900, 3.7);

  test('is read within a thousandth of full scale from frame to frame, and nothing is doubted', () => {
    const paper = boxedPaper()
      .line(curvePath(pressure, 0, 3.7), 2.6)
      .grain(10);
    const { reading, matches } = read(paper, [{ pressure, from: 0, to: 3.7, tap: 1.8 }]);
    expect(matches[0]!.rms).toBeLessThan(0.001);
    expect(matches[0]!.covered).toBeGreaterThan(0.99);
    expect(reading.warnings).toEqual([]);
    expect(reading.confidence.needsReview).toBe(false);
    expect(reading.curves[0]).toMatchObject({ id: 'c1', yAxis: 'y1', quantity: 'static_pressure', speed_rpm: 2900 });
    const flows = reading.curves[0]!.points.map(([q]) => q);
    expect(flows).toEqual([...flows].sort((a, b) => a - b));
    expect(reading.curves[0]!.points_px).toHaveLength(flows.length);
  });

  test('is found though the finger missed it by ten pixels', () => {
    const paper = boxedPaper().line(curvePath(pressure, 0, 3.7), 2.6);
    const [x, y] = onPaper(1.8, pressure(1.8));
    const result = readHintedChart(preparePhoto(paper), hints([x + 6, y - 8]));
    expect(result.ok && result.value.curves[0]!.points.length).toBeGreaterThan(50);
  });

  test('ends where its ink ends, not at the frame', () => {
    const paper = boxedPaper().line(curvePath(pressure, 0.9, 2.9), 2.6);
    const { matches, reading } = read(paper, [{ pressure, from: 0.9, to: 2.9, tap: 1.8 }]);
    expect(matches[0]!.rms).toBeLessThan(0.001);
    expect(reading.curves[0]!.points[0]![0]).toBeCloseTo(0.9, 1);
    expect(reading.curves[0]!.points.at(-1)![0]).toBeCloseTo(2.9, 1);
  });

  test('dashed, on a grid as dark as itself', () => {
    const paper = boxedPaper([60, 60, 60]).line(curvePath(pressure, 0, 3.7), 2.6, [20, 20, 20], [14, 8]);
    const { matches } = read(paper, [{ pressure, from: 0, to: 3.7, tap: 1.77 }]);
    expect(matches[0]!.rms).toBeLessThan(0.0015);
    expect(matches[0]!.covered).toBeGreaterThan(0.97);
  });

  test('light on a dark plate', () => {
    const paper = boxedPaper()
      .line(curvePath(pressure, 0, 3.7), 3)
      .grain(6);
    for (let i = 0; i < paper.rgb.length; i++) paper.rgb[i] = 255 - paper.rgb[i]!;
    const { matches } = read(paper, [{ pressure, from: 0, to: 3.7, tap: 1.8 }]);
    expect(matches[0]!.rms).toBeLessThan(0.001);
  });

  test('drawn as test points only: a smooth curve through them, and said so', () => {
    const paper = boxedPaper();
    for (let q = 0.2; q < 3.7; q += 0.34) paper.ring(onPaper(q, pressure(q)), 7);
    const { matches, reading } = read(paper, [{ pressure, from: 0.2, to: 3.6, tap: 0.2 + 5 * 0.34 }]);
    expect(matches[0]!.rms).toBeLessThan(0.003);
    expect(matches[0]!.covered).toBeGreaterThan(0.95);
    expect(reading.warnings.map((w) => w.code)).toContain('markers-only');
  });

  test('hidden behind a label for a while: bridged, and said so', () => {
    const paper = boxedPaper().line(curvePath(pressure, 0, 3.7), 2.6);
    const [x, y] = onPaper(1.1, pressure(1.1));
    for (let py = y - 14; py < y + 14; py++)
      paper.rgb.fill(
        240,
        (Math.round(py) * 1200 + Math.round(x) - 35) * 3,
        (Math.round(py) * 1200 + Math.round(x) + 35) * 3,
      );
    const { matches, reading } = read(paper, [{ pressure, from: 0, to: 3.7, tap: 2.2 }]);
    expect(matches[0]!.largest).toBeLessThan(0.004);
    expect(matches[0]!.covered).toBeGreaterThan(0.98);
    const warning = reading.warnings.find((w) => w.code === 'curve-hidden')!;
    expect(warning.text).toMatch(
      /^Between (0\.9|1|1\.0)\d* and 1\.[23]\d* m³\/s the curve could not be seen clearly and was bridged\.$/,
    );
    expect(warning.path).toBe('/seeds/0');
  });
});

test('an open frame is completed from what its ticks stand for', () => {
  const pressure = falling(900, 3.7);
  const paper = new Paper(1200, 800).line([CORNERS[3], CORNERS[0], CORNERS[1]], 2.4);
  for (let q = 0.5; q <= 4; q += 0.5) paper.line([onPaper(q, 0), [onPaper(q, 0)[0], CORNERS[0][1] + 12]], 2);
  for (let p = 100; p <= 1000; p += 100) paper.line([onPaper(0, p), [CORNERS[0][0] - 12, onPaper(0, p)[1]]], 2);
  paper.line(curvePath(pressure, 0, 3.7), 2.6);
  const { matches, reading } = read(paper, [{ pressure, from: 0, to: 3.7, tap: 1.8 }]);
  expect(matches[0]!.rms).toBeLessThan(0.0015);
  expect(reading.warnings.map((w) => w.text)).toContain(
    'No printed line was found along the right and top sides of the plot frame; grid and ticks tell where the plot ends there.',
  );
  expect(reading.confidence.needsReview).toBe(false);
  reading.frameCorners_px.forEach(([x, y], k) =>
    expect(Math.hypot(x - CORNERS[k]![0], y - CORNERS[k]![1])).toBeLessThan(3),
  );
});

describe('curves of one ink that cross', () => {
  test('at a right angle', () => {
    const power: Pressure = (q) => 150 + 190 * q;
    const pressure = falling(900, 3.7);
    const paper = boxedPaper()
      .line(curvePath(pressure, 0, 3.7), 2.6)
      .line(curvePath(power, 0, 3.9), 2.6);
    const { matches } = read(paper, [
      { pressure, from: 0, to: 3.7, tap: 3 },
      { pressure: power, from: 0, to: 3.9, tap: 0.7 },
    ]);
    for (const m of matches) expect(m.rms).toBeLessThan(0.001);
  });

  test('at a shallow angle, twice, each keeps its own way', () => {
    const other: Pressure = (q) => humped(q) + 60 * (q - 1.1) * (q - 2.6) * 0.35;
    const paper = boxedPaper()
      .line(curvePath(humped, 0, 3.9), 2.4)
      .line(curvePath(other, 0, 3.9), 2.4)
      .grain(8);
    const { matches } = read(paper, [
      { pressure: humped, from: 0, to: 3.9, tap: 3.6 },
      { pressure: other, from: 0, to: 3.9, tap: 3.6 },
    ]);
    for (const m of matches) {
      expect(m.rms).toBeLessThan(0.002);
      expect(m.covered).toBeGreaterThan(0.98);
    }
  });
});

describe('hints that can’t be', () => {
  const paper = boxedPaper().line(curvePath(falling(900, 3.7), 0, 3.7), 2.6);
  const photo = preparePhoto(paper);
  const good = hints(onPaper(1.8, falling(900, 3.7)(1.8)));
  const issues = (changed: Partial<FullHints>) => {
    const result = readHintedChart(photo, { ...good, ...changed });
    return result.ok ? [] : result.issues;
  };

  test('a unit nobody knows', () => {
    expect(issues({ axes: [{ ...AXES[0]!, unit: 'furlongs' }, AXES[1]!] })).toEqual([
      { code: 'not-understood', path: '/axes/0/unit', message: '"furlongs" is no unit of air flow we know.' },
    ]);
  });

  test('a scale without length, a log scale from zero', () => {
    expect(issues({ axes: [{ ...AXES[0]!, max: 0 }, AXES[1]!] })).toEqual([
      { code: 'out-of-range', path: '/axes/0/max', message: 'An axis needs two different values at its two ends.' },
    ]);
    expect(issues({ axes: [{ ...AXES[0]!, scale: 'log' }, AXES[1]!] })).toEqual([
      { code: 'out-of-range', path: '/axes/0/min', message: 'A logarithmic axis starts and ends above zero.' },
    ]);
  });

  test('two axes of one name', () => {
    expect(issues({ axes: [...AXES, AXES[1]!] }).map((i) => i.message)).toEqual(['Two axes are called "y1".']);
  });

  test('corners in the wrong order, outside the photo, too close', () => {
    const [bl, br, tr, tl] = good.frameCorners_px;
    expect(issues({ frameCorners_px: [tl, tr, br, bl] }).map((i) => i.message)).toEqual([
      'The four corners must run bottom-left, bottom-right, top-right, top-left around the plot frame.',
    ]);
    expect(issues({ frameCorners_px: [bl, [5000, 700], tr, tl] })).toEqual([
      { code: 'out-of-range', path: '/frameCorners_px/1', message: 'This corner lies outside the photo.' },
    ]);
    expect(
      issues({
        frameCorners_px: [
          [100, 120],
          [120, 120],
          [120, 100],
          [100, 100],
        ],
      }).map((i) => i.message),
    ).toEqual(['The plot frame is too small in this photo: each side needs at least 60 pixels.']);
  });

  test('a tap for an axis that is not there, or of another quantity', () => {
    const seed = good.seeds[0]!;
    expect(issues({ seeds: [{ ...seed, yAxis: 'y7' }] })).toEqual([
      { code: 'contradiction', path: '/seeds/0/yAxis', message: 'No upright axis is called "y7".' },
    ]);
    expect(issues({ seeds: [{ ...seed, quantity: 'shaft_power' }] }).map((i) => i.message)).toEqual([
      'A curve of power can’t be read on an axis of pressure.',
    ]);
  });

  test('a tap on bare paper', () => {
    expect(issues({ seeds: [{ ...good.seeds[0]!, point_px: [1000, 130] }] })).toEqual([
      { code: 'contradiction', path: '/seeds/0/point_px', message: 'No line was found under this tap.' },
    ]);
  });

  test('one tap of two on bare paper: the other curve is answered, and the miss is said', () => {
    const result = readHintedChart(photo, {
      ...good,
      seeds: [good.seeds[0]!, { ...good.seeds[0]!, point_px: [1000, 130] }],
    });
    expect(result.ok && result.value.curves.map((c) => c.id)).toEqual(['c1']);
    expect(result.ok && result.value.warnings).toContainEqual({
      code: 'no-line-under-tap',
      text: 'No line was found under this tap.',
      path: '/seeds/1/point_px',
    });
    expect(result.ok && result.value.confidence.needsReview).toBe(true);
  });

  test('scale ends that the printed grid speaks against are doubted', () => {
    const result = readHintedChart(photo, { ...good, axes: [AXES[0]!, { ...AXES[1]!, max: 870 }] });
    expect(result.ok && result.value.warnings.map((w) => [w.code, w.path])).toContainEqual([
      'grid-off-scale',
      '/axes/1',
    ]);
    expect(result.ok && result.value.confidence.needsReview).toBe(true);
  });
});

test('exact corners stay where they are', () => {
  const pressure = falling(900, 3.7);
  const paper = boxedPaper().line(curvePath(pressure, 0, 3.7), 2.6);
  const given = { ...hints(onPaper(1.8, pressure(1.8))), frameCorners_px: missed, exact: true };
  const result = readHintedChart(preparePhoto(paper), given);
  expect(result.ok && result.value.frameCorners_px).toEqual(missed);
});

test('units are taken as printed and answered in SI', () => {
  const pressure = falling(900, 3.7);
  const paper = boxedPaper().line(curvePath(pressure, 0, 3.7), 2.6);
  const axes: AxisHint[] = [
    { ...AXES[0]!, unit: 'CFM', max: 8000 },
    { ...AXES[1]!, unit: 'mm WG', max: 100 },
  ];
  const given = { ...hints(onPaper(1.8, pressure(1.8))), axes };
  const result = readHintedChart(preparePhoto(paper), given);
  if (!result.ok) throw new Error('not read');
  // 1 CFM = 0.3048³/60 m³/s, 1 mm WG = 9.80665 Pa (definitions)
  const [flow, value] = result.value.curves[0]!.points[0]!;
  expect(flow).toBeCloseTo(0, 6);
  expect(value).toBeCloseTo(90 * 9.80665, 0);
  expect(result.value.curves[0]!.points.at(-1)![0]).toBeCloseTo((3.7 / 4) * 8000 * (0.3048 ** 3 / 60), 2);
});
