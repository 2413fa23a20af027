import { homographyOf, project } from '../../picture/homography.ts';
import type { Photo } from '../../picture/raster.ts';
import type { Surface } from '../../writing/index.ts';
import type { Lattice, Xy } from './lattice.ts';

/** A table laid flat with what stands around it; rulings are straight there. Flat pixels. */
export type TableSurface = {
  readonly surface: Surface;
  /** upright rulings from the left, level rulings from the top */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** those of them that are drawn, places along either side */
  readonly drawn: { readonly xs: readonly number[]; readonly ys: readonly number[] };
  /** usual height of a row */
  readonly rowHeight: number;
};

/** A table is first laid flat this big, rows of readings are then about so high; no table is laid flat bigger. */
const GUESSED_PX = 1500;
const MOST_PX = 3_200_000;
const GUESSED_ROW_PX = 56;
const MOST_ENLARGED = 2;

/** How much around a lattice is laid flat with it, shares of its height and width. */
export type Margins = { readonly above: number; readonly right: number; readonly below: number; readonly left: number };
/** Above a table stands the head of the sheet. */
export const AROUND_TABLE: Margins = { above: 0.55, right: 0.15, below: 0.25, left: 0.15 };
export const NOTHING_AROUND: Margins = { above: 0, right: 0, below: 0, left: 0 };

/** How a table is laid flat again once its figures are known: flat pixels in a photo pixel, and the rows' lean. */
export type Fit = { readonly zoom: number; readonly lean: number };

/**
 * Lays a table flat: straight between its rulings, so that folds and curls go, and by perspective outside.
 * @param fit what is known from having looked once; left out, the size is guessed
 */
export function tableSurface(
  photo: Photo,
  { nodes, isDrawn }: Lattice,
  margins: Margins,
  fit?: Fit,
): TableSurface | null {
  const widths = gaps(nodes[0]!.length - 1, (c) => nodes.map((row) => distance(row[c]!, row[c + 1]!)));
  const heights = gaps(nodes.length - 1, (r) => nodes[r]!.map((at, c) => distance(at, nodes[r + 1]![c]!)));
  const [wide, high] = [sum(widths), sum(heights)];
  const area = wide * (1 + margins.left + margins.right) * high * (1 + margins.above + margins.below);
  const guessed = GUESSED_PX / Math.max(wide, 1.7 * high);
  const zoom = Math.min(MOST_ENLARGED, fit?.zoom ?? guessed, Math.sqrt(MOST_PX / area));
  const xs = edges(margins.left * wide, widths, zoom);
  const ys = edges(margins.above * high, heights, zoom);
  const last = <T>(list: readonly T[]) => list[list.length - 1]!;
  const corners = (rows: readonly (readonly Xy[])[]) =>
    [rows[0]![0]!, last(rows[0]!), last(last(rows)), last(rows)[0]!] as const;
  const flat = ys.map((y) => xs.map((x): Xy => [x, y]));
  const around = homographyOf(corners(flat), corners(nodes));
  if (!around) return null;
  const within = between(nodes, xs, ys);
  const straight = (x: number, y: number): Xy => {
    const [cx, cy] = [clamp(x, xs[0]!, last(xs)), clamp(y, ys[0]!, last(ys))];
    const inside = within(cx, cy);
    if (cx === x && cy === y) return inside;
    const [ax, ay] = project(around, x, y);
    const [bx, by] = project(around, cx, cy);
    return [inside[0] + ax - bx, inside[1] + ay - by];
  };
  const lean = fit?.lean ?? 0;
  const middle = (xs[0]! + last(xs)) / 2;
  return {
    surface: {
      width: Math.ceil(last(xs) + margins.right * wide * zoom),
      height: Math.ceil(last(ys) + margins.below * high * zoom),
      photo,
      photoPixels: 1 / zoom,
      toPhoto: lean === 0 ? straight : (x, y) => straight(x, y + lean * (x - middle)),
    },
    xs,
    ys,
    drawn: { xs: xs.filter((_, i) => isDrawn.upright[i]), ys: ys.filter((_, i) => isDrawn.level[i]) },
    rowHeight: GUESSED_ROW_PX,
  };
}

/** The same table seen from the next side: turned a quarter to the left. */
export const turnedQuarter = ({ nodes, isDrawn }: Lattice): Lattice => ({
  nodes: nodes[0]!.map((_, c) => nodes.map((row) => row[row.length - 1 - c]!)),
  isDrawn: { level: isDrawn.upright.toReversed(), upright: isDrawn.level },
});

/** Places between four nodes each, straight along both sides. */
function between(nodes: readonly (readonly Xy[])[], xs: readonly number[], ys: readonly number[]) {
  return (x: number, y: number): Xy => {
    const c = stepAt(xs, x);
    const r = stepAt(ys, y);
    const f = (x - xs[c]!) / (xs[c + 1]! - xs[c]!);
    const g = (y - ys[r]!) / (ys[r + 1]! - ys[r]!);
    const [a, b, d, e] = [nodes[r]![c]!, nodes[r]![c + 1]!, nodes[r + 1]![c]!, nodes[r + 1]![c + 1]!];
    const mix = (k: 0 | 1) => (1 - g) * ((1 - f) * a[k] + f * b[k]) + g * ((1 - f) * d[k] + f * e[k]);
    return [mix(0), mix(1)];
  };
}

/** Which step of rising numbers a number stands on: 0 .. length − 2. */
export function stepAt(rising: readonly number[], value: number): number {
  let i = 0;
  while (i < rising.length - 2 && value >= rising[i + 1]!) i++;
  return i;
}

const gaps = (count: number, of: (i: number) => number[]): number[] =>
  Array.from({ length: count }, (_, i) => middleOf(of(i)));

function edges(from: number, lengths: readonly number[], zoom: number): number[] {
  const out = [from * zoom];
  for (const length of lengths) out.push(out[out.length - 1]! + length * zoom);
  return out;
}

const distance = (a: Xy, b: Xy): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
const middleOf = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[list.length >> 1]!;
const clamp = (v: number, low: number, high: number): number => Math.min(high, Math.max(low, v));
