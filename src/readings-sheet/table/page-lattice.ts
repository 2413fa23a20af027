import { crossing } from '../../picture/lines/line-webs.ts';
import { grainOf } from '../../picture/lines/page-view.ts';
import { acrossAt, lengthOf, type PageLine } from '../../picture/lines/page-lines.ts';
import type { Photo } from '../../picture/raster.ts';
import { flatGrey, layFlat, type Surface } from '../../writing/index.ts';
import { findOutline, wholePhoto } from '../../writing/outline/find-outline.ts';
import { chooseRulings, type Rulings } from './choose-rulings.ts';
import { isCutOff } from './cut-off.ts';
import { linesOf } from './find-lattice.ts';
import { mapped, transposed, type Lattice, type Xy } from './lattice.ts';

/** A bent page is straight enough between so many places along each side. */
const PLACES = 9;
/** The very edge of the paper is left out: its shadow looks like ink. Share of a side. */
const EDGE = 0.012;

/** The sheet of paper on a photo laid flat, and whether the photo shows only a part of it; null where none stands out. */
export function findPage(photo: Photo): { readonly page: Surface; readonly isPart: boolean } | null {
  const outline = findOutline(photo);
  const page = outline && layFlat(photo, outline);
  return page && { page, isPart: isCutOff(outline, photo.full.width, photo.full.height) };
}

/** The whole photo as if it were the sheet. */
export const photoAsPage = (photo: Photo): Surface | null => layFlat(photo, wholePhoto(photo));

/** The sheet of paper as a lattice of which no line is drawn: where no rulings tell of a table. */
export function pageLattice(page: Surface): Lattice {
  const { width, height } = page;
  const [left, top] = [EDGE * width, EDGE * height];
  const corners: Lattice = {
    nodes: [top, height - top].map((y) => [left, width - left].map((x): Xy => [x, y])),
    isDrawn: { level: [false, false], upright: [false, false] },
  };
  return onPhoto(corners, page);
}

/** The rulings of a table on a page, and the page's own sides around them; null where nothing on it is ruled. */
export function ruledOnPage(page: Surface): Lattice | null {
  const { width, height, values } = flatGrey(page);
  const grey = { width, height, data: Uint8Array.from(values) };
  const lines = linesOf(grey, grainOf(grey), Math.max(width, height)).filter(
    (line) => isLevel(line) && !isEdge(line, page),
  );
  const rulings = chooseRulings(lines);
  return rulings && onPhoto(latticeOf(rulings, page), page);
}

/** On paper laid flat a table leans by no more than this tangent. */
const LEAN = 0.06;
const isLevel = (line: PageLine): boolean =>
  Math.abs(acrossAt(line, line.to) - acrossAt(line, line.from)) < LEAN * lengthOf(line);

/** Whether a line is no ruling but the edge of the paper. */
function isEdge(line: PageLine, { width, height }: Surface): boolean {
  const across = line.upright ? width : height;
  const [from, to] = [acrossAt(line, line.from), acrossAt(line, line.to)];
  return Math.max(from, to) < EDGE * across || Math.min(from, to) > (1 - EDGE) * across;
}

/** Where rulings on a page cross each other and the page's sides: what stands around a table lies as flat as the page. */
function latticeOf({ level, upright }: Rulings, { width, height }: Surface): Lattice {
  const [left, right] = [EDGE * width, (1 - EDGE) * width];
  const [top, bottom] = [EDGE * height, (1 - EDGE) * height];
  const rows = level.map((line) => {
    const inner = upright.map((u): Xy => crossing(u, line) ?? [acrossAt(u, line.c[0]), line.c[0]]);
    return [[left, atEnd(line, left)] as Xy, ...inner, [right, atEnd(line, right)] as Xy];
  });
  const side = (y: number): Xy[] => [[left, y], ...upright.map((u): Xy => [atEnd(u, y), y]), [right, y]];
  return {
    nodes: [side(top), ...rows, side(bottom)],
    isDrawn: {
      level: [false, ...level.map(() => true), false],
      upright: [false, ...upright.map(() => true), false],
    },
  };
}

/** Across at a place along, or at the line's end before it: nobody knows how a line would go on. */
const atEnd = (line: PageLine, along: number): number => acrossAt(line, Math.min(line.to, Math.max(line.from, along)));

/** A lattice of a page in the photo, with nodes between the page's where these are far apart: paper bends. */
function onPhoto(lattice: Lattice, page: Surface): Lattice {
  const across = denser(lattice.nodes, lattice.isDrawn.upright, page.width / (PLACES - 1));
  const down = denser(transposed(across.nodes), lattice.isDrawn.level, page.height / (PLACES - 1));
  return mapped(
    { nodes: transposed(down.nodes), isDrawn: { level: down.isDrawn, upright: across.isDrawn } },
    ([x, y]) => page.toPhoto(x, y),
  );
}

/** Rows of nodes with further ones, not drawn, wherever two are further apart than a step on average. */
function denser(rows: readonly (readonly Xy[])[], isDrawn: readonly boolean[], step: number) {
  const gaps = rows[0]!
    .slice(1)
    .map((_, c) => rows.reduce((sum, row) => sum + distance(row[c]!, row[c + 1]!), 0) / rows.length);
  const counts = gaps.map((gap) => Math.max(1, Math.round(gap / step)));
  const share = (a: Xy, b: Xy, f: number): Xy => [a[0] + (b[0] - a[0]) * f, a[1] + (b[1] - a[1]) * f];
  return {
    nodes: rows.map((row) => [
      ...counts.flatMap((count, c) => Array.from({ length: count }, (_, k) => share(row[c]!, row[c + 1]!, k / count))),
      row.at(-1)!,
    ]),
    isDrawn: [
      ...counts.flatMap((count, c) => Array.from({ length: count }, (_, k) => k === 0 && isDrawn[c]!)),
      isDrawn.at(-1)!,
    ],
  };
}

const distance = (a: Xy, b: Xy): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
