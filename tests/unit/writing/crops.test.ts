import { describe, expect, test } from 'vitest';
import { BORDER_PX, CAPITAL_PX, prepare, sampleBox, type Surface, type TextBox } from '../../../src/writing/index.ts';
import { WAYS_TO_READ } from '../../../src/writing/crop/preparations.ts';
import { photoOf } from './pictures.ts';

/** A dark upright bar, 10 px wide and 34 px high, on a light ground. */
const photo = photoOf(200, 100, (x, y) => (x >= 95 && x < 105 && y >= 33 && y < 67 ? [40, 40, 40] : [200, 200, 200]));
const surface: Surface = { width: 200, height: 100, photo, photoPixels: 1, toPhoto: (x, y) => [x, y] };
const box: TextBox = { x0: 60, x1: 140, y0: 33, y1: 67, slope: 0, isLight: false };

describe('a crop', () => {
  test.each(Object.values(WAYS_TO_READ.print).flat())('%s: ink dark, ground and border white', (way) => {
    const { grey, width, height } = prepare(sampleBox(surface, box), way);
    const at = (x: number, y: number) => grey[y * width + x]!;
    const [cx, cy] = [Math.round(width / 2), Math.round(height / 2)];
    expect(at(cx, cy)).toBeLessThan(90);
    expect(at(BORDER_PX + 8, cy)).toBeGreaterThan(150);
    for (const y of [2, height - 3]) for (let x = 0; x < width; x++) expect(at(x, y)).toBe(255);
  });

  test('has its letters the height the reader was taught on', () => {
    const { grey, width, height } = prepare(sampleBox(surface, box), 'stretched');
    const column = Array.from({ length: height }, (_, y) => grey[y * width + Math.round(width / 2)]!);
    expect(Math.abs(column.filter((v) => v < 128).length - CAPITAL_PX)).toBeLessThanOrEqual(2);
  });

  test('shows light letters dark', () => {
    const light = photoOf(200, 100, (x, y) =>
      x >= 95 && x < 105 && y >= 33 && y < 67 ? [220, 220, 220] : [60, 60, 60],
    );
    const { grey, width, height } = prepare(
      sampleBox({ ...surface, photo: light }, { ...box, isLight: true }),
      'levelled',
    );
    expect(grey[Math.round(height / 2) * width + Math.round(width / 2)]).toBeLessThan(60);
  });

  test('leaves out what is foreign', () => {
    const { grey } = prepare(
      sampleBox(surface, box, (x) => x > 90 && x < 110),
      'stretched',
    );
    expect(grey.every((v) => v > 200)).toBe(true);
  });

  test('a place in it is known on the surface, upside down too', () => {
    for (const turn of ['upright', 'around'] as const) {
      const sample = sampleBox(surface, box, undefined, turn);
      const [x, y] = sample.toFlat(sample.width / 2 - 0.5, sample.height / 2 - 0.5);
      expect(x).toBeCloseTo(100);
      expect(y).toBeCloseTo(50);
    }
  });
});
