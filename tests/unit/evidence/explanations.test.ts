import { describe, expect, test } from 'vitest';
import { causeOfLevel } from '../../../src/evidence/level-cause.ts';
import { rowExplanations, swapped } from '../../../src/evidence/row-blunders.ts';
import {
  levelExplanations,
  oneLegEverywhere,
  otherTap,
  tapIsMeasured,
} from '../../../src/evidence/whole-test-blunders.ts';
import type { Blower, ReadingsEvidence } from '../../../src/job/types.ts';

const rows = [
  { staticPressure_Pa: -2000, orificeDiameter_m: 0.05 },
  { staticPressure_Pa: -1800, orificeDiameter_m: 0.08 },
];
const cap = (rig: Partial<ReadingsEvidence['rig']>): ReadingsEvidence => ({
  kind: 'readings',
  rig: { method: 'orifice-cap', pipeDiameter_m: 0.2, ...rig },
  rows,
});
const told = ({ code, path, text }: { code: string; path: string; text: string }) => ({ code, path, text });

describe('a mistake in the whole test', () => {
  test('a near tap taken for far, its lengths put right with it', () => {
    const other = otherTap(cap({ tap: 'far', lengthToTap_m: 1.6, lengthTapToBlower_m: 0.3 }))!;
    expect(told(other)).toEqual({
      code: 'near-tap-taken-for-far',
      path: '/rig/tap',
      text: 'The readings look as if the tap stood close behind the cap, not next to the blower. Look where it is and choose the other picture: otherwise the flow is over-stated by 16–31 %.',
    });
    expect(other.readings.rig.tap).toBe('near');
    expect(other.readings.rig.lengthToTap_m).toBeCloseTo(0.08, 9);
    expect(other.readings.rig.lengthTapToBlower_m).toBeCloseTo(1.9, 9);
  });
  test('a tap nobody said where', () =>
    expect(otherTap(cap({}))!.text).toBe(
      'It is not said where the tap is, and the readings look as if the tap stood close behind the cap, not next to the blower. Look where it is and choose the other picture: otherwise the flow is over-stated by 16–31 %.',
    ));
  test('a far tap taken for near', () =>
    expect(told(otherTap(cap({ tap: 'near' }))!)).toEqual({
      code: 'far-tap-taken-for-near',
      path: '/rig/tap',
      text: 'The readings look as if the tap stood far behind the cap, next to the blower, not close behind the cap. Look where it is and choose the other picture: otherwise the flow is under-stated.',
    }));
  test('only the cap on the inlet side has two places for its tap', () => {
    expect(otherTap(cap({ tap: 'far', side: 'outlet' }))).toBeNull();
    expect(otherTap(cap({ method: 'conical-inlet', throatDiameter_m: 0.18 }))).toBeNull();
  });
  test('who gives a length that fits the tap has looked where it is', () => {
    expect(tapIsMeasured(cap({ tap: 'far', lengthToTap_m: 1.6 }))).toBe(true);
    expect(tapIsMeasured(cap({ tap: 'near', lengthToTap_m: 0.08 }))).toBe(true);
    expect(tapIsMeasured(cap({ tap: 'near', lengthToTap_m: 1.6 }))).toBe(false);
    expect(tapIsMeasured(cap({ tap: 'far' }))).toBe(false);
  });
  test('one leg everywhere', () => {
    const one = oneLegEverywhere(cap({}));
    expect(told(one)).toEqual({
      code: 'one-leg',
      path: '/rows',
      text: 'All pressures look half of what they should be. Was only one leg of the water tube read? Read how far apart both levels stand. If they were read so, look whether the wheel turns the right way.',
    });
    expect(one.readings.rows.map((r) => r.staticPressure_Pa)).toEqual([-4000, -3600]);
    expect(one.lnStretch).toBeCloseTo(2 * Math.log(2), 9);
  });
  test('millimetres of water typed as pascals', () => {
    const mixed = levelExplanations(cap({}))[0]!;
    expect(told(mixed)).toEqual({
      code: 'unit-mixed',
      path: '/rows',
      text: 'All pressures look too small, as if millimetres of water were typed as pascals. Look at the unit the tube was read in, and type it with the number.',
    });
    expect(mixed.readings.rows[0]!.staticPressure_Pa).toBeCloseTo(-19613.3, 3);
  });
  test('radii typed for diameters, unless such holes would not fit the pipe', () => {
    const radii = (pipeDiameter_m: number) =>
      levelExplanations(cap({ pipeDiameter_m })).filter((e) => e.code === 'hole-radius');
    expect(radii(0.2).map(told)).toEqual([
      {
        code: 'hole-radius',
        path: '/rows',
        text: 'All holes look half as wide as they must have been. Were radii typed instead of diameters? Measure straight across the hole.',
      },
    ]);
    expect(radii(0.2)[0]!.readings.rows.map((r) => r.orificeDiameter_m)).toEqual([0.1, 0.16]);
    expect(radii(0.15)).toEqual([]);
  });
});

describe('pressures no wheel of the family makes', () => {
  const blower = (kind: 'belt' | 'direct') => ({ drive: { kind } }) as Blower;
  const read = (speed_rpm: number | null): ReadingsEvidence => ({ ...cap({}), rows: [{ ...rows[0]!, speed_rpm }] });
  const backwards =
    'These pressures are far below what a wheel of this kind, size and speed makes. Does the wheel turn the right way? Its rim must move towards the outlet where it passes it; two wires of the motor exchanged turn it round. Else look at the wheel’s kind and diameter, and for leaks.';
  test('a wheel that turns backwards', () =>
    expect(causeOfLevel(blower('direct'), read(null), 0.5)).toEqual({ code: 'wheel-backwards', text: backwards }));
  test('a belt that slips where nobody measured the speed, but not by half', () => {
    expect(causeOfLevel(blower('belt'), read(null), 0.6)).toEqual({
      code: 'belt-slipping',
      text: 'These pressures are too low for this wheel at the speed that motor and pulleys promise. Does the belt slip? Tighten it, and measure the wheel’s speed itself. Else look whether the wheel turns the right way.',
    });
    expect(causeOfLevel(blower('belt'), read(null), 0.4).code).toBe('wheel-backwards');
    expect(causeOfLevel(blower('belt'), read(2850), 0.6).code).toBe('wheel-backwards');
  });
  test('pressures too high', () =>
    expect(causeOfLevel(blower('direct'), read(null), 3)).toEqual({
      code: 'level-unusual',
      text: 'These pressures are far above what a wheel of this kind, size and speed makes. Are the wheel’s kind, diameter and speed right, and the unit of the readings?',
    }));
});

describe('a mistake in one row', () => {
  test('one leg, the decimal mark both ways, the hole of another row', () =>
    expect(rowExplanations(cap({}), 1).map(told)).toEqual([
      {
        code: 'one-leg',
        path: '/rows/1/staticPressure_Pa',
        text: '1800 Pa looks half of what it should be beside the other rows. Was only one leg of the water tube read? Read how far apart both levels stand.',
      },
      ...['staticPressure_Pa', 'orificeDiameter_m'].flatMap((field) =>
        ['small', 'large'].map((way) => ({
          code: 'decimal-slip',
          path: `/rows/1/${field}`,
          text: `Beside the other rows this value looks ten times too ${way}. Look for the decimal mark.`,
        })),
      ),
      {
        code: 'wrong-hole',
        path: '/rows/1/orificeDiameter_m',
        text: 'This row fits the others with the hole of 50 mm. Was that board on the pipe? Look, and measure the hole.',
      },
    ]));
  test('two rows exchanged', () => {
    const swap = swapped(cap({}), 0, 1)!;
    expect(swap.text).toBe(
      'Rows 1 and 2 fit the others better with their pressures exchanged. Were they written into the wrong lines?',
    );
    expect(swap.path).toBe('/rows/0');
    expect(swap.readings.rows.map((r) => r.staticPressure_Pa)).toEqual([-1800, -2000]);
    expect(swapped({ ...cap({}), rows: [rows[0]!, rows[0]!] }, 0, 1)).toBeNull();
  });
});
