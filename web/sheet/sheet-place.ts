import type { PhotoPoint } from '../photo/view.ts';
import type { SheetCell, SheetReading } from './sheet-reading.ts';

type Box = SheetCell['box_px'];

const middleOf = ([x, y, width, height]: Box): PhotoPoint => [x + width / 2, y + height / 2];

/** The turn that brings the rows of a table level [°], from where its cells lie in the photo. */
export function turnOfTable(cells: readonly (readonly SheetCell[])[]): number {
  let [along, down] = [0, 0];
  for (const row of cells) {
    const [first, last] = [row[0], row.at(-1)];
    if (!first || !last) continue;
    const [from, to] = [middleOf(first.box_px), middleOf(last.box_px)];
    along += to[0] - from[0];
    down += to[1] - from[1];
  }
  return along === 0 && down === 0 ? 0 : (-Math.atan2(down, along) * 180) / Math.PI;
}

/** A frame round all that was read on a sheet; empty where nothing was. */
export function outlineOfSheet(reading: SheetReading | null): PhotoPoint[] {
  const boxes = [
    ...(reading?.cells.flat() ?? []).map(({ box_px }) => box_px),
    ...Object.values(reading?.fields ?? {}).map(({ box_px }) => box_px),
  ];
  if (boxes.length === 0) return [];
  const left = Math.min(...boxes.map(([x]) => x));
  const top = Math.min(...boxes.map(([, y]) => y));
  const right = Math.max(...boxes.map(([x, , width]) => x + width));
  const bottom = Math.max(...boxes.map(([, y, , height]) => y + height));
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}
