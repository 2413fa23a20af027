import type { ReadCell } from '../cells/read-cells.ts';
import { foreseen, type Known } from '../columns/smooth.ts';
import type { Weighed } from '../columns/weigh-column.ts';

/** A number read this surely counts for its column. */
const SURE = 0.9;
/** Where less than this share of a column's numbers is read surely, those that are may be luck. */
const ENOUGH = 0.6;
/** Readings of a test go up or down steadily: numbers that jump by this share of their range were misread. */
const ROUGH = 0.15;
/** Unless they jump by no more than so many of their last digits. */
const LAST_DIGITS = 3;
/** Fewer numbers do not show whether they go steadily: a blower's pressure falls steeply at its end. */
const ENOUGH_NUMBERS = 8;
/** So much is left of the trust in a column whose numbers jump, and in any column at least. */
const JUMPY = 0.8;
const LEAST = 0.3;

/** How far a column's sure numbers are to be trusted, 0..1: in one that is mostly unreadable none is beyond doubt. */
export function columnTrust(cells: readonly ReadCell[], weighed: readonly (Weighed | null)[]): number {
  const written = weighed.filter((_, row) => cells[row]!.content.kind === 'number');
  if (!written.length) return 1;
  const sure = written.filter((read) => read && read.chance >= SURE).length;
  const share = Math.min(1, sure / written.length / ENOUGH);
  return Math.max(LEAST, share * (isJumpy(weighed) ? JUMPY : 1));
}

/** Whether most numbers of a column are far from what those around them foretell. */
function isJumpy(weighed: readonly (Weighed | null)[]): boolean {
  const known = weighed.flatMap((w, row): Known[] => (w ? [{ row, value: w.value, weight: 1 }] : []));
  const off = known
    .flatMap(({ row, value }) => {
      const guess = foreseen(row, known);
      return guess ? [Math.abs(value - guess.value)] : [];
    })
    .sort((a, b) => a - b);
  if (off.length < ENOUGH_NUMBERS) return false;
  const values = known.map(({ value }) => value);
  const range = Math.max(...values) - Math.min(...values);
  const decimals = Math.max(
    ...weighed.map((w) => (w?.text.includes('.') ? w.text.length - 1 - w.text.indexOf('.') : 0)),
  );
  const usual = off[off.length >> 1]!;
  return usual > ROUGH * range && usual > LAST_DIGITS * 10 ** -decimals;
}
