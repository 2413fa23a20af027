import type { WordCrop } from '../../words/word-reader.ts';
import type { Word } from './chains.ts';
import type { Pieces } from './pieces.ts';
import type { Surroundings } from './surroundings.ts';

const LETTER_PX = 36;
const BORDER_PX = 12;
const LONGEST_PX = 1800;
/** Upright text is read from the bottom up, or from the top down. */
export type Facing = 'along' | 'against';

/**
 * Cuts a word out of the photo for reading: upright, letters 36 px high, grey, paper white, whatever is not part of the
 * word (ticks, frame lines, neighbours) left out.
 * @param facing `against` turns it by half a turn
 */
export function cropOf(all: Surroundings, { labels }: Pieces, word: Word, facing: Facing = 'along'): WordCrop {
  const level = word.run === 'level';
  // a smear of specks may be chained to a long word of tiny letters
  const long = Math.max(word.x1 - word.x0, word.y1 - word.y0);
  const zoom = Math.min(LETTER_PX / Math.max(7, word.size), LONGEST_PX / long);
  const border = BORDER_PX / zoom;
  const pad = 0.12 * word.size + 1;
  const [length, high] = level
    ? [word.x1 - word.x0 + 2 * pad, word.y1 - word.y0 + 2 * pad]
    : [word.y1 - word.y0 + 2 * pad, word.x1 - word.x0 + 2 * pad];
  const width = Math.max(8, Math.round((length + 2 * border) * zoom));
  const height = Math.max(8, Math.round((high + 2 * border) * zoom));
  const own = new Set(word.pieces.map((p) => p.id));
  const values = new Float32Array(width * height).fill(1);
  const sign = facing === 'along' ? 1 : -1;
  const cx = (word.x0 + word.x1) / 2;
  const cy = (word.y0 + word.y1) / 2;
  const light = all.polarity === 'light';
  // where the photo is finer than the crop, its pixels are averaged by two: grain would be sampled else
  const isFine = all.photoPixels > 1.2 * zoom;
  const { width: sw, height: sh, data } = isFine ? all.photo.halfGrey : all.photo.grey;
  const place = placer(all, word, pad + border);
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const a = (sign * (i + 0.5 - width / 2)) / zoom;
      const b = (sign * (j + 0.5 - height / 2)) / zoom;
      if (Math.abs(a) > length / 2 || Math.abs(b) > high / 2) continue;
      const x = level ? cx + a : cx + b;
      const y = level ? cy + b : cy - a;
      if (isForeign(labels, all, own, x, y)) continue;
      const [fx, fy] = place(x, y);
      const [px, py] = isFine ? [fx / 2 - 0.25, fy / 2 - 0.25] : [fx, fy];
      if (px < 1 || py < 1 || px > sw - 3 || py > sh - 3) continue;
      const grey = cubicAt(data, sw, px, py);
      const share = Math.min(1, Math.max(0, (light ? 255 - grey : grey) / Math.max(8, all.paperAt(x, y))));
      values[j * width + i] = share;
    }
  const grey = new Uint8Array(values.length);
  // the photo's grain, enlarged, would be taken for ink
  blurRows(values, width, height, 0.62 * Math.max(1.2, zoom / all.photoPixels));
  const darkest = values.reduce((a, v) => Math.min(a, v), 1);
  const range = Math.max(0.08, 1 - darkest);
  // the paper's own grain is not worth showing
  for (let k = 0; k < grey.length; k++)
    grey[k] = Math.min(255, Math.max(0, 255 * (1.08 * (1 - (1 - values[k]!) / range))));
  return { grey, width, height };
}

/** Gaussian blur along rows and columns. @param sigma pixels */
function blurRows(values: Float32Array, width: number, height: number, sigma: number): void {
  const reach = Math.min(6, Math.ceil(2 * sigma));
  const weights = Array.from({ length: 2 * reach + 1 }, (_, k) => Math.exp(-((k - reach) ** 2) / (2 * sigma * sigma)));
  const sum = weights.reduce((a, b) => a + b, 0);
  for (const [step, size, count, next] of [
    [1, width, height, width],
    [width, height, width, 1],
  ] as const) {
    const line = new Float32Array(size);
    for (let n = 0; n < count; n++) {
      const start = n * next;
      for (let i = 0; i < size; i++) line[i] = values[start + i * step]!;
      for (let i = reach; i < size - reach; i++) {
        let v = 0;
        for (let k = 0; k <= 2 * reach; k++) v += weights[k]! * line[i + k - reach]!;
        values[start + i * step] = v / sum;
      }
    }
  }
}

const SOFT_PX = 1.3;

/** The same crop softened: grain around a figure is then no dots and commas any more. */
export function softened({ grey, width, height }: WordCrop): WordCrop {
  const values = Float32Array.from(grey);
  blurRows(values, width, height, SOFT_PX);
  return { grey: Uint8Array.from(values, (v) => Math.round(v)), width, height };
}

/** The same crop three times side by side: a lone figure is read more surely in company. */
export function threefold({ grey, width, height }: WordCrop): WordCrop {
  const overlap = Math.min(BORDER_PX, width >> 2);
  const step = width - overlap;
  const wide = 2 * step + width;
  const out = new Uint8Array(wide * height).fill(255);
  for (let k = 0; k < 3; k++)
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const i = y * wide + k * step + x;
        out[i] = Math.min(out[i]!, grey[y * width + x]!);
      }
  return { grey: out, width: wide, height };
}

/** Photo places near a word: the map is as good as bilinear over so small a piece. */
function placer(all: Surroundings, word: Word, reach: number): (x: number, y: number) => readonly [number, number] {
  const [x0, x1, y0, y1] = [word.x0 - reach, word.x1 + reach, word.y0 - reach, word.y1 + reach];
  const a = all.toPhoto(x0, y0);
  const b = all.toPhoto(x1, y0);
  const c = all.toPhoto(x0, y1);
  const d = all.toPhoto(x1, y1);
  return (x, y) => {
    const f = (x - x0) / (x1 - x0);
    const g = (y - y0) / (y1 - y0);
    const k = (1 - f) * (1 - g);
    const l = f * (1 - g);
    const m = (1 - f) * g;
    const n = f * g;
    return [k * a[0] + l * b[0] + m * c[0] + n * d[0], k * a[1] + l * b[1] + m * c[1] + n * d[1]];
  };
}

/** True where the nearest ink belongs to something else. */
function isForeign(labels: Int32Array, all: Surroundings, own: ReadonlySet<number>, x: number, y: number): boolean {
  const ix = Math.round(x);
  const iy = Math.round(y);
  if (ix < 2 || iy < 2 || ix > all.width - 3 || iy > all.height - 3) return true;
  let foreign = false;
  for (let i = (iy - 1) * all.width + ix, row = 0; row < 3; row++, i += all.width)
    for (let k = i - 1; k <= i + 1; k++) {
      const label = labels[k]!;
      if (label === 0) continue;
      if (own.has(label)) return false;
      foreign = true;
    }
  return foreign;
}

/** Brightness between pixels, cubic convolution. Source: R. G. Keys, IEEE Trans. ASSP 29 (1981) 1153, a = -1/2. */
function cubicAt(data: Uint8Array, stride: number, x: number, y: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const fx = x - ix;
  const fy = y - iy;
  const a0 = ((-0.5 * fx + 1) * fx - 0.5) * fx;
  const a1 = (1.5 * fx - 2.5) * fx * fx + 1;
  const a2 = ((-1.5 * fx + 2) * fx + 0.5) * fx;
  const a3 = (0.5 * fx - 0.5) * fx * fx;
  const first = (iy - 1) * stride + ix;
  const b0 = ((-0.5 * fy + 1) * fy - 0.5) * fy;
  const b1 = (1.5 * fy - 2.5) * fy * fy + 1;
  const b2 = ((-1.5 * fy + 2) * fy + 0.5) * fy;
  const b3 = (0.5 * fy - 0.5) * fy * fy;
  let sum = 0;
  // written out by rows: a function made for every pixel costs more than the sum it makes
  for (let k = 0, i = first; k < 4; k++, i += stride) {
    const row = a0 * data[i - 1]! + a1 * data[i]! + a2 * data[i + 1]! + a3 * data[i + 2]!;
    sum += (k === 0 ? b0 : k === 1 ? b1 : k === 2 ? b2 : b3) * row;
  }
  return sum;
}
