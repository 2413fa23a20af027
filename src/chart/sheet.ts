import type { FrameMap } from './frame-map.ts';
import { project } from './homography.ts';
import type { Photo, Raster } from './raster.ts';
import type { Polarity } from './side-band.ts';
import { framePoint, sheetPoint, type FramePoint, type SheetPoint } from './spaces.ts';

/**
 * The plot frame straightened to a rectangle, with a margin of paper around it.
 * `ink` is what printing took from the paper's light, per channel: 100 · ln(paper / pixel), so that shadow does not
 * count; light lines on a dark plate are turned round first. 0 is paper, 255 the darkest that is kept.
 */
export type Sheet = {
  readonly width: number;
  readonly height: number;
  /** size of the frame itself, in sheet pixels, and the margin around it */
  readonly frameWidth: number;
  readonly frameHeight: number;
  readonly margin: number;
  /** three bytes a pixel */
  readonly ink: Uint8Array;
  /** mean of the three, one byte a pixel */
  readonly darkness: Uint8Array;
  /** share of the light the paper had left, by cell; near 1 means glare that may have eaten lines */
  readonly paper: PaperLight;
  /** photo pixels a sheet pixel is wide, about */
  readonly photoPixels: number;
};

export type PaperLight = {
  readonly columns: number;
  readonly rows: number;
  readonly cell: number;
  readonly level: Float32Array;
};

const LONGEST_SIDE = 1280;
const SHORTEST_LONG_SIDE = 900;
export const SHEET_MARGIN = 26;

export const toSheet = (sheet: Sheet, u: number, v: number): SheetPoint =>
  sheetPoint(sheet.margin + u * sheet.frameWidth, sheet.margin + (1 - v) * sheet.frameHeight);
export const fromSheet = (sheet: Sheet, x: number, y: number): FramePoint =>
  framePoint((x - sheet.margin) / sheet.frameWidth, 1 - (y - sheet.margin) / sheet.frameHeight);

/** Straightens the frame: its longer side becomes 900 to 1280 pixels, about 0.65 of what it was in the photo. */
export function straighten(photo: Photo, map: FrameMap, polarity: Polarity): Sheet {
  const side = (a: FramePoint, b: FramePoint) => {
    const p = map.toPhoto(a[0], a[1]);
    const q = map.toPhoto(b[0], b[1]);
    return Math.hypot(p[0] - q[0], p[1] - q[1]);
  };
  const [bl, br, tr, tl] = [framePoint(0, 0), framePoint(1, 0), framePoint(1, 1), framePoint(0, 1)];
  const across = (side(bl, br) + side(tl, tr)) / 2;
  const up = (side(bl, tl) + side(br, tr)) / 2;
  const long = Math.max(across, up);
  const scale = Math.min(LONGEST_SIDE, Math.max(SHORTEST_LONG_SIDE, 0.65 * long)) / long;
  const frameWidth = Math.max(60, Math.round(across * scale));
  const frameHeight = Math.max(60, Math.round(up * scale));
  const margin = SHEET_MARGIN;
  const width = frameWidth + 2 * margin;
  const height = frameHeight + 2 * margin;
  const source = scale < 0.72 ? photo.half : photo.full;
  const colours = sample(source, source === photo.half ? 0.5 : 1, map, {
    width,
    height,
    frameWidth,
    frameHeight,
    margin,
  });
  if (polarity === 'light') for (let i = 0; i < colours.length; i++) colours[i] = 255 - colours[i]!;
  const paper = paperLight(colours, width, height);
  const ink = inkOf(colours, width, height, paper);
  const darkness = new Uint8Array(width * height);
  for (let i = 0, j = 0; i < darkness.length; i++, j += 3) darkness[i] = (ink[j]! + ink[j + 1]! + ink[j + 2]!) / 3;
  return {
    width,
    height,
    frameWidth,
    frameHeight,
    margin,
    ink,
    darkness,
    paper: levelOf(paper),
    photoPixels: 1 / scale,
  };
}

type Size = { width: number; height: number; frameWidth: number; frameHeight: number; margin: number };

function sample({ width: sw, height: sh, rgb }: Raster, shrink: 0.5 | 1, map: FrameMap, size: Size): Uint8Array {
  const { width, height, frameWidth, frameHeight, margin } = size;
  const out = new Uint8Array(width * height * 3);
  const columns = new Float64Array(width * 4);
  for (let x = 0; x < width; x++) {
    const u = (x - margin) / frameWidth;
    columns.set(map.bows.bottom(u), 4 * x);
    columns.set(map.bows.top(u), 4 * x + 2);
  }
  const offset = shrink === 0.5 ? -0.25 : 0;
  let o = 0;
  for (let y = 0; y < height; y++) {
    const v = 1 - (y - margin) / frameHeight;
    const left = map.bows.left(v);
    const right = map.bows.right(v);
    for (let x = 0; x < width; x++, o += 3) {
      const u = (x - margin) / frameWidth;
      const flat = project(map.homography, u, v);
      const px = flat[0] + (1 - v) * columns[4 * x]! + v * columns[4 * x + 2]! + (1 - u) * left[0] + u * right[0];
      const py = flat[1] + (1 - v) * columns[4 * x + 1]! + v * columns[4 * x + 3]! + (1 - u) * left[1] + u * right[1];
      const sx = Math.min(sw - 1.001, Math.max(0, px * shrink + offset));
      const sy = Math.min(sh - 1.001, Math.max(0, py * shrink + offset));
      const ix = sx | 0;
      const iy = sy | 0;
      const fx = sx - ix;
      const fy = sy - iy;
      const i = (iy * sw + ix) * 3;
      const j = i + sw * 3;
      const a = (1 - fx) * (1 - fy);
      const b = fx * (1 - fy);
      const c = (1 - fx) * fy;
      const d = fx * fy;
      out[o] = a * rgb[i]! + b * rgb[i + 3]! + c * rgb[j]! + d * rgb[j + 3]! + 0.5;
      out[o + 1] = a * rgb[i + 1]! + b * rgb[i + 4]! + c * rgb[j + 1]! + d * rgb[j + 4]! + 0.5;
      out[o + 2] = a * rgb[i + 2]! + b * rgb[i + 5]! + c * rgb[j + 2]! + d * rgb[j + 5]! + 0.5;
    }
  }
  return out;
}

type Paper = { columns: number; rows: number; cell: number; colours: Float32Array };

/** Colour of the bare paper by cells of 16 pixels: the light end of each cell, smoothed over its neighbours. */
function paperLight(colours: Uint8Array, width: number, height: number): Paper {
  const cell = 16;
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  const raw = new Float32Array(columns * rows * 3);
  const counts = new Uint16Array(256);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++)
      for (let k = 0; k < 3; k++) {
        counts.fill(0);
        let n = 0;
        for (let y = r * cell; y < Math.min(height, (r + 1) * cell); y++)
          for (let x = c * cell; x < Math.min(width, (c + 1) * cell); x++, n++)
            counts[colours[(y * width + x) * 3 + k]!]!++;
        let left = 0.25 * n;
        let level = 255;
        while (level > 0 && (left -= counts[level]!) > 0) level--;
        raw[(r * columns + c) * 3 + k] = level;
      }
  // a cell full of ink takes the lighter paper from around it: median of the neighbourhood, then a light blur
  const smooth = new Float32Array(raw.length);
  const near: number[] = [];
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++)
      for (let k = 0; k < 3; k++) {
        near.length = 0;
        for (let y = Math.max(0, r - 1); y <= Math.min(rows - 1, r + 1); y++)
          for (let x = Math.max(0, c - 1); x <= Math.min(columns - 1, c + 1); x++)
            near.push(raw[(y * columns + x) * 3 + k]!);
        near.sort((a, b) => a - b);
        smooth[(r * columns + c) * 3 + k] = near[near.length >> 1]!;
      }
  return { columns, rows, cell, colours: smooth };
}

const levelOf = ({ columns, rows, cell, colours }: Paper): PaperLight => {
  const level = new Float32Array(columns * rows);
  for (let i = 0; i < level.length; i++)
    level[i] = Math.min(colours[3 * i]!, colours[3 * i + 1]!, colours[3 * i + 2]!) / 255;
  return { columns, rows, cell, level };
};

const LOG = Float32Array.from({ length: 256 }, (_, i) => 100 * Math.log(i + 4));

function inkOf(
  colours: Uint8Array,
  width: number,
  height: number,
  { columns, rows, cell, colours: paper }: Paper,
): Uint8Array {
  const logPaper = paper.map((v) => 100 * Math.log(v + 4));
  const out = new Uint8Array(colours.length);
  for (let y = 0; y < height; y++) {
    const gy = Math.min(rows - 1.001, Math.max(0, (y + 0.5) / cell - 0.5));
    const r = gy | 0;
    const fy = gy - r;
    for (let x = 0, i = y * width * 3; x < width; x++, i += 3) {
      const gx = Math.min(columns - 1.001, Math.max(0, (x + 0.5) / cell - 0.5));
      const c = gx | 0;
      const fx = gx - c;
      const p = (r * columns + c) * 3;
      const q = p + columns * 3;
      for (let k = 0; k < 3; k++) {
        const light =
          (1 - fy) * ((1 - fx) * logPaper[p + k]! + fx * logPaper[p + 3 + k]!) +
          fy * ((1 - fx) * logPaper[q + k]! + fx * logPaper[q + 3 + k]!);
        const taken = light - LOG[colours[i + k]!]!;
        out[i + k] = taken <= 0 ? 0 : taken >= 255 ? 255 : taken;
      }
    }
  }
  return out;
}
