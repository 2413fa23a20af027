import type { AxisScale } from './axes.ts';
import { fitBendField, NO_BEND, type BendField, type Control } from './bend-field.ts';
import { findGridLines, peaksOf, ridgeProfile, type GridLine, type LineDirection } from './grid-lines.ts';
import { fitLattice, type Lattice } from './lattice.ts';
import { fromSheet, type Sheet } from './sheet.ts';

/** What grid lines and ticks tell about one axis. */
export type ScaleGrid = {
  readonly lines: readonly GridLine[];
  readonly lattice: Lattice | null;
  /** what to add to the sheet's fraction of this axis at (u, v) */
  readonly bend: BendField;
  /** true where round values were found under the lines: the scale is then checked, not only assumed */
  readonly anchored: boolean;
};

/**
 * Reads the grid of one axis and works out how the sheet's fractions must be corrected so that every grid line and
 * tick stands at its round value.
 */
export function readScaleGrid(sheet: Sheet, direction: LineDirection, axis: AxisScale): ScaleGrid {
  const span = direction === 'upright' ? sheet.frameWidth : sheet.frameHeight;
  const lines = findGridLines(sheet, direction);
  const fractionOf = (place: number) =>
    direction === 'upright' ? fromSheet(sheet, place, 0)[0] : fromSheet(sheet, 0, place)[1];
  const asLattice = (some: readonly GridLine[]) =>
    fitLattice(
      some.map((l) => ({ at: fractionOf(l.place), strength: l.strength * l.seen })),
      axis,
      8 / span,
    );

  const ticks = SIDES.map((side) => findTicks(sheet, direction, side));
  let used: readonly GridLine[] = lines;
  let lattice = asLattice(lines);
  for (const some of ticks) {
    const other = some.length > 1 ? asLattice(some) : null;
    if (
      other &&
      other.anchored.length > 1 &&
      other.filled > 0.75 &&
      (!lattice || other.anchored.length > 1.5 * lattice.anchored.length)
    ) {
      lattice = other;
      used = some;
    }
  }
  if (!lattice) return { lines, lattice, bend: NO_BEND, anchored: false };

  const controls: Control[] = [];
  const add = (line: GridLine, truth: number, weight: number) =>
    line.along.forEach((along, i) => {
      const [x, y] = direction === 'upright' ? [line.across[i]!, along] : [along, line.across[i]!];
      const [u, v] = fromSheet(sheet, x, y);
      controls.push({ u, v, correction: truth - (direction === 'upright' ? u : v), weight });
    });
  for (const { index, truth } of lattice.anchored) add(used[index]!, truth, 1);
  for (const some of ticks) if (some !== used) for (const tick of some) anchorNearest(tick);
  for (let k = 0; k <= 24; k++)
    for (const end of [0, 1])
      controls.push(
        direction === 'upright'
          ? { u: end, v: k / 24, correction: 0, weight: 1 }
          : { u: k / 24, v: end, correction: 0, weight: 1 },
      );
  const knots = Math.min(10, Math.max(2, Math.ceil(lattice.anchored.length * 0.8)));
  const [ku, kv] = direction === 'upright' ? [knots, 6] : [6, knots];
  return { lines, lattice, bend: fitBendField(controls, ku, kv, 3e-5), anchored: true };

  /** A tick belongs to the round value of the grid line that meets it. */
  function anchorNearest(tick: GridLine): void {
    const at = fractionOf(tick.place);
    let best: { truth: number; gap: number } | null = null;
    for (const a of lattice!.anchored) {
      const line = used[a.index]!;
      const gap = Math.abs(at - fractionOf(nearestAcross(line, tick.along[0]!)));
      if (!best || gap < best.gap) best = { truth: a.truth, gap };
    }
    if (best && best.gap < Math.min(0.004, 0.15 * lattice!.spacing)) add(tick, best.truth, 3);
  }
}

function nearestAcross(line: GridLine, along: number): number {
  let pick = 0;
  for (let i = 1; i < line.along.length; i++)
    if (Math.abs(line.along[i]! - along) < Math.abs(line.along[pick]! - along)) pick = i;
  return line.across[pick]!;
}

/** Where ticks are looked for: just inside and just outside of both sides that carry them. */
const SIDES = [
  { end: 0, outside: true },
  { end: 0, outside: false },
  { end: 1, outside: true },
  { end: 1, outside: false },
] as const;

function findTicks(sheet: Sheet, direction: LineDirection, { end, outside }: (typeof SIDES)[number]): GridLine[] {
  const upright = direction === 'upright';
  // end 0 is the bottom side for flows and the left side for pressures
  const side = upright
    ? sheet.margin + (end === 0 ? sheet.frameHeight : 0)
    : sheet.margin + (end === 0 ? 0 : sheet.frameWidth);
  const out = (upright ? (end === 0 ? 1 : -1) : end === 0 ? -1 : 1) * (outside ? 1 : -1);
  const [from, to] = out > 0 ? [side + 4, side + 8] : [side - 7, side - 3];
  const span = upright ? sheet.frameWidth : sheet.frameHeight;
  const peaks = peaksOf(ridgeProfile(sheet, direction, from, to), sheet.margin + 5, sheet.margin + span - 5);
  return peaks
    .filter((p) => p.ink > 12)
    .map((p) => ({ along: [side], across: [p.at], place: p.at, strength: p.ink, seen: 1 }));
}
