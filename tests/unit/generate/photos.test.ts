import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { inventNothing, inventPhoto } from '../../../fixtures/generate/invent-photo.ts';
import type { ChartTruth, CurveTruth } from '../../../fixtures/generate/photo/truth.ts';
import type { Taken } from '../../../fixtures/generate/photo/take.ts';

type Xy = readonly [number, number];
type Grey = { data: Buffer; width: number; height: number };

const SMALL = 800;
const taken: { photo: Taken; grey: Grey }[] = [];

beforeAll(async () => {
  for (const k of [0, 1, 3, 4, 6, 7, 9]) {
    const photo = await inventPhoto(11, k, { difficulty: 'easy', longest: SMALL });
    taken.push({ photo, grey: await greyOf(photo.jpeg) });
  }
});

async function greyOf(jpeg: Buffer): Promise<Grey> {
  const { data, info } = await sharp(jpeg).autoOrient().greyscale().raw().toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
}

/** Brightness at a place, between pixels. */
function at({ data, width, height }: Grey, [x, y]: Xy): number {
  const i = Math.min(width - 2, Math.max(0, Math.floor(x)));
  const j = Math.min(height - 2, Math.max(0, Math.floor(y)));
  const [fx, fy] = [x - i, y - j];
  const row = (k: number) => data[k * width + i]! * (1 - fx) + data[k * width + i + 1]! * fx;
  return row(j) * (1 - fy) + row(j + 1) * fy;
}

/** How far off the ink is from where the truth has the line: the place across it with most contrast to its surroundings. */
function inkOff(grey: Grey, { pointsPx }: CurveTruth): number[] {
  return pointsPx.slice(2, -2).flatMap((here, k) => {
    const before = pointsPx[k + 1]!;
    const after = pointsPx[k + 3]!;
    const length = Math.hypot(after[0] - before[0], after[1] - before[1]);
    const across: Xy = [-(after[1] - before[1]) / length, (after[0] - before[0]) / length];
    const steps = Array.from({ length: 33 }, (_, i) => (i - 16) / 2);
    const seen = steps.map((s) => at(grey, [here[0] + s * across[0], here[1] + s * across[1]]));
    const ground = seen.toSorted((a, b) => a - b)[Math.floor(seen.length / 2)]!;
    const weights = seen.map((v) => Math.max(0, Math.abs(v - ground) - 12));
    const near = weights.map((w, i) => (Math.abs(steps[i]!) <= 4 ? w : 0));
    const sum = near.reduce((a, b) => a + b, 0);
    return sum > 20 ? [near.reduce((a, w, i) => a + w * steps[i]!, 0) / sum] : [];
  });
}

const lined = ({ chart }: ChartTruth) => chart.curves.filter((c) => c.style.drawn !== 'markers');

describe('an invented photo', () => {
  test('is the same for the same seed, and another for another', async () => {
    const [a, b, c] = await Promise.all([1, 1, 2].map((seed) => inventPhoto(seed, 5, { longest: 400 })));
    expect(b!.jpeg.equals(a!.jpeg)).toBe(true);
    expect(b!.truth).toEqual(a!.truth);
    expect(c!.jpeg.equals(a!.jpeg)).toBe(false);
  });

  test('has the size and the turn its truth says', async () => {
    for (const { photo, grey } of taken) {
      const { image } = photo.truth;
      const meta = await sharp(photo.jpeg).metadata();
      expect([meta.width, meta.height, meta.orientation ?? 1]).toEqual([
        image.storedWidth,
        image.storedHeight,
        image.exifOrientation,
      ]);
      expect([grey.width, grey.height]).toEqual([image.width, image.height]);
      expect(Math.max(image.width, image.height)).toBeLessThanOrEqual(SMALL);
    }
  });

  test('shows ink where the truth has its curves', () => {
    let curves = 0;
    for (const { photo, grey } of taken)
      for (const curve of lined(photo.truth)) {
        const off = inkOff(grey, curve);
        // labels on the line, crossings, gaps of dashes and faint colours leave some places without a clear line
        expect(off.length).toBeGreaterThan(14);
        expect(Math.abs(off.toSorted((a, b) => a - b)[Math.floor(off.length / 2)]!)).toBeLessThan(0.5);
        curves++;
      }
    expect(curves).toBeGreaterThan(4);
  });

  test('has each curve’s values inside its axes, and as far along the frame as its pixels are', () => {
    for (const { truth } of taken.map((t) => t.photo))
      for (const curve of truth.chart.curves) {
        const [x, y] = ['x', curve.yAxis].map((id) => truth.chart.axes.find((a) => a.id === id)!);
        const panel = truth.chart.panels[y!.panel === 'lower' ? 'lower' : 'main']!;
        const [bl, br, tr, tl] = panel.frameCornersPx;
        curve.points.forEach(([q, v], k) => {
          const [s, t] = [share(x!, q), share(y!, v)];
          expect(Math.min(s, t)).toBeGreaterThan(-0.001);
          expect(Math.max(s, t)).toBeLessThan(1.001);
          // an easy photo is nearly flat: between the corners by shares, within a few pixels
          const flat = [0, 1].map(
            (i) => (1 - t) * ((1 - s) * bl![i]! + s * br![i]!) + t * ((1 - s) * tl![i]! + s * tr![i]!),
          );
          const [px, py] = curve.pointsPx[k]!;
          expect(Math.hypot(px - flat[0]!, py - flat[1]!)).toBeLessThan(0.03 * SMALL);
        });
      }
  });

  test('prints at least three numbers on each axis, and each between its ends', () => {
    for (const { truth } of taken.map((t) => t.photo))
      for (const axis of truth.chart.axes) {
        expect(axis.ticks.length).toBeGreaterThanOrEqual(3);
        expect(axis.ticksPrinted.length).toBe(axis.ticks.length);
        for (const tick of axis.ticks) expect(share(axis, tick)).toBeGreaterThan(-0.001);
        for (const tick of axis.ticks) expect(share(axis, tick)).toBeLessThan(1.001);
      }
  });

  test('of no chart is made as well', async () => {
    const { jpeg, kind } = await inventNothing(4, 2, 400);
    expect(kind).toBe('table');
    expect((await sharp(jpeg).metadata()).format).toBe('jpeg');
  });
});

function share({ scale, min, max }: ChartTruth['chart']['axes'][number], value: number): number {
  return scale === 'log' ? Math.log(value / min) / Math.log(max / min) : (value - min) / (max - min);
}
