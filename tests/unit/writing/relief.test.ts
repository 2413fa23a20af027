import { describe, expect, test } from 'vitest';
import { blurred, fieldLike, type Field } from '../../../src/writing/crop/filters.ts';
import { heightOf, lightingOf } from '../../../src/writing/crop/relief.ts';
import { flatOf, lineOfBars } from './pictures.ts';

const CAPITAL = 34;
/** Letters of one stroke, raised over the ground by 1, edges two pixels soft. */
const letters = blurred(
  flatOf(
    260,
    60,
    0,
    lineOfBars(7, 20, 13, CAPITAL, 1).map((bar) => ({ ...bar, w: 8 })),
  ),
  1.2,
);

/** The same in the colour of the ground, lit from the side: brightness is the slope towards the light. */
function lit({ width, height, values }: Field, angle: number): Field {
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  return fieldLike({ width, height, values }, (k) => {
    if (k % width === 0 || k % width === width - 1 || k < width || k >= width * (height - 1)) return 128;
    const slope = ((values[k + 1]! - values[k - 1]!) * ux + (values[k + width]! - values[k - width]!) * uy) / 2;
    return 128 + 160 * slope;
  });
}

function correlation(a: Field, b: Field): number {
  const mean = ({ values }: Field) => values.reduce((s, v) => s + v, 0) / values.length;
  const [ma, mb] = [mean(a), mean(b)];
  let [ab, aa, bb] = [0, 0, 0];
  a.values.forEach((v, k) => {
    const w = b.values[k]! - mb;
    ab += (v - ma) * w;
    aa += (v - ma) ** 2;
    bb += w * w;
  });
  return ab / Math.sqrt(aa * bb);
}

describe('letters of the ground`s own colour', () => {
  test.each([0, 0.5, -0.6])('lit from %f rad are known, and their height is that of the letters', (angle) => {
    const picture = lit(letters, angle);
    const lighting = lightingOf(picture, CAPITAL);
    expect(lighting.isRelief).toBe(true);
    const height = heightOf(picture, CAPITAL, lighting.angle, 0.6);
    expect(correlation(height, letters)).toBeGreaterThan(0.7);
    // the lit picture itself says nothing of where the letters are
    expect(Math.abs(correlation(picture, letters))).toBeLessThan(0.3);
  });

  test('sunk ones are letters too', () => {
    const picture = lit(
      fieldLike(letters, (k) => -letters.values[k]!),
      0.4,
    );
    expect(correlation(heightOf(picture, CAPITAL, 0.4, 0.6), letters)).toBeGreaterThan(0.7);
  });

  test('print is no relief', () => {
    const print = fieldLike(letters, (k) => 200 - 150 * letters.values[k]!);
    expect(lightingOf(print, CAPITAL).isRelief).toBe(false);
  });
});
