import { readFileSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inventPhoto } from '../../fixtures/generate/invent-photo.ts';
import type { ChartTruth } from '../../fixtures/generate/photo/truth.ts';

import { createWordWorkers } from '../../server/words/word-workers.ts';
import { ChartHints, type ChartReading } from '../../src/chart/index.ts';
import { matchOf } from '../unit/chart/distance.ts';
import { readChartFile } from './read-chart-file.ts';

type Xy = [number, number];

const PHOTO = fileURLToPath(new URL('../../fixtures/charts/demo.jpg', import.meta.url));
const demo = JSON.parse(readFileSync(PHOTO.replace(/\.jpg$/, '.json'), 'utf8')) as ChartTruth;

const words = createWordWorkers();
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'chart-'));
});
afterAll(() => {
  words.close();
  return rm(folder, { recursive: true });
});

/** A finger off by up to 25 pixels at each corner, and right on the curves. */
const FINGER: Xy[] = [
  [19, -24],
  [-22, 15],
  [25, 21],
  [-13, -25],
];

function hintsFor({ chart }: ChartTruth, moved: Xy[] = FINGER): ChartHints {
  return ChartHints.parse({
    frameCorners_px: chart.frameCornersPx.map(([x, y], k) => [x + moved[k]![0], y + moved[k]![1]]),
    axes: chart.axes.map(({ id, quantity, unit, scale, min, max }) => ({ id, quantity, unit, scale, min, max })),
    seeds: chart.curves.map(({ yAxis, quantity, speed_rpm, seedPx }) => ({
      yAxis,
      quantity,
      speed_rpm,
      point_px: seedPx,
    })),
  });
}

async function reading(file: string, hints: ChartHints): Promise<ChartReading> {
  const result = await readChartFile(file, hints, words.read);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Each answered curve against the truth, as shares of the plot frame. */
function matches({ chart }: ChartTruth, read: ChartReading) {
  const axis = (id: string) => chart.axes.find((a) => a.id === id)!;
  const share = ({ scale, min, max, siFactor }: ChartTruth['chart']['axes'][number], si: number) =>
    scale === 'log' ? Math.log(si / siFactor / min) / Math.log(max / min) : (si / siFactor - min) / (max - min);
  return read.curves.map((curve, k) => {
    const x = axis('x');
    const y = axis(curve.yAxis);
    const truth = chart.curves[k]!.points.map(([q, v]): Xy => [share(x, q * x.siFactor), share(y, v * y.siFactor)]);
    return matchOf(
      curve.points.map(([q, v]): Xy => [share(x, q), share(y, v)]),
      truth,
    );
  });
}

describe('the demo’s photo', () => {
  test('is read within 0.1 % of full scale, from one end to the other, without a doubt', async () => {
    const read = await reading(PHOTO, hintsFor(demo));
    for (const m of matches(demo, read)) {
      expect(m.rms).toBeLessThan(0.001);
      expect(m.covered).toBeGreaterThan(0.98);
    }
    expect(read.warnings).toEqual([]);
    expect(read.confidence).toEqual({ overall: 0.98, needsReview: false });
    expect(read.axes).toEqual(
      demo.chart.axes.map(({ id, quantity, unit, scale, min, max }) => ({
        id,
        quantity,
        unit,
        scale,
        min,
        max,
        confidence: 0.98,
      })),
    );
    read.frameCorners_px.forEach(([x, y], k) => {
      const [tx, ty] = demo.chart.frameCornersPx[k]!;
      expect(Math.hypot(x - tx, y - ty)).toBeLessThan(1);
    });
  });

  test('gives points in the photo that lie on the printed curve', async () => {
    const read = await reading(PHOTO, hintsFor(demo));
    read.curves.forEach((curve, k) => {
      const scaled = (points: Xy[]): Xy[] => points.map(([x, y]) => [x / demo.image.width, y / demo.image.width]);
      expect(matchOf(scaled(curve.points_px), scaled(demo.chart.curves[k]!.pointsPx)).largest).toBeLessThan(
        2 / demo.image.width,
      );
    });
  });

  test('one curve at a time gives what all together give', async () => {
    const hints = hintsFor(demo);
    const all = await reading(PHOTO, hints);
    const one = await reading(PHOTO, { ...hints, seeds: [hints.seeds![0]!] });
    expect(one.curves[0]!.points).toEqual(all.curves[0]!.points);
  });

  test('turned on its side with a tag that says so, it is read the same', async () => {
    const file = join(folder, 'tagged.jpg');
    writeFileSync(
      file,
      await sharp(PHOTO).rotate(90).withMetadata({ orientation: 8 }).jpeg({ quality: 95 }).toBuffer(),
    );
    for (const m of matches(demo, await reading(file, hintsFor(demo)))) expect(m.rms).toBeLessThan(0.001);
  });

  test('with less told, the rest is read: nothing, the corners, the scales, or all but one', async () => {
    const { frameCorners_px, axes, seeds } = hintsFor(demo);
    for (const hints of [{}, { frameCorners_px }, { axes }, { frameCorners_px, axes }, { frameCorners_px, seeds }]) {
      const read = await reading(PHOTO, hints);
      read.frameCorners_px.forEach(([x, y], k) => {
        const [tx, ty] = demo.chart.frameCornersPx[k]!;
        expect(Math.hypot(x - tx, y - ty)).toBeLessThan(1);
      });
      expect(read.axes.map(({ quantity, min, max }) => [quantity, min, max])).toEqual(
        demo.chart.axes.map(({ quantity, min, max }) => [quantity, min, max]),
      );
      const named = ({ quantity, speed_rpm }: { quantity: string; speed_rpm: number | null }) =>
        `${quantity} ${speed_rpm}`;
      expect(read.curves.map(named).sort()).toEqual(demo.chart.curves.map(named).sort());
    }
  });

  test('a hint the program does not know is an error that names it', () => {
    const issue = ChartHints.safeParse({ corners: [] }).error!.issues[0]!;
    expect(issue).toMatchObject({ code: 'unrecognized_keys', keys: ['corners'] });
  });
});

describe('small photos of hard charts, drawn and photographed here', () => {
  const cases = [
    ['catalogue', 2, 'hard', 0.005],
    ['plotter', 5, 'normal', 0.005],
    ['graphPaper', 1, 'normal', 0.005],
    ['blueprint', 1, 'hard', 0.005],
    ['textbook', 6, 'normal', 0.005],
  ] as const;

  test.each(cases)('%s %i, %s', async (manner, k, difficulty, limit) => {
    const { jpeg, truth } = await inventPhoto(31, k, { manner, difficulty, longest: 1200 });
    const file = join(folder, truth.file);
    writeFileSync(file, jpeg);
    const primary = { ...truth, chart: { ...truth.chart, curves: truth.chart.curves.filter((c) => c.primary) } };
    const read = await reading(file, hintsFor(primary));
    for (const m of matches(primary, read)) {
      expect(m.rms).toBeLessThan(limit);
      expect(m.covered).toBeGreaterThan(0.9);
    }
  });
});
