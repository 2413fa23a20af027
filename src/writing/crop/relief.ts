import { blurred, fieldLike, meanAround, type Field } from './filters.ts';

/** How far light and shade of one stroke lie apart, shares of the capitals' height. */
const STROKES = [0.1, 0.16, 0.23];
const DIRECTIONS = 12;
/** The photo's grain, share of the capitals' height. */
const GRAIN = 0.03;

/** How a line of letters is lit. */
export type Lighting = {
  /** the light's direction in the picture, rad, or the opposite one */
  readonly angle: number;
  /** how much lit edges have shaded ones beside them, 0..1 */
  readonly likelihood: number;
  /** whether the letters have the ground's own colour and show by their edges only */
  readonly isRelief: boolean;
};

/** Print has a long tail on its dark side; a relief is as often brighter than the ground as it is darker. */
const LEAST_LIKELIHOOD = 0.15;
const MOST_SKEWED = 0.8;

/** Tells stamped, cast and embossed letters from printed ones. @param capital_px height of the capitals */
export function lightingOf(sample: Field, capital_px: number): Lighting {
  const slope = slopeOf(blurred(sample, GRAIN * capital_px), capital_px);
  const { values } = slope;
  const square = values.reduce((s, v) => s + v * v, 0) / values.length || 1;
  const skewness = values.reduce((s, v) => s + v * v * v, 0) / values.length / square ** 1.5;
  const light = lightOf(slope, capital_px);
  return { ...light, isRelief: light.likelihood >= LEAST_LIKELIHOOD && Math.abs(skewness) <= MOST_SKEWED };
}

/**
 * Works the height of stamped, cast or embossed letters out of their light and shade: brightness is the slope towards
 * the light, so height is its sum along the light's direction.
 * @param angle the light's direction, rad
 * @param memory slopes this far away still tell the height of a place, shares of the capitals' height
 * @returns height of the letters over the ground, or their depth in it: letters are what is greater
 * Source: B. K. P. Horn & M. J. Brooks (eds.), Shape from Shading (1989), linear reflectance map (A. Pentland).
 */
export function heightOf(sample: Field, capital_px: number, angle: number, memory: number): Field {
  const sum = summedAlong(slopeOf(sample, capital_px), Math.cos(angle), Math.sin(angle), memory * capital_px);
  const level = meanAround(sum, Math.round(0.9 * capital_px));
  const raw = fieldLike(sum, (k) => sum.values[k]! - level.values[k]!);
  // letters cover less than the ground does: they are on the side of the longer tail
  const cubes = raw.values.reduce((s, v) => s + v * v * v, 0);
  return cubes < 0 ? fieldLike(raw, (k) => -raw.values[k]!) : raw;
}

function slopeOf(sample: Field, capital: number): Field {
  const ground = meanAround(sample, Math.round(0.8 * capital));
  return fieldLike(sample, (k) => sample.values[k]! - ground.values[k]!);
}

/** The direction in which the brightness is most unlike itself a stroke's width away. */
function lightOf(slope: Field, capital: number): { angle: number; likelihood: number } {
  const { width, height, values } = slope;
  const energy = values.reduce((s, v) => s + v * v, 0) / values.length || 1;
  let best = { angle: 0, likelihood: 0 };
  for (let n = 0; n < DIRECTIONS; n++)
    for (const stroke of STROKES) {
      const angle = (n * Math.PI) / DIRECTIONS;
      const [dx, dy] = [Math.round(stroke * capital * Math.cos(angle)), Math.round(stroke * capital * Math.sin(angle))];
      let [sum, count] = [0, 0];
      for (let y = 0; y + dy < height; y += 2)
        for (let x = Math.max(0, -dx); x + Math.max(0, dx) < width; x++, count++)
          sum += values[y * width + x]! * values[(y + dy) * width + x + dx]!;
      const likelihood = -sum / Math.max(1, count) / energy;
      if (likelihood > best.likelihood) best = { angle, likelihood };
    }
  return best;
}

/** Sum along a direction from both ends, what is farther away than `memory` fading out. */
function summedAlong(field: Field, ux: number, uy: number, memory: number): Field {
  // a step goes one row or column on, whichever the direction is nearer to
  const isAcross = Math.abs(ux) >= Math.abs(uy);
  const [sx, sy] = isAcross ? [1, uy / ux] : [ux / uy, 1];
  const fade = Math.exp(-Math.hypot(sx, sy) / memory);
  const forward = swept(field, sx, sy, fade, 1);
  const backward = swept(field, -sx, -sy, fade, -1);
  return fieldLike(field, (k) => forward[k]! + backward[k]!);
}

function swept({ width, height, values }: Field, sx: number, sy: number, fade: number, sign: number): Float32Array {
  const out = new Float32Array(values.length);
  const isAcross = Math.abs(sx) === 1;
  const [length, count] = isAcross ? [width, height] : [height, width];
  const [drift, isForward] = isAcross ? [sy, sx > 0] : [sx, sy > 0];
  const at = (i: number, j: number) => (isAcross ? j * width + i : i * width + j);
  for (let n = 0; n < length; n++) {
    const i = isForward ? n : length - 1 - n;
    const last = isForward ? i - 1 : i + 1;
    for (let j = 0; j < count; j++) {
      const from = j - drift;
      const a = Math.floor(from);
      let before = 0;
      if (n > 0 && a >= 0 && a + 1 < count) {
        const f = from - a;
        before = (1 - f) * out[at(last, a)]! + f * out[at(last, a + 1)]!;
      }
      const k = at(i, j);
      out[k] = fade * before + sign * values[k]!;
    }
  }
  return out;
}
