/** The drawing of the holes on A4 paper, all in millimetres of print. */

/** A4, a millimetre lower so that no printer starts another page; and what it can be trusted to reach: heading above, ruler below. */
export const A4 = { width: 210, height: 296 };
export const WINDOW = { x: 10, y: 38, width: 190, height: 222 };
/** What neighbouring sheets share, so that they can be laid over each other. */
const OVERLAP = 10;
/** Room for the ends of the centre cross beyond the widest circle. */
const MARGIN = 4;

export type HoleSheet = {
  /** holes drawn on this sheet [mm], rising */
  holes: number[];
  /** where the common centre lies on the page, possibly outside of it */
  centre: { x: number; y: number };
  /** which part of a drawing that is too large for one sheet: column and row from 1, of how many */
  part: { column: number; row: number; columns: number; rows: number };
  /** crosses both neighbours carry, on the page */
  joins: { x: number; y: number }[];
};

/**
 * Lays the holes out: all around one centre on one drawing, or one drawing for each board; cut into sheets where the pipe is wider
 * than the paper.
 * @param widest_mm widest circle that is drawn: the pipe's outside, or its inside
 */
export function holeSheets(holes_mm: readonly number[], widest_mm: number, each: boolean): HoleSheet[] {
  const rising = [...holes_mm].sort((a, b) => a - b);
  const drawings = each ? rising.map((hole) => [hole]) : [rising];
  const size = widest_mm + 2 * MARGIN;
  const columns = parts(size, WINDOW.width);
  const rows = parts(size, WINDOW.height);
  return drawings.flatMap((holes) =>
    range(rows).flatMap((row) =>
      range(columns).map((column): HoleSheet => {
        const centre = {
          x: WINDOW.x + WINDOW.width / 2 - shift(column, columns, WINDOW.width),
          y: WINDOW.y + WINDOW.height / 2 - shift(row, rows, WINDOW.height),
        };
        const part = { column: column + 1, row: row + 1, columns, rows };
        return { holes, centre, part, joins: joinsOn(centre, { columns, rows }) };
      }),
    ),
  );
}

const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

const parts = (size: number, room: number): number =>
  size <= room ? 1 : Math.ceil((size - OVERLAP) / (room - OVERLAP));

/** How far the middle of one part lies from the middle of the whole. */
const shift = (index: number, count: number, room: number): number => (index - (count - 1) / 2) * (room - OVERLAP);

/** Crosses in the middle of every overlap, in the drawing's own places, as far as they fall on this sheet. */
function joinsOn(centre: { x: number; y: number }, { columns, rows }: { columns: number; rows: number }) {
  const seams = (count: number, room: number): number[] =>
    range(Math.max(0, count - 1)).map((i) => shift(i, count, room) + (room - OVERLAP) / 2);
  const [across, down] = [seams(columns, WINDOW.width), seams(rows, WINDOW.height)];
  const spots = [
    ...across.flatMap((x) => spread(rows, WINDOW.height).map((y) => ({ x, y }))),
    ...down.flatMap((y) => spread(columns, WINDOW.width).map((x) => ({ x, y }))),
  ];
  return spots.map(({ x, y }) => ({ x: x + centre.x, y: y + centre.y })).filter(isInWindow);
}

/** Two places along the other way on every sheet, a quarter and three quarters of it. */
const spread = (count: number, room: number): number[] =>
  range(count).flatMap((i) => [-0.25, 0.25].map((share) => shift(i, count, room) + share * room));

const isInWindow = ({ x, y }: { x: number; y: number }): boolean =>
  x >= WINDOW.x && x <= WINDOW.x + WINDOW.width && y >= WINDOW.y && y <= WINDOW.y + WINDOW.height;
