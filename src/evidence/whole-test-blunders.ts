import type { ReadingsEvidence } from '../job/types.ts';
import { pointer } from '../issues/result.ts';
import { changedRows, timesTube, type Explanation } from './explanation.ts';

/** Tap close behind the cap, in diameters. Source: the job document's definition. */
const NEAR_DIAMETERS = 0.4;

/** The tap stands at the other end of the pipe than it is said to; null where the method has but one place for it. */
export function otherTap(readings: ReadingsEvidence): Explanation | null {
  const { rig } = readings;
  if (rig.method !== 'orifice-cap' || rig.side === 'outlet' || rig.pipeDiameter_m == null) return null;
  const { lengthToTap_m: before, lengthTapToBlower_m: behind, pipeDiameter_m: pipe } = rig;
  const whole = before != null && behind != null ? before + behind : null;
  const near = whole === null ? {} : { lengthToTap_m: NEAR_DIAMETERS * pipe, lengthTapToBlower_m: whole };
  const far = whole === null ? {} : { lengthToTap_m: whole, lengthTapToBlower_m: NEAR_DIAMETERS * pipe };
  const path = pointer('rig', 'tap');
  if (rig.tap === 'near')
    return {
      code: 'far-tap-taken-for-near',
      path,
      text: 'The readings look as if the tap stood far behind the cap, next to the blower, not close behind the cap. Look where it is and choose the other picture: otherwise the flow is under-stated.',
      readings: { ...readings, rig: { ...rig, tap: 'far', ...far } },
      lnStretch: 0,
    };
  const said = rig.tap == null ? 'It is not said where the tap is, and the readings' : 'The readings';
  return {
    code: 'near-tap-taken-for-far',
    path,
    text: `${said} look as if the tap stood close behind the cap, not next to the blower. Look where it is and choose the other picture: otherwise the flow is over-stated by 16–31 %.`,
    readings: { ...readings, rig: { ...rig, tap: 'near', ...near } },
    lnStretch: 0,
  };
}

/** A tap closer behind the cap than this is near, one further away than that is far [diameters]. Source: the job document's definition. */
const SURELY_NEAR = 1;
const SURELY_FAR = 4;

/** Whoever measured the length up to the tap has looked where it is. */
export function tapIsMeasured({ rig }: ReadingsEvidence): boolean {
  if (rig.lengthToTap_m == null || rig.pipeDiameter_m == null) return false;
  const diameters = rig.lengthToTap_m / rig.pipeDiameter_m;
  return rig.tap === 'near' ? diameters < SURELY_NEAR : diameters > SURELY_FAR;
}

/** Only one leg of the water tube was read, in every row: half of what it shows. */
export const oneLegEverywhere = (readings: ReadingsEvidence): Explanation => ({
  code: 'one-leg',
  path: pointer('rows'),
  text: 'All pressures look half of what they should be. Was only one leg of the water tube read? Read how far apart both levels stand. If they were read so, look whether the wheel turns the right way.',
  readings: changedRows(readings, (row) => timesTube(row, 2)),
  lnStretch: readings.rows.length * Math.LN2,
});

/** Units that are taken for each other, and how much larger the true pressure then is [-]. Source: definitions of the units. */
const MIXED_UNITS = [
  { by: 9.80665, text: 'millimetres of water were typed as pascals' },
  { by: 100, text: 'millibars were typed as pascals' },
  { by: 10, text: 'centimetres of water were typed as millimetres' },
  { by: 25.4, text: 'inches of water were typed as millimetres' },
  { by: 1 / 9.80665, text: 'pascals were typed as millimetres of water' },
  { by: 1 / 25.4, text: 'millimetres of water were typed as inches' },
];

const mixedUnits = (readings: ReadingsEvidence): Explanation[] =>
  MIXED_UNITS.map(({ by, text }) => ({
    code: 'unit-mixed',
    path: pointer('rows'),
    text: `All pressures look ${by > 1 ? 'too small' : 'too large'}, as if ${text}. Look at the unit the tube was read in, and type it with the number.`,
    readings: changedRows(readings, (row) => timesTube(row, by)),
    lnStretch: readings.rows.length * Math.log(by),
  }));

/** Half the diameter of every hole was typed. */
function holesAsRadii(readings: ReadingsEvidence): Explanation[] {
  const { rig, rows } = readings;
  const holes = rows.flatMap((row) => (row.orificeDiameter_m ? [row.orificeDiameter_m] : []));
  if (holes.length < 2 || rig.pipeDiameter_m == null || 2 * Math.max(...holes) > rig.pipeDiameter_m) return [];
  return [
    {
      code: 'hole-radius',
      path: pointer('rows'),
      text: 'All holes look half as wide as they must have been. Were radii typed instead of diameters? Measure straight across the hole.',
      readings: changedRows(readings, (row) =>
        row.orificeDiameter_m == null ? row : { ...row, orificeDiameter_m: 2 * row.orificeDiameter_m },
      ),
      lnStretch: 0,
    },
  ];
}

/** Mistakes in all rows at once that are worth a try only where the level of pressure or flow is odd. */
export const levelExplanations = (readings: ReadingsEvidence): Explanation[] => [
  ...mixedUnits(readings),
  ...holesAsRadii(readings),
];
