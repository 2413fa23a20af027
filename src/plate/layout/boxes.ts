/** A rectangle of the flat picture. */
export type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** The centre of a box: x, y. */
export const middle = (box: Box): readonly [number, number] => [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];

/** The smallest box around boxes. */
export const around = (boxes: readonly Box[]): Box => ({
  x0: Math.min(...boxes.map((b) => b.x0)),
  y0: Math.min(...boxes.map((b) => b.y0)),
  x1: Math.max(...boxes.map((b) => b.x1)),
  y1: Math.max(...boxes.map((b) => b.y1)),
});

/** Whether two boxes stand in one row: the lower of the two overlaps the other by half its height. */
export function inOneRow(a: Box, b: Box): boolean {
  const overlap = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
  return overlap > 0.5 * Math.min(a.y1 - a.y0, b.y1 - b.y0);
}
