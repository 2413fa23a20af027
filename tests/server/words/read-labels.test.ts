import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { decodePhoto } from '../../../server/image/decode.ts';
import { createWordWorkers } from '../../../server/words/word-workers.ts';
import { exactFrame } from '../../../src/chart/frame/frame-snap.ts';
import type { Photo } from '../../../src/chart/index.ts';
import { readLabels, type Scales } from '../../../src/chart/labels/read-labels.ts';
import { photoPoint, type Corners, type PhotoPoint } from '../../../src/chart/spaces.ts';

const PHOTO = fileURLToPath(new URL('../../../fixtures/charts/demo.jpg', import.meta.url));
const truth = JSON.parse(readFileSync(PHOTO.replace(/\.jpg$/, '.json'), 'utf8')) as {
  chart: {
    frameCornersPx: [number, number][];
    axes: { id: string; quantity: string; unit: string; scale: string; min: number; max: number }[];
  };
};
const corners = truth.chart.frameCornersPx.map(([x, y]) => photoPoint(x, y));

const words = createWordWorkers();
let photo: Photo;
beforeAll(async () => {
  photo = await decodePhoto(PHOTO);
});
afterAll(() => words.close());

const said = ({ axes }: Scales) =>
  axes.map(({ id, quantity, unit, scale, min, max }) => ({ id, quantity, unit, scale, min, max }));
const printed = truth.chart.axes.map(({ id, quantity, unit, scale, min, max }) => ({
  id,
  quantity,
  unit,
  scale,
  min,
  max,
}));

describe('the demo chart’s labels', () => {
  test('all three scales; the power scale, which has no words beside it, is asked about', async () => {
    const labels = (await readLabels(photo, exactFrame(photo, corners as unknown as Corners), words.read))!;
    expect(said(labels)).toEqual(printed);
    const serious = labels.axes.flatMap((a) => a.doubts.filter((d) => d.serious).map((d) => d.warning));
    expect(serious.map((w) => [w.path, w.code])).toEqual([
      ['/axes/2', 'axis-unnamed'],
      ['/axes/2', 'unit-unread'],
    ]);
    expect(serious[0]!.text).toBe('No words beside this scale say what it shows; it is taken for power.');
    expect(labels.axes.map((a) => a.confidence > 0.6)).toEqual([true, true, false]);
    expect(labels.turns).toBe(0);
  });

  test.each([1, 2, 3] as const)(
    'with the corners begun at another one (%d), the chart’s own bottom is found',
    async (by) => {
      const shifted = corners.map((_, k) => corners[(k + by) % 4]) as unknown as Corners;
      const labels = (await readLabels(photo, exactFrame(photo, shifted), words.read))!;
      expect(labels.turns).toBe(4 - by);
      expect(labels.frame.corners[0]).toEqual(corners[0] as PhotoPoint);
      expect(said(labels)).toEqual(printed);
    },
  );

  test('corners somebody put keep their order, and the words are read whether a scale is or not', async () => {
    const lying = corners.map((_, k) => corners[(k + 1) % 4]) as unknown as Corners;
    const labels = (await readLabels(photo, exactFrame(photo, lying), words.read, true))!;
    expect(labels.turns).toBe(0);
    expect(labels.frame.corners).toEqual(lying);
    expect((await labels.readWords()).length).toBeGreaterThan(0);
  });

  test('three corners on one line are no frame', async () => {
    const flat = exactFrame(
      photo,
      [
        [0, 0],
        [100, 0],
        [200, 0],
        [0, 100],
      ].map(([x, y]) => photoPoint(x!, y!)) as unknown as Corners,
    );
    expect(await readLabels(photo, flat, words.read)).toBeNull();
  });
});
