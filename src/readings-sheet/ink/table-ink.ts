import type { Photo, Raster } from '../../picture/raster.ts';
import { flatGrey } from '../../writing/index.ts';
import { fieldLike, meanAround, type Field } from '../../writing/crop/filters.ts';
import type { TableSurface } from '../table/table-surface.ts';

/** How dark a table's pixels are against the paper around them, shares of its brightness, and what counts as ink. */
export type TableInk = {
  readonly darkness: Field;
  /** darkness of a usual stroke */
  readonly stroke: number;
  /** darkness from which a pixel is ink */
  readonly least: number;
};

/** Paper is looked for within this many row heights. */
const GROUND_REACH = 0.32;
const STROKE_SHARE = 0.3;
const FAINT_IN_RED = 0.35;
/** Ink stands off the paper by so many deviations of its grain. */
const OVER_GRAIN = 4;

/** Darkness of a table laid flat, its rulings still in it. */
export function tableInk(table: TableSurface): TableInk {
  const red = inkIn(table, redLight(table.surface.photo));
  // only red ink is faint in red light
  if (red.stroke > FAINT_IN_RED) return red;
  const grey = inkIn(table, table.surface.photo);
  return red.stroke > 0.6 * grey.stroke ? red : grey;
}

/** In red light blue and black ink are dark, and rings of coffee, rust and yellowed paper bright. */
function redLight(photo: Photo): Photo {
  const red = ({ width, height, rgb }: Raster) => {
    const data = new Uint8Array(width * height);
    for (let i = 0; i < data.length; i++) data[i] = rgb[3 * i]!;
    return { width, height, data };
  };
  return { ...photo, grey: red(photo.full), halfGrey: red(photo.half) };
}

function inkIn(table: TableSurface, photo: Photo): TableInk {
  const { surface, rowHeight } = table;
  const grey = flatGrey({ ...surface, photo });
  const ground = groundOf(grey, Math.round(GROUND_REACH * rowHeight));
  const darkness = fieldLike(grey, (k) => Math.max(0, 1 - grey.values[k]! / Math.max(8, ground.values[k]!)));
  const parts = partsOf(darkness, table).map((part) => part.sort());
  const at = (share: number) => parts.map((sorted) => sorted[Math.floor(share * (sorted.length - 1))]!);
  // half of the table may be empty; the fullest third is not
  const stroke = at(0.985).toSorted((a, b) => a - b)[Math.floor(0.7 * (parts.length - 1))] ?? 1;
  const grain = (at(0.5).toSorted((a, b) => a - b)[parts.length >> 1] ?? 0) * 1.5;
  return { darkness, stroke, least: Math.max(STROKE_SHARE * stroke, OVER_GRAIN * grain, 0.03) };
}

/** A table is looked at in so many parts, down and across: each is about as big as a few cells. */
const PARTS = [10, 6] as const;
/** What is so near a ruling is none of the writing, flat pixels. */
const RULING = 5;

/** Darkness in the parts of a table, its rulings left out. */
function partsOf({ width, height, values }: Field, { xs, ys, drawn }: TableSurface): Float32Array[] {
  const [left, right, top, bottom] = [xs[0]!, xs[xs.length - 1]!, ys[0]!, ys[ys.length - 1]!];
  const isFree = (length: number, rulings: readonly number[]) => {
    const free = new Uint8Array(length).fill(1);
    for (const at of rulings) free.fill(0, Math.max(0, Math.round(at - RULING)), Math.round(at + RULING) + 1);
    return free;
  };
  const [freeX, freeY] = [isFree(width, drawn.xs), isFree(height, drawn.ys)];
  const [down, across] = PARTS;
  const parts: number[][] = Array.from({ length: down * across }, () => []);
  for (let y = Math.max(0, Math.ceil(top)); y < Math.min(height, bottom); y++) {
    if (!freeY[y]) continue;
    const row = Math.floor(((y - top) / (bottom - top)) * down) * across;
    for (let x = Math.max(0, Math.ceil(left)); x < Math.min(width, right); x++)
      if (freeX[x]) parts[row + Math.floor(((x - left) / (right - left)) * across)]!.push(values[y * width + x]!);
  }
  return parts.filter((part) => part.length > 0).map((part) => Float32Array.from(part));
}

/**
 * The paper: the bright part of a neighbourhood, found by leaving the dark part out of the mean twice; and of the
 * neighbourhoods to all four sides the darkest, so that what lies in shadow beside a fold is held against its own side.
 * Paper is smooth: every second pixel tells enough.
 */
function groundOf(full: Field, reach: number): Field {
  const grey = everySecond(full);
  let ground = meanAround(grey, reach >> 1);
  for (let turn = 0; turn < 2; turn++) {
    const last = ground.values;
    ground = meanAround(
      fieldLike(grey, (k) => Math.max(grey.values[k]!, last[k]!)),
      reach >> 1,
    );
  }
  return darkestBeside(ground, reach >> 1, full);
}

function everySecond({ width, height, values }: Field): Field {
  const [wide, high] = [(width + 1) >> 1, (height + 1) >> 1];
  const out = new Float32Array(wide * high);
  for (let y = 0, k = 0; y < high; y++) for (let x = 0; x < wide; x++, k++) out[k] = values[2 * y * width + 2 * x]!;
  return { width: wide, height: high, values: out };
}

/** The least of what a half-size field holds so far to each side, at full size. */
function darkestBeside({ width, height, values }: Field, reach: number, full: Field): Field {
  const out = new Float32Array(full.values.length);
  for (let y = 0; y < height; y++) {
    const [above, below] = [Math.max(0, y - reach) * width, Math.min(height - 1, y + reach) * width];
    for (let x = 0; x < width; x++) {
      const [left, right] = [Math.max(0, x - reach), Math.min(width - 1, x + reach)];
      const row = y * width;
      const least = Math.min(values[above + x]!, values[below + x]!, values[row + left]!, values[row + right]!);
      for (let v = 2 * y; v < Math.min(full.height, 2 * y + 2); v++)
        for (let u = 2 * x; u < Math.min(full.width, 2 * x + 2); u++) out[v * full.width + u] = least;
    }
  }
  return { width: full.width, height: full.height, values: out };
}
