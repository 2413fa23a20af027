import { describe, expect, it } from 'vitest';
import {
  currentAfterSpeedChange,
  currentModel,
  drawnBy,
  lowVoltageEffect,
  motorLoad,
  wholePlate,
} from '../../src/motor/index.ts';

const near = (value: number, expected: number, absolute: number, what = '') =>
  expect(Math.abs(value - expected), `${what}: ${value} against ${expected}`).toBeLessThanOrEqual(absolute);

describe('voltage and speed on the worst day', () => {
  // NEMA-type voltage table: 90 % volts, torque −19 %, slip +23 %, amps +11 %; 80 %: torque 64 %. Amps within 1.5 points, three-phase 0.75–7.5 kW.
  it('NEMA voltage table', () => {
    near(lowVoltageEffect(0.9).torque, 0.81, 1e-9);
    near(lowVoltageEffect(0.9).slip, 1.23, 0.005);
    near(lowVoltageEffect(0.8).torque, 0.64, 1e-9);
    for (const ratedPower_W of [750, 2200, 7500]) {
      for (const speed_rpm of [2850, 1430]) {
        const { plate } = wholePlate({ ratedPower_W, voltage_V: 400, speed_rpm, phases: 3, frequency_Hz: 50 });
        const model = currentModel(plate);
        const rise = drawnBy(model, ratedPower_W, 360).current_A / drawnBy(model, ratedPower_W, 400).current_A;
        near(rise, 1.11, 0.02, `${ratedPower_W} W ${speed_rpm}`);
      }
    }
  });

  // At 80 % volts rotor current rises by about 20 %, copper heat by about 40 % under a fan that sheds a little load (slip model).
  it('heat at 80 % volts', () => {
    // held load: 1/0.8² = 1.56; a fan that loses 2–3 % of its speed carries 7 % less, 1.56 × 0.93² = 1.35
    near(lowVoltageEffect(0.8).rotorHeat, 1 / 0.64, 1e-9);
    near(lowVoltageEffect(0.8).rotorHeat * 0.975 ** 6, 1.4, 0.1);
  });

  // A naval training manual: pulley 20 % larger, 6.2 A × 1.2³ = 10.7 A on a motor of 9 A.
  it('cube of a pulley change', () => {
    const amps = currentAfterSpeedChange(6.2, 1.2);
    expect(amps).toBeCloseTo(10.7, 1);
    expect(amps).toBeGreaterThan(9);
  });

  // 60 Hz motor on 50 Hz: 5/6 of the speed and rated power, by definition of the contract. Exact.
  it('60 Hz plate on 50 Hz', () => {
    const given = {
      wheelShaftPower_W: 1000,
      motor: { ratedPower_W: 1800, speed_rpm: 3450, frequency_Hz: 60, voltage_V: 460, phases: 3 as const },
      drive: { kind: 'direct' as const },
    };
    expect(motorLoad({ ...given, supply: { frequency_Hz: 50, phases: 3 } }).loadFraction).toBeCloseTo(1000 / 1500, 12);
    expect(motorLoad({ ...given, supply: { frequency_Hz: 60, phases: 3 } }).loadFraction).toBeCloseTo(1000 / 1800, 12);
  });
});
