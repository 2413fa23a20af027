import { describe, expect, it } from 'vitest';
import {
  currentModel,
  drawnBy,
  loadAt,
  loadFromCurrentAndIdle,
  motorAtSite,
  powerFromMeterFlashes,
  shaftPowerFromAmps,
  shaftPowerFromSlip,
  shaftPowerFromWatts,
  slipLoad,
} from '../../../src/motor/index.ts';
import type { MotorPlate } from '../../../src/motor/index.ts';

const motor: MotorPlate = {
  ratedPower_W: 2200,
  speed_rpm: 2850,
  voltage_V: 400,
  current_A: 4.6,
  powerFactor: 0.86,
  efficiency: 0.82,
  phases: 3,
  frequency_Hz: 50,
};
const supply = { voltage_V: 400, frequency_Hz: 50, phases: 3 as const };
const at = motorAtSite({ motor, drive: { kind: 'direct' }, supply });

describe('shaft power from what a meter shows', () => {
  it('finds the load its own model drew, by amps and by watts, at any voltage', () => {
    for (const power of [300, 1100, 1540, 2200, 2600]) {
      for (const voltage_V of [350, 400, 420]) {
        const drawn = drawnBy(at.current, power, voltage_V);
        expect(shaftPowerFromAmps({ at, current_A: drawn.current_A, voltage_V })!.shaftPower_W).toBeCloseTo(power, 1);
        expect(shaftPowerFromWatts({ at, inputPower_W: drawn.input_W, voltage_V }).shaftPower_W).toBeCloseTo(power, 6);
      }
    }
  });

  it('gives watts the better marks, and amps worse ones the smaller the load', () => {
    const rough = (power: number) => {
      const drawn = drawnBy(at.current, power, 400);
      const amps = shaftPowerFromAmps({ at, current_A: drawn.current_A })!;
      const watts = shaftPowerFromWatts({ at, inputPower_W: drawn.input_W });
      return {
        amps: Math.hypot(amps.sharedSd_W, amps.ownSd_W) / power,
        watts: Math.hypot(watts.sharedSd_W, watts.ownSd_W) / power,
      };
    };
    const [half, full] = [rough(1100), rough(2200)];
    expect(half.amps).toBeGreaterThan(2 * half.watts);
    expect(half.amps).toBeGreaterThan(full.amps);
    expect(full.watts).toBeGreaterThan(0.02);
    expect(full.watts).toBeLessThan(0.05);
    expect(full.amps).toBeGreaterThan(0.02);
    expect(full.amps).toBeLessThan(0.08);
  });

  it('says how rough it is in a sentence', () => {
    expect(shaftPowerFromWatts({ at, inputPower_W: 1900 }).text).toMatch(
      /^Shaft power from watts: good to about ± \d+ % \(19 times in 20\)\.$/,
    );
    expect(shaftPowerFromAmps({ at, current_A: 2.1 })!.text).toBe(
      'Shaft power from amps: little more than a guess (19 times in 20).',
    );
  });

  it('is helped by the amps of the idling motor', () => {
    const idle = drawnBy(at.current, 0, 400).current_A;
    const reading = drawnBy(at.current, 1100, 400).current_A;
    const [without, withIdle] = [
      shaftPowerFromAmps({ at, current_A: reading })!,
      shaftPowerFromAmps({ at, current_A: reading, idleCurrent_A: idle })!,
    ];
    expect(withIdle.shaftPower_W).toBeCloseTo(1100, 0);
    expect(withIdle.sharedSd_W).toBeLessThan(0.8 * without.sharedSd_W);
    // the paper estimates bracket or touch the model
    const paper = loadFromCurrentAndIdle({ current_A: reading, ratedCurrent_A: 4.6, idleCurrent_A: idle });
    expect(withIdle.shaftPower_W / 2200).toBeGreaterThan(paper.linear);
    expect(withIdle.shaftPower_W / 2200).toBeLessThan(paper.root * 1.05);
  });

  it('reads less than idle amps or watts as no load', () => {
    expect(shaftPowerFromAmps({ at, current_A: 1 })!.shaftPower_W).toBe(0);
    expect(shaftPowerFromWatts({ at, inputPower_W: 100 }).shaftPower_W).toBe(0);
  });

  it('takes the cable’s drop from the mains’ volts, whichever way the load is read', () => {
    const cable = { length_m: 140, crossSection_m2: 1.5e-6 };
    const behind = motorAtSite({ motor, drive: { kind: 'direct' }, supply, cable });
    const { current_A, terminal_V } = loadAt(behind, 1800);
    expect(terminal_V).toBeLessThan(390);
    const { input_W } = drawnBy(behind.current, 1800, terminal_V);
    expect(Math.abs(shaftPowerFromAmps({ at: behind, current_A: current_A! })!.shaftPower_W / 1800 - 1)).toBeLessThan(
      0.002,
    );
    expect(Math.abs(shaftPowerFromWatts({ at: behind, inputPower_W: input_W }).shaftPower_W / 1800 - 1)).toBeLessThan(
      0.002,
    );
    const speed = 3000 - (150 * (1800 / 2200)) / (terminal_V / 400) ** 2;
    const bySlip = shaftPowerFromSlip({ at: behind, motorSpeed_rpm: speed })!.shaftPower_W;
    expect(Math.abs(bySlip / 1800 - 1)).toBeLessThan(0.005);
    // without the drop amps would be taken for another load
    const bare = shaftPowerFromAmps({ at, current_A: current_A! })!.shaftPower_W;
    expect(bare).toBeGreaterThan(1.01 * 1800);
  });

  it('says nothing from amps on a single-phase feed', () => {
    const fed = motorAtSite({ motor, drive: { kind: 'direct' }, supply: { voltage_V: 230, phases: 1 } });
    expect(shaftPowerFromAmps({ at: fed, current_A: 5 })).toBeNull();
  });

  it('reads slip with the square of the voltage, and roughly', () => {
    const half = shaftPowerFromSlip({ at, motorSpeed_rpm: 2925 })!;
    expect(half.shaftPower_W).toBeCloseTo(1100, 6);
    expect(Math.hypot(half.sharedSd_W, half.ownSd_W) / 1100).toBeGreaterThan(0.2);
    expect(shaftPowerFromSlip({ at, motorSpeed_rpm: 2925, voltage_V: 360 })!.shaftPower_W).toBeCloseTo(1100 * 0.81, 6);
    const us = motorAtSite({
      motor: { ...motor, speed_rpm: 3450, frequency_Hz: 60, voltage_V: 480 },
      drive: { kind: 'direct' },
      supply,
    });
    expect(shaftPowerFromSlip({ at: us, motorSpeed_rpm: 2925 })!.shaftPower_W).toBeCloseTo(0.5 * 2200 * (50 / 60), 6);
  });

  it('reads no slip where the plate prints the synchronous speed, or the motor has brushes', () => {
    const round = motorAtSite({ motor: { ...motor, speed_rpm: 3000 }, drive: { kind: 'direct' }, supply });
    expect(shaftPowerFromSlip({ at: round, motorSpeed_rpm: 2900 })).toBeNull();
    const brushed = motorAtSite({
      motor: { kind: 'universal', ratedPower_W: 1000, speed_rpm: 20_000 },
      drive: { kind: 'direct' },
      supply,
    });
    expect(shaftPowerFromSlip({ at: brushed, motorSpeed_rpm: 19_000 })).toBeNull();
    expect(() => slipLoad({ synchronous: 3000, ratedSpeed: 3000, speed: 2900 })).toThrow(
      'ratedSpeed: expected below 3000, received 3000',
    );
  });

  it('counts the flashes of an energy meter: 20 in 72 s at 1000 a kilowatt-hour is 1 kW, under 1 % plus the meter’s class', () => {
    const { value_W, sd_W } = powerFromMeterFlashes({ flashes: 20, seconds: 72, impulses_per_kWh: 1000 });
    expect(value_W).toBeCloseTo(1000, 9);
    expect(sd_W).toBeLessThan(11);
    expect(() => powerFromMeterFlashes({ flashes: 0, seconds: 72, impulses_per_kWh: 1000 })).toThrow(
      'flashes, seconds, impulses_per_kWh',
    );
  });

  it('throws at a programmer’s mistake', () => {
    const model = currentModel(at.plate);
    expect(() => drawnBy(model, -1, 400)).toThrow('shaftPower_W: expected 0 or more, received -1');
    expect(() => drawnBy(model, 1, 0)).toThrow('voltage_V: expected a positive number, received 0');
  });
});
