import type { GridInk } from '../grid/grid-ink.ts';
import type { InkColour } from './likeness.ts';
import type { Sheet } from '../sheet.ts';

/** A piece of printed stroke under a finger: where its middle is, which way it runs, its ink and its width. */
export type SeedStroke = {
  readonly x: number;
  readonly y: number;
  /** −90..90 degrees as radians, y down */
  readonly angle: number;
  readonly colour: InkColour;
  /** width at half depth, sheet pixels */
  readonly width: number;
  /** how much darker the stroke is than both its sides, 0..255 */
  readonly contrast: number;
};

const HALF_LENGTH = 13;
const ANGLES = 36;

/**
 * The most line-like piece of ink near a tap.
 * @param reach how far the finger may have missed, sheet pixels; 0 takes the line through the very point
 * @param halfLength how far the line is looked at both ways; more of it sees past a marker on the line
 * @returns null where there is no ink within reach
 */
export function strokeNear(
  sheet: Sheet,
  grid: GridInk,
  x: number,
  y: number,
  reach: number,
  halfLength: number = HALF_LENGTH,
): SeedStroke | null {
  let best = { score: 0, offset: 0, angle: 0 };
  const radius = Math.ceil(reach);
  for (let k = 0; k < ANGLES; k++) {
    const angle = -Math.PI / 2 + ((k + 0.5) * Math.PI) / ANGLES;
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    for (let o = -radius; o <= radius; o++) {
      const score =
        lineScore(sheet, grid, x - s * o, y + c * o, c, s, halfLength) - 0.9 * Math.max(0, Math.abs(o) - 1.5);
      if (score > best.score) best = { score, offset: o, angle };
    }
  }
  if (best.score < 4) return null;
  const c = Math.cos(best.angle);
  const s = Math.sin(best.angle);
  const px = x - s * best.offset;
  const py = y + c * best.offset;
  // the mean cross-section places the middle and tells the width
  const profile: number[] = [];
  for (let o = -9; o <= 9; o++) {
    let sum = 0;
    for (let t = -halfLength; t <= halfLength; t++) sum += netInk(sheet, grid, px + c * t - s * o, py + s * t + c * o);
    profile.push(sum / (2 * halfLength + 1));
  }
  let top = 9;
  for (let i = 7; i <= 11; i++) if (profile[i]! > profile[top]!) top = i;
  const peak = profile[top]!;
  let mass = 0;
  let moment = 0;
  let width = 0;
  for (const side of [-1, 1])
    for (let i = side < 0 ? top : top + 1; i >= 0 && i <= 18; i += side) {
      const v = profile[i]!;
      if (v < 0.5 * peak) {
        const inner = profile[i - side]!;
        width += inner > v ? (inner - 0.5 * peak) / (inner - v) - 0.5 : 0;
        break;
      }
      width += 1;
      mass += v;
      moment += v * (i - 9);
    }
  const shift = moment / mass;
  return {
    x: px - s * shift,
    y: py + c * shift,
    angle: best.angle,
    colour: colourAlong(sheet, px - s * shift, py + c * shift, c, s, halfLength),
    width: Math.min(9, Math.max(1.2, width)),
    contrast: best.score,
  };
}

/** Where the paper beside a line is looked at, on both sides, pixels. */
const BESIDE_PX = [5, 6.5] as const;

/** Ink along a short line, less what lies beside it; breaks in the line cost little, so that dashes count. */
function lineScore(
  sheet: Sheet,
  grid: GridInk,
  x: number,
  y: number,
  c: number,
  s: number,
  halfLength: number,
): number {
  const reach = halfLength + BESIDE_PX[1] + 1;
  const isWithin = x > reach && y > reach && x < sheet.width - 1 - reach && y < sheet.height - 1 - reach;
  const inkAt = isWithin ? netInkWithin : netInk;
  const [near, far] = BESIDE_PX;
  let sum = 0;
  for (let t = -halfLength; t <= halfLength; t += 1.5) {
    const lx = x + c * t;
    const ly = y + s * t;
    const middle = inkAt(sheet, grid, lx, ly);
    const a = Math.max(
      inkAt(sheet, grid, lx - s * near, ly + c * near),
      inkAt(sheet, grid, lx - s * far, ly + c * far),
    );
    const b = Math.max(
      inkAt(sheet, grid, lx + s * near, ly - c * near),
      inkAt(sheet, grid, lx + s * far, ly - c * far),
    );
    sum += middle - 0.5 * (a + b);
  }
  return sum / (Math.floor((2 * halfLength) / 1.5) + 1);
}

/** `netInk` of a place that is known to lie on the sheet: millions are asked for. */
function netInkWithin({ width, darkness }: Sheet, grid: GridInk, x: number, y: number): number {
  const i = ((y + 0.5) | 0) * width + ((x + 0.5) | 0);
  const v = darkness[i]! - grid.data[i]!;
  return v > 0 ? v : 0;
}

/** Ink at a place on the sheet [px] with the grid taken away, in units of darkness; 0 outside the sheet. */
export function netInk({ width, height, darkness }: Sheet, grid: GridInk, x: number, y: number): number {
  const ix = Math.round(x);
  const iy = Math.round(y);
  if (ix < 0 || iy < 0 || ix >= width || iy >= height) return 0;
  const i = iy * width + ix;
  const v = darkness[i]! - grid.data[i]!;
  return v > 0 ? v : 0;
}

/** Mean ink of the darker two thirds of the stroke's middle line: gaps between dashes and crossings drop out. */
function colourAlong(sheet: Sheet, x: number, y: number, c: number, s: number, halfLength: number): InkColour {
  const inks: [number, number, number, number][] = [];
  for (let t = -halfLength; t <= halfLength; t++) {
    const ix = Math.round(x + c * t);
    const iy = Math.round(y + s * t);
    if (ix < 0 || iy < 0 || ix >= sheet.width || iy >= sheet.height) continue;
    const i = iy * sheet.width + ix;
    inks.push([sheet.darkness[i]!, sheet.ink[3 * i]!, sheet.ink[3 * i + 1]!, sheet.ink[3 * i + 2]!]);
  }
  inks.sort((p, q) => q[0] - p[0]);
  const used = inks.slice(Math.floor(inks.length * 0.1), Math.max(3, Math.ceil(inks.length * 0.6)));
  const mean = (k: 1 | 2 | 3) => Math.max(1, used.reduce((sum, v) => sum + v[k], 0) / used.length);
  return [mean(1), mean(2), mean(3)];
}
