import { expect, test } from 'vitest';
import { softened } from '../../../../src/chart/labels/crops.ts';
import { nameAxes } from '../../../../src/chart/labels/name-axes.ts';
import type { ReadScale } from '../../../../src/chart/labels/read-scales.ts';
import { fitScale } from '../../../../src/chart/labels/scale-fit.ts';
import { tickNumbers } from '../../../../src/chart/labels/tick-number.ts';
import { parseTitle } from '../../../../src/chart/labels/title.ts';

/** A scale along the left side with numbers in equal steps, the last at its end. */
function scaleOf(...texts: string[]): ReadScale {
  const labels = texts.map((text, i) => ({
    at: i / (texts.length - 1),
    numbers: tickNumbers(text),
    confidence: 0.95,
    text,
  }));
  const fit = fitScale(labels)!;
  const end = (value: number) => ({ value, roughness: 0, moved: 0 });
  const values = fit.believed.map((b) => b.value);
  return {
    side: 'left',
    isInside: false,
    distance: 0.5,
    fit,
    labels,
    low: end(values[0]!),
    high: end(values.at(-1)!),
    residual: 0,
    arePointsUnsure: false,
    ticked: labels.length,
  } as unknown as ReadScale;
}
const named = (scale: ReadScale, title: string) => nameAxes([scale], new Map([[scale, [parseTitle(title)]]]))[0]!;

test('a pressure scale that ends at 6 is no Pa: its k was lost, and that is asked about', () => {
  const axis = named(scaleOf('0', '2', '4', '6'), 'TP [Pa]');
  expect([axis.quantity, axis.unit, axis.max]).toEqual(['total_pressure', 'kPa', 6]);
  expect(axis.doubts.map((d) => d.warning.code)).toContain('unit-unread');
});

test('one that can end there keeps its unit', () => {
  const axis = named(scaleOf('0', '200', '400', '600'), 'TP [Pa]');
  expect([axis.unit, axis.max]).toEqual(['Pa', 600]);
  expect(axis.doubts.map((d) => d.warning.code)).not.toContain('unit-unread');
});

test('softened, a speck is hardly ink and a stroke still is', () => {
  const [width, height] = [40, 40];
  const grey = new Uint8Array(width * height).fill(255);
  grey[10 * width + 10] = 0;
  for (let y = 5; y < 35; y++) grey.fill(0, y * width + 24, y * width + 29);
  const soft = softened({ grey, width, height }).grey;
  expect(soft[10 * width + 10]!).toBeGreaterThan(200);
  expect(soft[20 * width + 26]!).toBeLessThan(30);
});
