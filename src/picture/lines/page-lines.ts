/**
 * A printed line that is straight but for the bend of the paper and the lens.
 * An upright line has x as a function of y, a level line y as a function of x: `across` as a function of `along`.
 */
export type PageLine = {
  readonly upright: boolean;
  readonly isDark: boolean;
  /** where along it begins and ends, view pixels */
  readonly from: number;
  readonly to: number;
  /** across = c0 + c1·s + c2·s², s counted from the middle */
  readonly middle: number;
  readonly c: readonly [number, number, number];
  /** how far it stands off the paper, grey levels */
  readonly strength: number;
  /** share of its length that shows */
  readonly cover: number;
};

/** Across at a place along; beyond its ends the line goes on straight. */
export function acrossAt({ from, to, middle, c }: PageLine, along: number): number {
  const held = along < from ? from : along > to ? to : along;
  const s = held - middle;
  const slope = c[1] + 2 * c[2] * s;
  return c[0] + c[1] * s + c[2] * s * s + (along - held) * slope;
}

/** Slope of across over along at a place. */
export function slopeAt({ from, to, middle, c }: PageLine, along: number): number {
  const held = along < from ? from : along > to ? to : along;
  return c[1] + 2 * c[2] * (held - middle);
}

/** Whether two lines of one direction run on the same course. */
export function isCollinear(a: PageLine, b: PageLine): boolean {
  const reach = 2.5 + 0.006 * Math.max(0, b.from - a.to, a.from - b.to);
  const [long, short] = lengthOf(a) >= lengthOf(b) ? [a, b] : [b, a];
  return (
    Math.abs(acrossAt(long, short.from) - acrossAt(short, short.from)) < reach &&
    Math.abs(acrossAt(long, short.to) - acrossAt(short, short.to)) < reach
  );
}

/** Length of a line along its direction, view pixels. */
export const lengthOf = (line: PageLine): number => line.to - line.from;
