import { describe, expect, test } from 'vitest';
import { plainBlunders } from '../../../src/evidence/plain-blunders.ts';
import type { Blower, ReadingsEvidence } from '../../../src/job/types.ts';

const blower = {
  id: 'b1',
  wheel: { family: 'radial' },
  drive: { kind: 'belt', motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.1 },
  motor: { ratedPower_W: 2200, speed_rpm: 2850, current_A: 4.6, frequency_Hz: 50 },
  evidence: [],
} as unknown as Blower;
const supply = { frequency_Hz: 50 };
const test3 = (change: (row: Record<string, number>, i: number) => Record<string, number>): ReadingsEvidence => ({
  kind: 'readings',
  rig: { method: 'orifice-cap', pipeDiameter_m: 0.2, tap: 'far' },
  rows: [0.05, 0.08, 0.12, 0.15].map((orificeDiameter_m, i) =>
    change({ orificeDiameter_m, staticPressure_Pa: -2000 + 100 * i, speed_rpm: 2860, current_A: 3 + 0.3 * i }, i),
  ) as unknown as ReadingsEvidence['rows'],
});
const named = (readings: ReadingsEvidence) => plainBlunders(blower, supply, readings);

describe('blunders that show without a curve', () => {
  test('a clean test is left in peace', () => expect(named(test3((row) => row))).toEqual([]));
  test('a belt that slips all the time', () =>
    expect(named(test3((row) => ({ ...row, speed_rpm: 2500 })))).toEqual([
      {
        code: 'belt-slipping',
        path: '/rows/0/speed_rpm',
        text: 'The wheel turns 12 % slower than motor and pulleys promise. Does the belt slip? Tighten it, and measure both pulleys where the belt runs.',
      },
    ]));
  test('a belt that slips in one row', () =>
    expect(named(test3((row, i) => (i === 2 ? { ...row, speed_rpm: 2574 } : row)))).toEqual([
      {
        code: 'belt-slipping',
        path: '/rows/2/speed_rpm',
        text: 'In this row the wheel turned 10 % slower than in the others. Does the belt slip under load? Tighten it and take the row again.',
      },
    ]));
  test('a speed in one row that no motor makes beside the others', () =>
    expect(named(test3((row, i) => (i === 2 ? { ...row, speed_rpm: 3146 } : row)))).toEqual([
      {
        code: 'speed-doubtful',
        path: '/rows/2/speed_rpm',
        text: 'In this row the speed is 10 % off that of the others. Measure it again.',
      },
    ]));
  test('a speed that motor and pulleys cannot make', () =>
    expect(named(test3((row) => ({ ...row, speed_rpm: 3420 })))).toEqual([
      {
        code: 'speed-doubtful',
        path: '/rows/0/speed_rpm',
        text: 'The wheel is said to turn 20 % faster than its motor can drive it. Measure the speed again, and look at the motor’s plate.',
      },
    ]));
  test('a decimal mark lost in one row’s amps', () =>
    expect(named(test3((row, i) => (i === 1 ? { ...row, current_A: 33 } : row)))).toEqual([
      {
        code: 'decimal-slip',
        path: '/rows/1/current_A',
        text: 'Beside the other rows this value looks ten times too large. Look for the decimal mark.',
      },
    ]));
  test('a clamp around all wires', () =>
    expect(named(test3((row) => ({ ...row, current_A: 0.2 })))).toEqual([
      {
        code: 'clamp-all-wires',
        path: '/rows/0/current_A',
        text: 'These amps are less than the motor draws idling. Were all wires in the clamp? Then their currents cancel: put the clamp around one wire only.',
      },
    ]));
  test('a row written down twice', () => {
    const clean = test3((row) => row);
    expect(named({ ...clean, rows: [...clean.rows, clean.rows[1]!] })).toEqual([
      {
        code: 'row-repeated',
        path: '/rows/4',
        text: 'This row is the same as one above in every number. Was it written down twice? Delete it, or it counts double.',
      },
    ]);
  });
});
