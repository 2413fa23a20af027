import type { ReadingsEvidence } from '../job/types.ts';
import { rowPath, timesTube, TUBE, type Row } from './explanation.ts';

/** What one row may have been meant to be, with the mistake that made it what it is. */
export type RowExplanation = { code: string; path: string; text: string; row: Row; lnStretch: number };

/** A slip of the decimal mark is tried both ways. */
const TENFOLD = [10, 0.1];
/** Fields whose decimal mark may have slipped. */
const SLIPS = [...TUBE, 'orificeDiameter_m', 'fillTime_s'] as const;
const pascals = (p: number) => `${Math.round(Math.abs(p))} Pa`;

/** Every mistake that is tried for one row: one leg read, the decimal mark, the hole of another row. */
export function rowExplanations(readings: ReadingsEvidence, i: number): RowExplanation[] {
  const row = readings.rows[i]!;
  return [...oneLeg(row, i), ...decimalSlip(row, i), ...otherHole(readings, i)];
}

function oneLeg(row: Row, i: number): RowExplanation[] {
  const beside =
    'looks half of what it should be beside the other rows. Was only one leg of the water tube read? Read how far apart both levels stand.';
  const shown = TUBE.filter((field) => row[field] != null && row[field] !== 0);
  const single = shown.length < 2 ? [] : shown;
  return [
    {
      code: 'one-leg',
      path: rowPath(i, 'staticPressure_Pa'),
      text: `${pascals(row.staticPressure_Pa)} ${beside}`,
      row: timesTube(row, 2),
      lnStretch: Math.LN2,
    },
    ...single.map((field) => ({
      code: 'one-leg',
      path: rowPath(i, field),
      text: `${pascals(row[field]!)} ${beside}`,
      row: { ...row, [field]: 2 * row[field]! },
      lnStretch: field === 'staticPressure_Pa' ? Math.LN2 : 0,
    })),
  ];
}

const decimalSlip = (row: Row, i: number): RowExplanation[] =>
  SLIPS.flatMap((field) => {
    const value = row[field];
    if (value == null || value === 0) return [];
    return TENFOLD.map((by) => ({
      code: 'decimal-slip',
      path: rowPath(i, field),
      text: `Beside the other rows this value looks ${by > 1 ? 'ten times too small' : 'ten times too large'}. Look for the decimal mark.`,
      row: { ...row, [field]: by * value },
      lnStretch: field === 'staticPressure_Pa' ? Math.log(by) : 0,
    }));
  });

function otherHole({ rows }: ReadingsEvidence, i: number): RowExplanation[] {
  const own = rows[i]!.orificeDiameter_m;
  if (own == null) return [];
  const others = [...new Set(rows.flatMap((r) => (r.orificeDiameter_m == null ? [] : [r.orificeDiameter_m])))];
  return others
    .filter((hole) => hole !== own)
    .map((hole) => ({
      code: 'wrong-hole',
      path: rowPath(i, 'orificeDiameter_m'),
      text: `This row fits the others with the hole of ${Math.round(1000 * hole)} mm. Was that board on the pipe? Look, and measure the hole.`,
      row: { ...rows[i]!, orificeDiameter_m: hole },
      lnStretch: 0,
    }));
}

/** Two rows with their pressures exchanged. */
export type Swap = { text: string; path: string; readings: ReadingsEvidence };

/** The readings with the pressures of two rows in each other's place; null where that changes nothing. */
export function swapped(readings: ReadingsEvidence, i: number, j: number): Swap | null {
  const { rows } = readings;
  const [a, b] = [rows[i]!, rows[j]!];
  if (TUBE.every((f) => a[f] === b[f])) return null;
  const swap = (to: Row, from: Row): Row => ({
    ...to,
    ...Object.fromEntries(TUBE.filter((f) => to[f] != null && from[f] != null).map((f) => [f, from[f]])),
  });
  return {
    path: rowPath(i),
    text: `Rows ${i + 1} and ${j + 1} fit the others better with their pressures exchanged. Were they written into the wrong lines?`,
    readings: { ...readings, rows: rows.map((r, k) => (k === i ? swap(a, b) : k === j ? swap(b, a) : r)) },
  };
}
