import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { inventPlatePhoto } from '../../../fixtures/generate/invent-plate-photo.ts';
import type { PlateTruth, Xy } from '../../../fixtures/generate/plate/truth.ts';

type Made = { jpeg: Buffer; truth: PlateTruth; grey: { data: Buffer; width: number; height: number } };
const made: Made[] = [];
const WISHES = [
  [0, { kind: 'motor-plate', difficulty: 'easy' }],
  [2, { kind: 'blower-plate', difficulty: 'hard' }],
  [3, { kind: 'readings-sheet', difficulty: 'normal' }],
  [4, { kind: 'motor-plate', difficulty: 'hard', heldBack: true }],
] as const;

beforeAll(async () => {
  for (const [k, wish] of WISHES) {
    const { jpeg, truth } = await inventPlatePhoto(12, k, { ...wish, longest: 1200 });
    const { data, info } = await sharp(jpeg).autoOrient().greyscale().raw().toBuffer({ resolveWithObject: true });
    made.push({ jpeg, truth, grey: { data, width: info.width, height: info.height } });
  }
});

/** Standard deviation of brightness over a box of pixels around a quadrilateral. */
function unevenness({ data, width, height }: Made['grey'], quad: readonly Xy[]): number {
  const xs = quad.map((p) => p[0]);
  const ys = quad.map((p) => p[1]);
  const seen: number[] = [];
  for (let y = Math.max(0, Math.min(...ys)); y < Math.min(height, Math.max(...ys)); y++)
    for (let x = Math.max(0, Math.min(...xs)); x < Math.min(width, Math.max(...xs)); x++)
      seen.push(data[y * width + x]!);
  const mean = seen.reduce((a, b) => a + b, 0) / seen.length;
  return Math.sqrt(seen.reduce((a, b) => a + (b - mean) ** 2, 0) / seen.length);
}

describe('a photo of an invented plate or sheet', () => {
  test('is the same for the same seed', async () => {
    const [k, wish] = WISHES[0];
    const again = await inventPlatePhoto(12, k, { ...wish, longest: 1200 });
    expect(again.truth).toEqual(made[0]!.truth);
    expect(again.jpeg.equals(made[0]!.jpeg)).toBe(true);
    const other = await inventPlatePhoto(13, k, { ...wish, longest: 1200 });
    expect(other.jpeg.equals(made[0]!.jpeg)).toBe(false);
  });

  test('has the size, turn and letters its truth says', async () => {
    for (const { jpeg, truth, grey } of made) {
      const meta = await sharp(jpeg).metadata();
      const { width, height, exifOrientation, uprightSize, smallestCapitalPx } = truth.photo;
      expect([meta.width, meta.height, meta.orientation ?? 1]).toEqual([width, height, exifOrientation]);
      expect([grey.width, grey.height]).toEqual(uprightSize);
      expect(smallestCapitalPx).toBeGreaterThan(7);
    }
  });

  test('shows letters where its fields are, all of them in the picture', () => {
    for (const { truth, grey } of made)
      for (const [name, quads] of Object.entries(truth.photo.fieldQuads))
        for (const quad of quads) {
          const [w, h] = truth.photo.uprightSize;
          expect(quad.every(([x, y]) => x >= 0 && y >= 0 && x < w && y < h)).toBe(true);
          expect([truth.id, name, unevenness(grey, quad) > 3]).toEqual([truth.id, name, true]);
        }
  });

  test('tells of every field either what stands there or that it is lost', () => {
    for (const { truth } of made) {
      const known = [
        ...Object.keys(truth.fields),
        ...truth.unreadable,
        ...(truth.table ? Object.keys(truth.photo.fieldQuads).filter((n) => /^r\d/.test(n)) : []),
      ];
      expect(Object.keys(truth.photo.fieldQuads).toSorted()).toEqual([...new Set(known)].toSorted());
      expect(Object.keys(truth.lost?.fields ?? {}).toSorted()).toEqual(truth.unreadable.toSorted());
      expect(Object.keys(truth.asPrinted).toSorted()).toEqual(Object.keys(truth.fields).toSorted());
    }
  });
});
