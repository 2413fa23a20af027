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
const GROUND_REACH = 0.45;
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

function inkIn({ surface, xs, ys, rowHeight }: TableSurface, photo: Photo): TableInk {
  const grey = flatGrey({ ...surface, photo });
  const ground = groundOf(grey, Math.round(GROUND_REACH * rowHeight));
  const darkness = fieldLike(grey, (k) => Math.max(0, 1 - grey.values[k]! / Math.max(8, ground.values[k]!)));
  const cells: number[] = [];
  const plain: number[] = [];
  for (let r = 1; r < ys.length - 1; r++)
    for (let c = 0; c < xs.length - 1; c++) {
      const sorted = inner(darkness, xs[c]!, xs[c + 1]!, ys[r]!, ys[r + 1]!).sort();
      if (!sorted.length) continue;
      cells.push(sorted[Math.floor(0.985 * (sorted.length - 1))]!);
      plain.push(sorted[sorted.length >> 1]!);
    }
  // half of the table may be empty; the fullest third is not
  const stroke = cells.toSorted((a, b) => a - b)[Math.floor(0.7 * (cells.length - 1))] ?? 1;
  const grain = (plain.toSorted((a, b) => a - b)[plain.length >> 1] ?? 0) * 1.5;
  return { darkness, stroke, least: Math.max(STROKE_SHARE * stroke, OVER_GRAIN * grain, 0.03) };
}

/** The middle of a cell, its rulings left out. */
function inner({ width, height, values }: Field, x0: number, x1: number, y0: number, y1: number): Float32Array {
  const [dx, dy] = [0.08 * (x1 - x0) + 2, 0.14 * (y1 - y0) + 2];
  const out: number[] = [];
  for (let y = Math.ceil(y0 + dy); y < Math.min(height, y1 - dy); y++)
    for (let x = Math.ceil(x0 + dx); x < Math.min(width, x1 - dx); x++) out.push(values[y * width + x]!);
  return Float32Array.from(out);
}

/** The paper: the bright part of a neighbourhood, found by leaving the dark part out of the mean twice. */
function groundOf(grey: Field, reach: number): Field {
  let ground = meanAround(grey, reach);
  for (let turn = 0; turn < 2; turn++) {
    const last = ground.values;
    ground = meanAround(
      fieldLike(grey, (k) => Math.max(grey.values[k]!, last[k]!)),
      reach,
    );
  }
  return ground;
}
