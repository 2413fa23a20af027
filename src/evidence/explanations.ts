import type { ReadingsEvidence } from '../job/types.ts';
import { pointer } from '../issues/result.ts';

/** A blunder that may have happened, and the readings as they would be without it. */
export type Explanation = {
  code:
    'near-tap-taken-for-far' | 'far-tap-taken-for-near' | 'one-leg' | 'decimal-slip' | 'swapped-rows' | 'wrong-hole';
  /** below the evidence's own pointer */
  path: string;
  text: string;
  readings: ReadingsEvidence;
  /** ln of how much the change stretches the readings: what a likelihood must be multiplied with to compare */
  lnStretch: number;
};

type Row = ReadingsEvidence['rows'][number];

/** Fields of a row that one water tube shows. */
const TUBE = ['staticPressure_Pa', 'throatPressure_Pa', 'differentialPressure_Pa'] as const;
/** A slip is tried both ways. */
const TENFOLD = [10, 0.1];
/** Tap close behind the cap, in diameters. Source: the job document's definition. */
const NEAR_DIAMETERS = 0.4;

const changedRows = (readings: ReadingsEvidence, change: (row: Row, i: number) => Row): ReadingsEvidence => ({
  ...readings,
  rows: readings.rows.map(change),
});
const timesTube = (row: Row, by: number): Row => ({
  ...row,
  ...Object.fromEntries(TUBE.flatMap((field) => (row[field] == null ? [] : [[field, by * row[field]]]))),
  ...(row.velocityPressures_Pa ? { velocityPressures_Pa: row.velocityPressures_Pa.map((p) => by * p) } : {}),
});
const rowPath = (i: number, field?: string) => pointer('rows', i, ...(field === undefined ? [] : [field]));
const pascals = (p: number) => `${Math.round(Math.abs(p))} Pa`;

type Maker = (readings: ReadingsEvidence) => Explanation[];

/** The tap stands at the other end of the pipe than it is said to. */
const otherTap: Maker = (readings) => {
  const { rig } = readings;
  if (rig.method !== 'orifice-cap' || rig.side === 'outlet' || rig.pipeDiameter_m == null) return [];
  const { lengthToTap_m: before, lengthTapToBlower_m: behind, pipeDiameter_m: pipe } = rig;
  const isNear = rig.tap === 'near';
  const whole = before != null && behind != null ? before + behind : null;
  const near = whole === null ? {} : { lengthToTap_m: NEAR_DIAMETERS * pipe, lengthTapToBlower_m: whole };
  const far = whole === null ? {} : { lengthToTap_m: whole, lengthTapToBlower_m: NEAR_DIAMETERS * pipe };
  const said = rig.tap == null ? 'It is not said where the tap is, and the readings' : 'The readings';
  return [
    isNear
      ? {
          code: 'far-tap-taken-for-near',
          path: pointer('rig', 'tap'),
          text: 'The readings look as if the tap stood next to the blower, not close behind the cap. Look where it is: the flow is under-stated otherwise.',
          readings: { ...readings, rig: { ...rig, tap: 'far', ...far } },
          lnStretch: 0,
        }
      : {
          code: 'near-tap-taken-for-far',
          path: pointer('rig', 'tap'),
          text: `${said} look as if the tap stood close behind the cap, not next to the blower. Look where it is: the flow is over-stated by 16–31 % otherwise.`,
          readings: { ...readings, rig: { ...rig, tap: 'near', ...near } },
          lnStretch: 0,
        },
  ];
};

/** Only one leg of the water tube was read: half of what it shows. */
const oneLeg: Maker = (readings) => {
  const { rows } = readings;
  const everywhere: Explanation = {
    code: 'one-leg',
    path: pointer('rows'),
    text: 'All pressures look half of what they should be. Was one leg of the water tube read instead of the difference of both?',
    readings: changedRows(readings, (row) => timesTube(row, 2)),
    lnStretch: rows.length * Math.LN2,
  };
  const single = rows.map((row, i): Explanation => ({
    code: 'one-leg',
    path: rowPath(i, 'staticPressure_Pa'),
    text: `${pascals(row.staticPressure_Pa)} looks half of what it should be beside the other rows. Was one leg of the water tube read instead of the difference of both?`,
    readings: changedRows(readings, (r, k) => (k === i ? timesTube(r, 2) : r)),
    lnStretch: Math.LN2,
  }));
  return rows.length > 1 ? [everywhere, ...single] : [everywhere];
};

const decimalSlip: Maker = (readings) =>
  readings.rows.flatMap((row, i) =>
    ([...TUBE, 'orificeDiameter_m'] as const).flatMap((field) => {
      const value = row[field];
      if (value == null || value === 0) return [];
      return TENFOLD.map((by): Explanation => ({
        code: 'decimal-slip',
        path: rowPath(i, field),
        text: `Beside the other rows this value looks ${by > 1 ? 'ten times too small' : 'ten times too large'}. Look for the decimal mark.`,
        readings: changedRows(readings, (r, k) => (k === i ? { ...r, [field]: by * value } : r)),
        lnStretch: Math.abs(Math.log(by)),
      }));
    }),
  );

/** Pressures of two rows in each other's place. */
const swappedRows: Maker = (readings) => {
  const { rows } = readings;
  const swap = (to: Row, from: Row): Row => ({
    ...to,
    ...Object.fromEntries(TUBE.filter((f) => to[f] != null).map((f) => [f, from[f]])),
  });
  return rows.flatMap((a, i) =>
    rows.slice(i + 1).flatMap((b, offset): Explanation[] => {
      const j = i + 1 + offset;
      if (TUBE.every((f) => a[f] === b[f])) return [];
      return [
        {
          code: 'swapped-rows',
          path: rowPath(i),
          text: `Rows ${i + 1} and ${j + 1} fit the others better with their pressures exchanged. Were they written into the wrong lines?`,
          readings: changedRows(readings, (r, k) => (k === i ? swap(a, b) : k === j ? swap(b, a) : r)),
          lnStretch: 0,
        },
      ];
    }),
  );
};

/** Every blunder that readings are tried for, the easiest to make first. */
export const EXPLANATIONS: readonly Maker[] = [oneLeg, decimalSlip, swappedRows];
/** Tried even without a hint: a wrong tap bends all rows alike. */
export const TAP_EXPLANATIONS: readonly Maker[] = [otherTap];
