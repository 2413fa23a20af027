import type { FrameMap } from './frame/frame-map.ts';
import { inkOn, paperLight, type PaperLight } from './paper.ts';
import type { Photo, Raster } from '../picture/raster.ts';
import type { Polarity } from './frame/side-band.ts';
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
  /** how much lighter than the paper around, on the same scale: the white grid of a tinted panel */
  readonly lightness: Uint8Array;
  readonly paper: PaperLight;
  /** photo pixels a sheet pixel is wide, about */
  readonly photoPixels: number;
};

const LONGEST_SIDE = 1120;
const SHORTEST_LONG_SIDE = 900;
export const SHEET_MARGIN = 26;

/** From shares of the frame to pixels of the sheet. */
export const toSheet = (sheet: Sheet, u: number, v: number): SheetPoint =>
  sheetPoint(sheet.margin + u * sheet.frameWidth, sheet.margin + (1 - v) * sheet.frameHeight);
/** From pixels of the sheet to shares of the frame. */
export const fromSheet = (sheet: Sheet, x: number, y: number): FramePoint =>
  framePoint((x - sheet.margin) / sheet.frameWidth, 1 - (y - sheet.margin) / sheet.frameHeight);

/** Straightens the frame: its longer side becomes 900 to 1120 pixels, about 0.6 of what it was in the photo. */
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
  const scale = Math.min(LONGEST_SIDE, Math.max(SHORTEST_LONG_SIDE, 0.6 * long)) / long;
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
  const { ink, darkness, lightness } = inkOn(colours, width, height, paper);
  return {
    width,
    height,
    frameWidth,
    frameHeight,
    margin,
    ink,
    darkness,
    lightness,
    paper,
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
  const h = map.homography;
  const right = sw - 1.001;
  const bottom = sh - 1.001;
  const row = sw * 3;
  for (let y = 0, o = 0; y < height; y++) {
    const v = 1 - (y - margin) / frameHeight;
    const [lx, ly] = map.bows.left(v);
    const [rx, ry] = map.bows.right(v);
    for (let x = 0; x < width; x++, o += 3) {
      const u = (x - margin) / frameWidth;
      const w = 1 / (h[6]! * u + h[7]! * v + h[8]!);
      const k = 4 * x;
      const px =
        (h[0]! * u + h[1]! * v + h[2]!) * w + (1 - v) * columns[k]! + v * columns[k + 2]! + (1 - u) * lx + u * rx;
      const py =
        (h[3]! * u + h[4]! * v + h[5]!) * w + (1 - v) * columns[k + 1]! + v * columns[k + 3]! + (1 - u) * ly + u * ry;
      const sx = px * shrink + offset;
      const sy = py * shrink + offset;
      const cx = sx < 0 ? 0 : sx > right ? right : sx;
      const cy = sy < 0 ? 0 : sy > bottom ? bottom : sy;
      const ix = cx | 0;
      const iy = cy | 0;
      const fx = cx - ix;
      const fy = cy - iy;
      const i = iy * row + ix * 3;
      const j = i + row;
      const b = fx * (1 - fy);
      const c = (1 - fx) * fy;
      const d = fx * fy;
      const a = 1 - b - c - d;
      out[o] = a * rgb[i]! + b * rgb[i + 3]! + c * rgb[j]! + d * rgb[j + 3]! + 0.5;
      out[o + 1] = a * rgb[i + 1]! + b * rgb[i + 4]! + c * rgb[j + 1]! + d * rgb[j + 4]! + 0.5;
      out[o + 2] = a * rgb[i + 2]! + b * rgb[i + 5]! + c * rgb[j + 2]! + d * rgb[j + 5]! + 0.5;
    }
  }
  return out;
}
