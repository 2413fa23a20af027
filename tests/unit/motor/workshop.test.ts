import { describe, expect, it } from 'vitest';
import {
  beltSpeed,
  cableDrop,
  crossSectionOfAwg,
  crossSectionOfSwgCable,
  pulleyPairs,
  speedRatioMotorStands,
  startingVoltage,
  smallestCable,
  startTime,
  unbalanceEffect,
  voltageUnbalance,
  wheelInertia,
  wholePlate,
} from '../../../src/motor/index.ts';

describe('cable to the motor', () => {
  const motor = { supply_V: 230, current_A: 10, powerFactor: 1, phases: 1 as const };

  it('loses 2·ρ·L/S·I on one phase', () => {
    const drop = cableDrop({ length_m: 50, crossSection_mm2: 2.5 }, motor);
    expect(drop.drop_V).toBeCloseTo((2 * 0.0225 * 50 * 10) / 2.5, 9);
    expect(drop.voltageAtMotor_V).toBeCloseTo(221, 9);
    expect(drop.heat_W).toBeCloseTo(2 * 0.45 * 100, 9);
  });

  it('loses √3·(R·cos φ + X·sin φ)·I on three phases', () => {
    const drop = cableDrop(
      { length_m: 100, crossSection_mm2: 1.5, metal: 'aluminium' },
      { supply_V: 400, current_A: 5, powerFactor: 0.8, phases: 3 },
    );
    expect(drop.drop_V).toBeCloseTo(Math.sqrt(3) * 5 * (2.4 * 0.8 + 0.008 * 0.6), 9);
  });

  it('never loses more than there is', () => {
    expect(cableDrop({ length_m: 1e5, crossSection_mm2: 0.75 }, motor).voltageAtMotor_V).toBe(0);
  });

  it('finds the smallest cable sold that keeps 5 %', () => {
    // 2.5 mm²: 9 V of 230 over 50 m, 12.6 V over 70 m
    expect(smallestCable({ length_m: 50 }, motor)).toBe(2.5);
    expect(smallestCable({ length_m: 70 }, motor)).toBe(4);
    expect(smallestCable({ length_m: 2000 }, motor)).toBeNull();
  });

  it('reads gauges: AWG 12 is 3.31 mm², 3/22 is 1.19 mm², 7/20 is 4.6 mm²', () => {
    expect(crossSectionOfAwg(12)).toBeCloseTo(3.31, 2);
    expect(crossSectionOfSwgCable('3/22')).toBeCloseTo(1.19, 2);
    expect(crossSectionOfSwgCable(' 7 / 20 ')).toBeCloseTo(4.6, 2);
    expect(crossSectionOfSwgCable('7/21')).toBeNull();
    expect(crossSectionOfSwgCable('thick')).toBeNull();
  });

  it('throws at a programmer’s mistake', () => {
    expect(() => cableDrop({ length_m: 1, crossSection_mm2: 0 }, motor)).toThrow(
      'cable: expected a length, a cross-section and volts',
    );
  });
});

describe('getting a wheel up to speed', () => {
  const { plate } = wholePlate({ ratedPower_W: 2200, speed_rpm: 2850, voltage_V: 400, phases: 3, frequency_Hz: 50 });
  const inertia = wheelInertia({ diameter_m: 0.45, width_m: 0.1125 });

  it('guesses the inertia of a sheet-steel wheel: 0.45 m about 0.17 kg m²', () => {
    // plate π/4·0.45²·2.7 mm·7850 = 3.37 kg; 1.5·3.37·0.45²/8 = 0.128; a third on top
    expect(inertia.centre).toBeCloseTo(0.171, 3);
    expect(inertia.range[1] / inertia.range[0]).toBe(4);
    expect(() => wheelInertia({ diameter_m: 0 })).toThrow('diameter_m: expected a positive number, received 0');
  });

  it('takes seconds, longer on weak mains and on a faster pulley, never on too little torque', () => {
    const start = (change: object) =>
      startTime({ plate, inertia, wheelSpeed_rpm: 2850, ratio: 1, loadOfRating: 0.7, ...change });
    const usual = start({});
    expect(usual.seconds!).toBeGreaterThan(2);
    expect(usual.seconds!).toBeLessThan(8);
    expect(usual.tooLong).toBe(false);
    expect(start({ voltageRatio: 0.8 }).seconds!).toBeGreaterThan(1.5 * usual.seconds!);
    expect(start({ ratio: 1.2, wheelSpeed_rpm: 3420 }).seconds!).toBeGreaterThan(1.3 * usual.seconds!);
    expect(start({ voltageRatio: 0.35 })).toEqual({ seconds: null, range_s: null, tooLong: true });
  });
});

describe('a start at the end of a long cable', () => {
  it('sinks the voltage by 6.5 times the plate amps', () => {
    const { plate } = wholePlate({
      ratedPower_W: 1500,
      voltage_V: 230,
      current_A: 10,
      phases: 1,
      speed_rpm: 2800,
      frequency_Hz: 50,
    });
    // 65 A through 2·(0.45·0.4 + 0.004·√(1 − 0.16)) Ω
    const expected = 230 - 65 * 2 * (0.45 * 0.4 + 0.004 * Math.sqrt(0.84));
    expect(startingVoltage(plate, { length_m: 50, crossSection_mm2: 2.5 }, 230)).toBeCloseTo(expected, 9);
  });
});

describe('pulleys sold', () => {
  it('offers pairs inside the wanted speeds, keeping what is there first', () => {
    const pairs = pulleyPairs({
      motorSpeed_rpm: 2850,
      wheelSpeed_rpm: [3000, 3300],
      have: { motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.1 },
    });
    expect(pairs[0]).toMatchObject({ newPulleys: 1 });
    expect(pairs.length).toBeGreaterThan(3);
    for (const pair of pairs) {
      expect(pair.wheelSpeed_rpm).toBeCloseTo((2850 * pair.motorPulleyDiameter_m) / pair.wheelPulleyDiameter_m, 9);
      expect(pair.wheelSpeed_rpm).toBeGreaterThanOrEqual(3000);
      expect(pair.wheelSpeed_rpm).toBeLessThanOrEqual(3300);
      expect(pair.beltSpeed_m_s).toBeLessThanOrEqual(30);
    }
    expect(pairs.map((p) => p.newPulleys)).toEqual(pairs.map((p) => p.newPulleys).sort());
  });

  it('does not bend a belt around too small a pulley, nor run it too fast', () => {
    const pairs = pulleyPairs({ motorSpeed_rpm: 2850, wheelSpeed_rpm: [2800, 2900], section: 'B' });
    for (const pair of pairs) {
      expect(Math.min(pair.motorPulleyDiameter_m, pair.wheelPulleyDiameter_m)).toBeGreaterThanOrEqual(0.125);
      expect(pair.motorPulleyDiameter_m).toBeLessThanOrEqual(0.201);
    }
    expect(pulleyPairs({ motorSpeed_rpm: 2850, wheelSpeed_rpm: [50_000, 51_000] })).toEqual([]);
    expect(beltSpeed(0.2, 2850)).toBeCloseTo(29.8, 1);
  });
});

describe('how far the pulley may go', () => {
  it('is the cube root of what the motor has left', () => {
    expect(speedRatioMotorStands(0.7, 0.9)).toBeCloseTo(Math.cbrt(0.9 / 0.7), 12);
    expect(speedRatioMotorStands(1.2, 0.9)).toBeLessThan(1);
    expect(() => speedRatioMotorStands(0, 0.9)).toThrow(
      'loadFraction, mostLoad: expected positive numbers, received 0, 0.9',
    );
  });
});

describe('unbalanced mains', () => {
  it('is the largest deviation over the mean, and forbids running above 5 %', () => {
    expect(voltageUnbalance([400, 400, 370])).toBeCloseTo(20 / 390, 12);
    expect(unbalanceEffect(0.04)).toMatchObject({ powerFactor: 0.82, mustNotRun: false });
    expect(unbalanceEffect(0.06).mustNotRun).toBe(true);
    expect(() => voltageUnbalance([400, 390])).toThrow('volts: expected three voltages, received 400, 390');
  });
});
