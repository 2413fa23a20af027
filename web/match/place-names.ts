import { readCurve } from './plot-model.ts';
import type { Curve } from './plot-model.ts';

export type Area = { left: number; top: number; right: number; bottom: number };
export type PlacedName = { id: string; x: number; y: number; anchor: 'start' | 'end' };
export type NameBox = { left: number; right: number; top: number; bottom: number };

type Named = { id: string; width: number; curve: Curve };

/** Where a rising curve (in px) leaves an area, through its top or at its right edge, or where it ends inside. */
export function exitOf(curve: Curve, area: Area): { x: number; y: number } | null {
  for (let i = 1; i < curve.x.length; i++) {
    const [x0, y0, x1, y1] = [curve.x[i - 1]!, curve.y[i - 1]!, curve.x[i]!, curve.y[i]!];
    if (y0 < area.top || y1 >= area.top) continue;
    const x = x0 + ((x1 - x0) * (area.top - y0)) / (y1 - y0);
    if (x <= area.right) return { x, y: area.top };
  }
  const y = readCurve(curve, area.right);
  if (y !== null) return y > area.bottom ? null : { x: area.right, y };
  const end = { x: curve.x.at(-1) ?? Infinity, y: curve.y.at(-1) ?? Infinity };
  return end.x < area.right && end.y < area.bottom ? end : null;
}

/** Does a curve run through a box? Looked at every 3 px, finer than any name. */
export function runsThrough(curve: Curve, box: NameBox): boolean {
  for (let x = box.left; x <= box.right; x += 3) {
    const y = readCurve(curve, x);
    if (y !== null && y > box.top && y < box.bottom) return true;
  }
  return false;
}

const meet = (a: NameBox, b: NameBox): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/**
 * Names at the ends of curves, each beside its own curve where it leaves the plot, left or right of it, if it lies there on
 * no other curve and no other name. What finds no such place (curves that nearly coincide) is left to a key with line samples.
 */
export function placeNames(
  named: readonly Named[],
  others: readonly Curve[],
  taken: readonly NameBox[],
  area: Area,
  line: number,
): { placed: PlacedName[]; left: string[] } {
  const boxes = [...taken];
  const placed: PlacedName[] = [];
  const left: string[] = [];
  for (const { id, width, curve } of named) {
    const exit = exitOf(curve, area);
    const foreign = [...others, ...named.filter((other) => other.id !== id).map((other) => other.curve)];
    const spot =
      exit &&
      spotsAt(exit, width, area, line).find(
        ({ box }) =>
          box.left >= area.left &&
          box.right <= area.right &&
          !boxes.some((other) => meet(box, other)) &&
          ![...foreign, curve].some((other) => runsThrough(other, box)),
      );
    if (!spot) {
      left.push(id);
      continue;
    }
    boxes.push(spot.box);
    placed.push({ id, ...spot.name });
  }
  return { placed, left };
}

function spotsAt(
  exit: { x: number; y: number },
  width: number,
  area: Area,
  line: number,
): { name: Omit<PlacedName, 'id'>; box: NameBox }[] {
  const ends = exit.x < area.right;
  const baseline = ends ? Math.max(area.top + line * 1.05, exit.y + line * 0.4) : exit.y - line * 0.6;
  const box = (from: number, y: number): NameBox => ({
    left: from - 3,
    right: from + width + 3,
    top: y - line,
    bottom: y + line * 0.3,
  });
  if (!ends) {
    const below = exit.y + line * 1.4;
    return [baseline, below].map((y) => ({
      name: { x: area.right - 2, y, anchor: 'end' },
      box: box(area.right - 5 - width, y),
    }));
  }
  return [
    { name: { x: exit.x - 9, y: baseline, anchor: 'end' }, box: box(exit.x - 9 - width, baseline) },
    { name: { x: exit.x + 5, y: baseline, anchor: 'start' }, box: box(exit.x + 5, baseline) },
  ];
}
