import { findGridLines, peaksOf, ridgeProfile } from '../grid/grid-lines.ts';
import { fromSheet, type Sheet } from '../sheet.ts';
import type { Side } from './tick-groups.ts';

/** Where ticks and grid lines meet a side of the frame: shares of the side, with how plainly each is printed (0..1). */
export type TickPlace = { readonly at: number; readonly weight: number };

/** Ticks just inside and outside a side, and the ends of grid lines at it. */
export function tickPlaces(sheet: Sheet, side: Side): TickPlace[] {
  const flows = side === 'bottom' || side === 'top';
  const direction = flows ? 'upright' : 'level';
  const share = (at: number) => (flows ? fromSheet(sheet, at, 0)[0] : fromSheet(sheet, 0, at)[1]);
  const { margin, frameWidth, frameHeight } = sheet;
  const line = side === 'bottom' ? margin + frameHeight : side === 'right' ? margin + frameWidth : margin;
  const outward = side === 'bottom' || side === 'right' ? 1 : -1;
  const size = flows ? sheet.width : sheet.height;
  const found: { at: number; ink: number; isTick: boolean }[] = [];
  for (const out of [outward, -outward]) {
    const [from, to] = out > 0 ? [line + 4, line + 9] : [line - 8, line - 3];
    for (const p of peaksOf(ridgeProfile(sheet, direction, from, to), 6, size - 6))
      if (p.ink > FAINTEST) found.push({ at: share(p.at), ink: p.ink, isTick: true });
  }
  for (const grid of [...findGridLines(sheet, direction), ...findGridLines(sheet, direction, sheet.lightness)]) {
    const end = nearestEnd(grid.along, line);
    found.push({ at: share(grid.across[end]!), ink: Math.max(FAINTEST, grid.strength), isTick: false });
  }
  // both ends of a side are ruled lines themselves
  found.push({ at: 0, ink: 30, isTick: true }, { at: 1, ink: 30, isTick: true });
  const most = Math.max(...found.map((f) => f.ink));
  // grid lines may be those of another scale
  return found
    .map(({ at, ink, isTick }) => ({ at, weight: Math.min(1, 0.4 + ink / most) * (isTick ? 1 : 0.8) }))
    .sort((a, b) => a.at - b.at);
}

const FAINTEST = 9;

function nearestEnd(along: readonly number[], line: number): number {
  const last = along.length - 1;
  return Math.abs(along[0]! - line) < Math.abs(along[last]! - line) ? 0 : last;
}

export type Matched = {
  /** how far the labels stand from their ticks, share of the side */
  readonly shift: number;
  /** place of the tick of each label, null where none was found */
  readonly places: readonly (number | null)[];
  readonly count: number;
};

const REACH = 0.0045;

/**
 * Which tick or grid line each label belongs to: all labels stand off theirs by the same shift.
 * @param predicted where the fitted scale puts each label's value
 * @param most the largest shift looked for
 * @returns null where fewer than three, or fewer than six in ten, have one
 */
export function matchTicks(predicted: readonly number[], ticks: readonly TickPlace[], most: number): Matched | null {
  let best: { score: number; shift: number } | null = null;
  for (let k = -40; k <= 40; k++) {
    const shift = (k / 40) * most;
    // a shift costs: labels stand by their ticks as a rule
    let score = -predicted.length * (0.25 * (k / 40) ** 2 + 0.0015 * Math.abs(k));
    for (const p of predicted) {
      let gain = 0;
      for (const t of ticks) {
        const miss = Math.abs(t.at - p - shift);
        if (miss < REACH) gain = Math.max(gain, t.weight * (1 - 0.5 * (miss / REACH)));
      }
      score += gain;
    }
    if (!best || score > best.score) best = { score, shift };
  }
  const { shift } = best!;
  const places = predicted.map((p) => {
    let pick: TickPlace | null = null;
    let most = 0;
    for (const t of ticks) {
      const miss = Math.abs(t.at - p - shift);
      const gain = t.weight * (1 - 0.6 * (miss / REACH));
      if (miss < REACH && gain > most) [pick, most] = [t, gain];
    }
    return pick?.at ?? null;
  });
  const count = places.filter((p) => p !== null).length;
  return count >= Math.max(3, 0.6 * predicted.length) ? { shift, places, count } : null;
}
