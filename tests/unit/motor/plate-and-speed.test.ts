import { describe, expect, it } from 'vitest';
import {
  driveEfficiency,
  driveRatio,
  plateFrequency,
  polesOf,
  runSpeed,
  wholePlate,
} from '../../../src/motor/index.ts';

describe('what a plate leaves unsaid', () => {
  it('works out the efficiency where volts, amps and power factor are printed', () => {
    const { plate, warnings } = wholePlate({
      ratedPower_W: 2200,
      speed_rpm: 2850,
      voltage_V: 400,
      current_A: 4.6,
      powerFactor: 0.86,
      phases: 3,
      frequency_Hz: 50,
    });
    expect(plate.efficiency).toBeCloseTo(2200 / (Math.sqrt(3) * 400 * 4.6 * 0.86), 12);
    expect(plate.estimated).toEqual([]);
    expect(warnings).toEqual([]);
  });

  it('estimates the rest from typical motors and says which', () => {
    const { plate, warnings } = wholePlate(
      { ratedPower_W: 1500, speed_rpm: 2840 },
      { voltage_V: 400, phases: 3, frequency_Hz: 50 },
      '/blowers/0/motor',
    );
    expect(plate).toMatchObject({
      phases: 3,
      voltage_V: 400,
      frequency_Hz: 50,
      poles: 2,
      synchronousSpeed_rpm: 3000,
      efficiency: 0.772,
    });
    expect(warnings).toEqual([
      {
        code: 'plate-estimated',
        text: "Not on the motor's plate and taken from typical motors of its size: frequency, phases, voltage, efficiency, amps, power factor.",
        path: '/blowers/0/motor',
      },
    ]);
  });

  it('tells one phase from three by watts against volts times amps', () => {
    expect(
      wholePlate({ ratedPower_W: 1100, voltage_V: 230, current_A: 7.2 }, { phases: 3, voltage_V: 400 }).plate.phases,
    ).toBe(1);
    expect(
      wholePlate({ ratedPower_W: 1100, voltage_V: 230, current_A: 4.4 }, { phases: 1, voltage_V: 230 }).plate.phases,
    ).toBe(3);
  });

  it('says when a plate contradicts itself, and keeps its amps as the limit', () => {
    const { plate, warnings } = wholePlate({
      ratedPower_W: 2200,
      speed_rpm: 2850,
      voltage_V: 400,
      current_A: 8.0,
      powerFactor: 0.86,
      efficiency: 0.82,
      phases: 3,
      frequency_Hz: 50,
    });
    expect(plate.current_A).toBe(8);
    expect(warnings.map((w) => w.text)).toEqual([
      "The plate's 2200 W do not fit its 400 V and 8 A. Look again: a motor often has two sets of volts and amps.",
    ]);
  });

  it('takes the watts of a vacuum motor as drawn, unless its amps say otherwise', () => {
    const vacuum = { kind: 'universal' as const, ratedPower_W: 1200, voltage_V: 230 };
    expect(wholePlate(vacuum).plate.ratedPower_W).toBeCloseTo(720, 9);
    expect(wholePlate({ ...vacuum, current_A: 5.5 }).plate.ratedPower_W).toBeCloseTo(720, 9);
    expect(wholePlate({ ...vacuum, current_A: 9.2 }).plate.ratedPower_W).toBe(1200);
    expect(wholePlate({ ...vacuum, ratedPowerMeaning: 'shaft' }).plate.ratedPower_W).toBe(1200);
  });

  it('turns plate watts that are input into shaft watts for an induction motor too', () => {
    const { plate } = wholePlate({
      ratedPower_W: 1000,
      ratedPowerMeaning: 'input',
      efficiency: 0.7,
      voltage_V: 230,
      phases: 1,
    });
    expect(plate.ratedPower_W).toBe(700);
  });
});

describe('speed of the wheel', () => {
  const direct = { kind: 'direct' as const };

  it('is plate speed × mains over plate frequency × pulleys', () => {
    const motor = { ratedPower_W: 2200, speed_rpm: 3450, frequency_Hz: 60 };
    const drive = { kind: 'belt' as const, motorPulleyDiameter_m: 0.12, wheelPulleyDiameter_m: 0.1 };
    const speed = runSpeed({ motor, drive, supply: { frequency_Hz: 50 } });
    expect(speed.speed_rpm).toBeCloseTo(3450, 9);
    expect(speed.motorSpeed_rpm).toBeCloseTo(2875, 9);
    expect(speed.warnings).toEqual([]);
  });

  it('believes what was measured', () => {
    const motor = { ratedPower_W: 2200, speed_rpm: 2850 };
    expect(runSpeed({ motor, drive: direct, supply: {}, measuredSpeed_rpm: 2910 })).toMatchObject({
      speed_rpm: 2910,
      from: 'measured',
    });
  });

  it('is unknown without a plate speed, and doubtful without pulleys', () => {
    expect(runSpeed({ motor: { ratedPower_W: 1 }, drive: direct, supply: {} })).toMatchObject({
      speed_rpm: null,
      from: 'unknown',
    });
    const guess = runSpeed({
      motor: { ratedPower_W: 1, speed_rpm: 1420 },
      drive: { kind: 'belt' },
      supply: {},
      path: '/blowers/0',
    });
    expect(guess.speed_rpm).toBe(1420);
    expect(guess.relativeSd).toBe(0.3);
    expect(guess.warnings).toEqual([
      {
        code: 'pulleys-unknown',
        text: 'The pulleys are not known: the wheel is taken to turn as fast as the motor. Measure both pulleys, or the speed.',
        path: '/blowers/0/drive',
      },
    ]);
  });

  it('does not scale a brushed motor with the mains frequency', () => {
    const motor = { kind: 'universal' as const, ratedPower_W: 1200, speed_rpm: 20_000, frequency_Hz: 60 };
    expect(runSpeed({ motor, drive: direct, supply: { frequency_Hz: 50 } }).speed_rpm).toBe(20_000);
  });

  it('tells a plate’s frequency from its speed', () => {
    expect(plateFrequency(3450, 50)).toBe(60);
    expect(plateFrequency(2850, 60)).toBe(50);
    expect(plateFrequency(1440, null)).toBe(50);
    expect(plateFrequency(null, 60)).toBe(60);
    expect(polesOf(2850, 50)).toBe(2);
    expect(polesOf(1425, 50)).toBe(4);
    expect(polesOf(940, 50)).toBe(6);
    expect(polesOf(3450, 50)).toBeNull();
    expect(
      runSpeed({ motor: { ratedPower_W: 1, speed_rpm: 3450 }, drive: direct, supply: { frequency_Hz: 50 } }).speed_rpm,
    ).toBeCloseTo(2875, 9);
  });

  it('knows drives', () => {
    expect(driveRatio({ kind: 'belt', motorPulleyDiameter_m: 0.15, wheelPulleyDiameter_m: 0.1 })).toEqual({
      ratio: 0.15 / 0.1,
      known: true,
    });
    expect(driveEfficiency({ kind: 'belt' })).toEqual({ value: 0.95, sd: 0.02 });
    expect(driveEfficiency({ kind: 'belt', efficiency: 0.92 })).toEqual({ value: 0.92, sd: 0.01 });
  });
});
