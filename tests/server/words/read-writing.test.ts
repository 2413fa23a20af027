import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import sharp from 'sharp';
import { inventPlatePhoto } from '../../../fixtures/generate/invent-plate-photo.ts';
import { createWordWorkers } from '../../../server/words/word-workers.ts';
import { preparePhoto } from '../../../src/picture/raster.ts';
import { readWriting, type Writing } from '../../../src/writing/index.ts';

const words = createWordWorkers();
afterAll(() => words.close());

type Xy = readonly [number, number];

describe('the writing on an invented plate', () => {
  let photo: Awaited<ReturnType<typeof inventPlatePhoto>>;
  let writing: Writing;

  beforeAll(async () => {
    // print on a white sticker, labels in dark boxes
    photo = await inventPlatePhoto(501, 3, { kind: 'motor-plate', difficulty: 'easy', longest: 1200 });
    const { data, info } = await sharp(photo.jpeg)
      .autoOrient()
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const raster = { width: info.width, height: info.height, rgb: new Uint8Array(data) };
    writing = (await readWriting(preparePhoto(raster), words.read))!;
  }, 120_000);

  test('its outline is that of the plate', () => {
    const quad = photo.truth.photo.plateQuad as readonly Xy[];
    const size = Math.hypot(quad[0]![0] - quad[2]![0], quad[0]![1] - quad[2]![1]);
    const nearest = ([x, y]: Xy) => Math.min(...quad.map((q) => Math.hypot(q[0] - x, q[1] - y)));
    expect(writing.isOutlined).toBe(true);
    expect(Math.max(...writing.corners_px.map(nearest)) / size).toBeLessThan(0.03);
  });

  test('most printed numbers stand among its words, where they are in the photo', () => {
    const numbers = Object.entries(photo.truth.asPrinted as Record<string, string>).filter(([, text]) =>
      /^\d+([.,]\d+)?( |$)/.test(text),
    );
    const read = numbers.filter(([field, text]) => {
      const [quad] = photo.truth.photo.fieldQuads[field] as readonly (readonly Xy[])[];
      const [x0, x1] = [Math.min(...quad!.map((p) => p[0])), Math.max(...quad!.map((p) => p[0]))];
      const [y0, y1] = [Math.min(...quad!.map((p) => p[1])), Math.max(...quad!.map((p) => p[1]))];
      const margin = 0.3 * (y1 - y0);
      return writing.words.some((word) => {
        const [x, y] = writing.toPhoto((word.x0 + word.x1) / 2, (word.y0 + word.y1) / 2);
        const isThere = x > x0 - margin && x < x1 + margin && y > y0 - margin && y < y1 + margin;
        return isThere && word.text.startsWith(text.split(' ')[0]!);
      });
    });
    expect(numbers.length).toBeGreaterThan(4);
    expect(read.length / numbers.length).toBeGreaterThanOrEqual(0.8);
  });
});
