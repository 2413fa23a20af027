import { grainOf } from '../../picture/lines/page-view.ts';
import { acrossAt, type PageLine } from '../../picture/lines/page-lines.ts';
import type { Photo } from '../../picture/raster.ts';
import { flatGrey, layFlat, type Surface } from '../../writing/index.ts';
import { findOutline, wholePhoto } from '../../writing/outline/find-outline.ts';
import { chooseRulings } from './choose-rulings.ts';
import { linesOf, mapped, type Lattice } from './find-lattice.ts';
import { withEnds } from './ruling-ends.ts';
import type { SheetLies } from './sheet-lies.ts';
import { NOTHING_AROUND, type Margins } from './table-surface.ts';

type Xy = readonly [number, number];

/** A bent page is straight enough between so many places along each side. */
const PLACES = 9;
/** The very edge of the paper is left out: its shadow looks like ink. Share of a side. */
const EDGE = 0.012;

/** The sheet of paper on a photo laid flat; null where none stands out. */
export function findPage(photo: Photo): Surface | null {
  const outline = findOutline(photo);
  return outline && layFlat(photo, outline);
}

/** The whole photo as if it were the sheet. */
export const photoAsPage = (photo: Photo): Surface | null => layFlat(photo, wholePhoto(photo));

/** The sheet of paper as a lattice of which no line is drawn: where no rulings tell of a table. */
export function pageLattice(page: Surface): SheetLies {
  const share = (i: number) => EDGE + ((1 - 2 * EDGE) * i) / (PLACES - 1);
  const steps = Array.from({ length: PLACES }, (_, i) => share(i));
  const none = steps.map(() => false);
  const nodes = steps.map((v) => steps.map((u) => page.toPhoto(u * page.width, v * page.height)));
  return { lattice: { nodes, isDrawn: { level: none, upright: none } }, margins: NOTHING_AROUND };
}

/** The ruled table on a page, and the page around it; null where nothing on it is ruled like a table. */
export function ruledOnPage(page: Surface): SheetLies | null {
  const { width, height, values } = flatGrey(page);
  const grey = { width, height, data: Uint8Array.from(values) };
  const lines = linesOf(grey, grainOf(grey), Math.max(width, height)).filter((line) => !isEdge(line, page));
  const rulings = chooseRulings(lines);
  if (!rulings) return null;
  const lattice = withEnds(rulings);
  const toPhoto = ([x, y]: Xy) => page.toPhoto(x, y);
  return { lattice: mapped(lattice, toPhoto), margins: marginsOf(lattice, page) };
}

/** Whether a line is no ruling but the edge of the paper. */
function isEdge(line: PageLine, { width, height }: Surface): boolean {
  const across = line.upright ? width : height;
  const [from, to] = [acrossAt(line, line.from), acrossAt(line, line.to)];
  return Math.max(from, to) < EDGE * across || Math.min(from, to) > (1 - EDGE) * across;
}

/** How much of a page lies around a lattice on it. */
function marginsOf({ nodes }: Lattice, { width, height }: Surface): Margins {
  const mean = (some: readonly Xy[], k: 0 | 1) => some.reduce((sum, at) => sum + at[k], 0) / some.length;
  const column = (c: number) => nodes.map((row) => row.at(c)!);
  const [left, right] = [mean(column(0), 0), mean(column(-1), 0)];
  const [top, bottom] = [mean(nodes[0]!, 1), mean(nodes.at(-1)!, 1)];
  const share = (length: number, of: number, whole: number) => Math.max(0, length - EDGE * whole) / of;
  return {
    above: share(top, bottom - top, height),
    right: share(width - right, right - left, width),
    below: share(height - bottom, bottom - top, height),
    left: share(left, right - left, width),
  };
}
