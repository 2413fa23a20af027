import { describe, expect, test } from 'vitest';
import { airAgreement, tipAgreement } from '../../../../src/plate/physics/air.ts';
import { weighedTogether } from '../../../../src/plate/physics/joint.ts';
import { massAgreement, pairAgreement, powerAgreement, type Electrical } from '../../../../src/plate/physics/power.ts';
import { speedAgreement } from '../../../../src/plate/physics/speed.ts';

const motor = { speed_rpm: 1440, frequency_Hz: 50, isInput: false };
/** √3 · 400 V · 10.8 A · 0.82 · 0.895 = 5491 W, worked by hand */
const plate: Electrical = {
  ratedPower_W: 5500,
  voltage_V: [400, 690],
  current_A: [10.8, 6.27],
  powerFactor: 0.82,
  efficiency: 0.895,
  phases: 3,
};

describe('power against volts, amps, power factor and efficiency', () => {
  test('a whole plate agrees', () => {
    const { support, isAtOdds } = powerAgreement(plate, motor);
    expect(isAtOdds).toBe(false);
    expect(support).toBeGreaterThan(3);
  });
  test('a lost decimal mark does not', () => {
    expect(powerAgreement({ ...plate, ratedPower_W: 55_000 }, motor).isAtOdds).toBe(true);
  });
  test('one phase has no root of three: 230 V · 3.78 A · 0.93 · 0.68 = 550 W', () => {
    const one: Electrical = {
      ratedPower_W: 550,
      voltage_V: [230],
      current_A: [3.78],
      powerFactor: 0.93,
      efficiency: 0.68,
      phases: 1,
    };
    expect(powerAgreement(one, { ...motor, speed_rpm: 2810 }).isAtOdds).toBe(false);
    expect(powerAgreement({ ...one, phases: 3 }, { ...motor, speed_rpm: 2810 }).isAtOdds).toBe(true);
  });
  test('watts a vacuum motor takes are volts times amps: 230 V · 5.43 A = 1249 VA', () => {
    const vacuum: Electrical = {
      ratedPower_W: 1200,
      voltage_V: [230],
      current_A: [5.43],
      powerFactor: null,
      efficiency: null,
      phases: 1,
    };
    expect(powerAgreement(vacuum, { speed_rpm: 28_600, frequency_Hz: 50, isInput: true }).isAtOdds).toBe(false);
  });
  test('says nothing where amps are missing', () => {
    expect(powerAgreement({ ...plate, current_A: null }, motor)).toEqual({ support: 0, isAtOdds: false });
  });
});

describe('two currents of two voltages', () => {
  test('star and delta carry the same power', () => expect(pairAgreement(plate).isAtOdds).toBe(false));
  test('a digit read wrongly shows', () =>
    expect(pairAgreement({ ...plate, current_A: [10.8, 8.27] }).isAtOdds).toBe(true));
});

describe('speed against frequency', () => {
  test.each([
    [1440, 50, false],
    [2850, 50, false],
    [3450, 60, false],
    [3450, 50, true],
    [2000, 50, true],
    [28_600, 50, false],
  ])('%i min⁻¹ at %i Hz', (speed_rpm, frequency_Hz, isAtOdds) => {
    expect(speedAgreement(speed_rpm, frequency_Hz).isAtOdds).toBe(isAtOdds);
  });
});

describe('air', () => {
  test('1.22 m³/s at 1510 Pa is 1842 W, less than a motor of 4 kW gives', () => {
    expect(airAgreement(4000, 1.22, 1510, false).isAtOdds).toBe(false);
  });
  test('1.68 m³/s at 735 Pa is 1235 W, more than a motor of 0.37 kW gives', () => {
    expect(airAgreement(370, 1.68, 735.5, false).isAtOdds).toBe(true);
  });
  test('a wheel of 0.4 m at 2900 min⁻¹ runs at 60.7 m/s; one of 4 m would tear', () => {
    expect(tipAgreement(2900, 0.4, 1510).isAtOdds).toBe(false);
    expect(tipAgreement(2900, 4, 1510).isAtOdds).toBe(true);
  });
});

test('25 HP do not weigh 6 kg', () => {
  expect(massAgreement(18_642, 6).support).toBeLessThan(-1);
  expect(massAgreement(186, 6).support).toBeGreaterThan(0);
});

test('a reading that agrees with the others overtakes a likelier one that does not', () => {
  const { shares } = weighedTogether(
    {
      power: [
        { value: 55_000, share: 0.8 },
        { value: 5500, share: 0.2 },
      ],
    },
    ({ power }) => [powerAgreement({ ...plate, ratedPower_W: power }, motor)],
  );
  expect(shares.power[1]).toBeGreaterThan(0.9);
});
