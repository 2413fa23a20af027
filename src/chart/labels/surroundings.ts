import type { FrameMap } from '../frame/frame-map.ts';
import type { Grey, Photo } from '../../picture/raster.ts';
import type { Polarity } from '../frame/side-band.ts';
import type { PhotoPoint } from '../spaces.ts';
import { barePaper } from './bare-paper.ts';

/**
 * The plot frame with what is printed around it, laid flat: x right, y down, the text of an upright chart upright.
 * `ink` is 100 · ln(paper / pixel), 0..255, light print on a dark plate turned round.
 */
export type Surroundings = {
  readonly width: number;
  readonly height: number;
  /** the frame's own rectangle in it */
  readonly frame: Box;
  readonly ink: Uint8Array;
  /** photo pixels a pixel here is wide, about */
  readonly photoPixels: number;
  readonly photo: Photo;
  readonly polarity: Polarity;
  /** brightness of the bare paper in the photo at a place here, 0..255, light print turned round */
  paperAt(x: number, y: number): number;
  toPhoto(x: number, y: number): PhotoPoint;
};

export type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** Share of the frame's size looked at on each side. */
const MARGIN = 0.36;
const LONGEST_SIDE = 1400;
const SHORTEST_LONG_SIDE = 800;
/** The map is worked out at every so many pixels, and between them it is as good as straight. */
const MESH = 16;
const NOTHING_THERE = 255;

/** Lays a chart flat together with the paper around it. */
export function layOut(photo: Photo, map: FrameMap, polarity: Polarity): Surroundings {
  const place = map.toPhoto;
  const length = (a: PhotoPoint, b: PhotoPoint) => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const across = (length(place(0, 0), place(1, 0)) + length(place(0, 1), place(1, 1))) / 2;
  const up = (length(place(0, 0), place(0, 1)) + length(place(1, 0), place(1, 1))) / 2;
  const long = Math.max(across, up);
  const scale = Math.min(LONGEST_SIDE, Math.max(SHORTEST_LONG_SIDE, long)) / long;
  const frameWidth = Math.max(60, Math.round(across * scale));
  const frameHeight = Math.max(60, Math.round(up * scale));
  // text is as large along a short side as along a long one
  const mx = Math.round(MARGIN * Math.max(frameWidth, 0.7 * frameHeight));
  const my = Math.round(MARGIN * Math.max(frameHeight, 0.7 * frameWidth));
  const width = frameWidth + 2 * mx;
  const height = frameHeight + 2 * my;
  const mesh = meshOf(width, height, (x, y) => place((x - mx) / frameWidth, 1 - (y - my) / frameHeight));
  const shrink = scale < 0.6 ? 0.5 : 1;
  const grey = sample(shrink === 1 ? photo.grey : photo.halfGrey, shrink, mesh, width, height, polarity);
  const soft = scale > 0.9 ? grey : soften(grey, width, height);
  const { ink, paperAt } = barePaper(soft, width, height);
  return {
    width,
    height,
    frame: { x0: mx, y0: my, x1: mx + frameWidth, y1: my + frameHeight },
    ink,
    photoPixels: 1 / scale,
    photo,
    polarity,
    paperAt,
    toPhoto: (x, y) => place((x - mx) / frameWidth, 1 - (y - my) / frameHeight),
  };
}

type Mesh = { columns: number; at: Float64Array };

function meshOf(width: number, height: number, toPhoto: (x: number, y: number) => PhotoPoint): Mesh {
  const columns = Math.ceil(width / MESH) + 1;
  const rows = Math.ceil(height / MESH) + 1;
  const at = new Float64Array(2 * columns * rows);
  for (let r = 0, i = 0; r < rows; r++)
    for (let c = 0; c < columns; c++, i += 2) at.set(toPhoto(c * MESH, r * MESH), i);
  return { columns, at };
}

function sample(
  { width: sw, height: sh, data }: Grey,
  shrink: 0.5 | 1,
  { columns, at }: Mesh,
  width: number,
  height: number,
  polarity: Polarity,
): Uint8Array {
  const out = new Uint8Array(width * height);
  const offset = shrink === 1 ? 0 : -0.25;
  const light = polarity === 'light';
  for (let y = 0, o = 0; y < height; y++) {
    const r = Math.floor(y / MESH);
    const f = y / MESH - r;
    for (let x = 0; x < width;) {
      const c = Math.floor(x / MESH);
      const i = 2 * (r * columns + c);
      const j = i + 2 * columns;
      let px = at[i]! + (at[j]! - at[i]!) * f;
      let py = at[i + 1]! + (at[j + 1]! - at[i + 1]!) * f;
      const dx = ((at[i + 2]! + (at[j + 2]! - at[i + 2]!) * f - px) / MESH) * shrink;
      const dy = ((at[i + 3]! + (at[j + 3]! - at[i + 3]!) * f - py) / MESH) * shrink;
      px = px * shrink + offset;
      py = py * shrink + offset;
      const to = Math.min(width, (c + 1) * MESH);
      for (; x < to; x++, o++, px += dx, py += dy) {
        if (px < 0 || py < 0 || px > sw - 1.001 || py > sh - 1.001) {
          // beyond the photo there is nothing to read
          out[o] = NOTHING_THERE;
          continue;
        }
        const ix = px | 0;
        const iy = py | 0;
        const k = iy * sw + ix;
        const fx = px - ix;
        const top = data[k]! + (data[k + 1]! - data[k]!) * fx;
        const bottom = data[k + sw]! + (data[k + sw + 1]! - data[k + sw]!) * fx;
        const v = top + (bottom - top) * (py - iy) + 0.5;
        out[o] = light ? 255 - v : v;
      }
    }
  }
  return out;
}

/** Binomial 3 × 3: takes the grain out where the photo was shrunk without averaging. */
function soften(grey: Uint8Array, width: number, height: number): Uint8Array {
  const rows = new Uint16Array(grey.length);
  for (let i = 1; i < grey.length - 1; i++) rows[i] = grey[i - 1]! + 2 * grey[i]! + grey[i + 1]!;
  const out = grey.slice();
  for (let i = width; i < grey.length - width; i++)
    out[i] = (rows[i - width]! + 2 * rows[i]! + rows[i + width]! + 8) >> 4;
  return out.subarray(0, width * height);
}
