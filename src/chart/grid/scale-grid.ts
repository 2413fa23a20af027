import type { AxisScale } from '../axes.ts';
import { fitBendField, NO_BEND, type BendField, type Control } from './bend-field.ts';
import { findGridLines, peaksOf, ridgeProfile, searched, type GridLine, type LineDirection } from './grid-lines.ts';
import { fitEvenSteps, fitLattice, NONE_FREE, type FreeEnds, type Lattice } from './lattice.ts';
import { fromSheet, type Sheet } from '../sheet.ts';

/** What grid lines and ticks tell about one axis. */
export type ScaleGrid = {
  /** dark lines that run through the frame; they are no curves */
  readonly lines: readonly GridLine[];
  readonly lattice: Lattice | null;
  /** false where the lines are even but stand at no round values of the scale */
  readonly isRound: boolean;
  /** places (u, v) on the sheet where the true fraction is known: `correction` is to be added there */
  readonly anchors: readonly Control[];
  /** what to add to the sheet's fraction of this axis at (u, v) */
  readonly bend: BendField;
};

/**
 * Reads the grid of one axis and works out how the sheet's fractions must be corrected so that every grid line and
 * tick stands at its round value.
 * @param free ends of the axis where no side of the frame was found
 */
export function readScaleGrid(
  sheet: Sheet,
  direction: LineDirection,
  axis: AxisScale,
  free: FreeEnds = NONE_FREE,
): ScaleGrid {
  const upright = direction === 'upright';
  const span = upright ? sheet.frameWidth : sheet.frameHeight;
  const fractionOf = (place: number) => (upright ? fromSheet(sheet, place, 0)[0] : fromSheet(sheet, 0, place)[1]);
  const placesOf = (some: readonly GridLine[]) =>
    some.map((l) => ({ at: fractionOf(l.place), strength: l.strength * l.seen }));
  const latticeOf = (some: readonly GridLine[]) => fitLattice(placesOf(some), axis, SMALLEST_STEP_PX / span, free);

  const lines = findGridLines(sheet, direction, sheet.darkness, free);
  const ticks = SIDES.map((side) => findTicks(sheet, direction, side, free));
  let used: readonly GridLine[] = lines;
  let lattice = latticeOf(lines);
  const better = (some: readonly GridLine[]) => {
    const other = some.length > 1 ? latticeOf(some) : null;
    if (!other || other.anchored.length < 2 || other.filled < 0.75) return;
    if (lattice && other.anchored.length <= 1.5 * lattice.anchored.length) return;
    lattice = other;
    used = some;
  };
  ticks.forEach(better);
  if (!lattice) better(findGridLines(sheet, direction, sheet.lightness, free));
  const isRound = lattice !== null;
  if (!lattice && axis.scale === 'linear' && !free.low && !free.high)
    lattice = fitEvenSteps(placesOf(lines), SMALLEST_STEP_PX / span);
  const anchors = lattice ? anchorsOf(sheet, direction, used, lattice, ticks) : [];
  if (!lattice) return { lines, lattice, isRound, anchors, bend: NO_BEND };

  const held: Control[] = [];
  for (let k = 0; k <= 24; k++) {
    if (!free.low) held.push({ u: upright ? 0 : k / 24, v: upright ? k / 24 : 0, correction: 0, weight: 1 });
    if (!free.high) held.push({ u: upright ? 1 : k / 24, v: upright ? k / 24 : 1, correction: 0, weight: 1 });
  }
  const knots = Math.min(10, Math.max(2, Math.ceil(lattice.anchored.length * 0.8)));
  const [ku, kv] = upright ? [knots, 6] : [6, knots];
  return { lines, lattice, isRound, anchors, bend: fitBendField([...anchors, ...held], ku, kv, STIFFNESS) };
}

/** Steps closer than this can't be told apart on the sheet. */
const SMALLEST_STEP_PX = 8;
const STIFFNESS = 3e-5;

function anchorsOf(
  sheet: Sheet,
  direction: LineDirection,
  used: readonly GridLine[],
  lattice: Lattice,
  ticks: readonly (readonly GridLine[])[],
): Control[] {
  const upright = direction === 'upright';
  const anchors: Control[] = [];
  const add = (line: GridLine, truth: number, weight: number) =>
    line.along.forEach((along, i) => {
      const [u, v] = upright ? fromSheet(sheet, line.across[i]!, along) : fromSheet(sheet, along, line.across[i]!);
      anchors.push({ u, v, correction: truth - (upright ? u : v), weight });
    });
  for (const { index, truth } of lattice.anchored) add(used[index]!, truth, used[index]!.along.length > 1 ? 1 : 4);
  // a tick belongs to the round value of the grid line that meets it
  const span = upright ? sheet.frameWidth : sheet.frameHeight;
  const near = Math.min(0.004, 0.15 * lattice.spacing) * span;
  for (const some of ticks)
    for (const tick of some === used ? [] : some) {
      let best: { truth: number; gap: number } | null = null;
      for (const { index, truth } of lattice.anchored) {
        const gap = Math.abs(tick.place - nearestAcross(used[index]!, tick.along[0]!));
        if (!best || gap < best.gap) best = { truth, gap };
      }
      if (best && best.gap < near) add(tick, best.truth, 3);
    }
  return anchors;
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

function findTicks(
  sheet: Sheet,
  direction: LineDirection,
  { end, outside }: (typeof SIDES)[number],
  free: FreeEnds,
): GridLine[] {
  const upright = direction === 'upright';
  // end 0 is the bottom side for flows and the left side for pressures
  const side = sheet.margin + (upright ? (end === 0 ? sheet.frameHeight : 0) : end === 0 ? 0 : sheet.frameWidth);
  const out = (upright ? (end === 0 ? 1 : -1) : end === 0 ? -1 : 1) * (outside ? 1 : -1);
  const [from, to] = out > 0 ? [side + 4, side + 8] : [side - 7, side - 3];
  const [first, last] = searched(sheet, direction, free);
  return peaksOf(ridgeProfile(sheet, direction, from, to), first, last)
    .filter((p) => p.ink > FAINTEST_TICK)
    .map((p) => ({ along: [side], across: [p.at], place: p.at, strength: p.ink, seen: 1 }));
}

const FAINTEST_TICK = 12;
