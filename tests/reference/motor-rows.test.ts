import { describe, expect, it } from 'vitest';
import reference from '../../fixtures/reference/motor.json' with { type: 'json' };
import { FAMILY } from '../../src/fan/families.ts';
import {
  currentModel,
  drawnBy,
  driveEfficiency,
  HORSEPOWER_W,
  iecEfficiency,
  motorAtSite,
  shaftPowerFromSlip,
  siteDerating,
  unbalanceEffect,
  usEfficiency,
  wholePlate,
} from '../../src/motor/index.ts';
import { US_EFFICIENCY } from '../../src/motor/tables/us-efficiency.ts';

/** Rows of fixtures/reference/motor.json that no table of the program holds: neighbouring standards, formulas, facts in words. */
const { sections } = reference;
type Row = Record<string, number | string | number[]>;
const rowsOf = (section: keyof typeof sections) => sections[section].rows as unknown as Row[];
const near = (value: number, expected: number, absolute: number, what = '') =>
  expect(Math.abs(value - expected), `${what}: ${value} against ${expected}`).toBeLessThanOrEqual(absolute);

const HP_OF_kW: Record<number, number> = {
  0.75: 1,
  1.1: 1.5,
  1.5: 2,
  2.2: 3,
  3.7: 5,
  5.5: 7.5,
  7.5: 10,
  11: 15,
  15: 20,
  18.5: 25,
};

describe('motor.json, what is not a table of the program', () => {
  // CSA C390 (a public library's fit): the same levels as the US rules, within 0.6 points where both have the size.
  it('Canadian efficiencies are those of the US tables', () => {
    let compared = 0;
    for (const row of rowsOf('csa_efficiency')) {
      const hp = HP_OF_kW[Number(row['kW'])];
      if (hp === undefined) continue;
      for (const [name, level] of [
        ['std', '1992 act'],
        ['high', 'premium'],
      ] as const)
        for (const [csa, enclosure] of [
          ['open', 'open'],
          ['closed', 'enclosed'],
        ] as const)
          for (const poles of [2, 4] as const) {
            const own = US_EFFICIENCY[level][enclosure].find((r) => r[0] === hp)?.[poles === 2 ? 3 : 2];
            if (own == null) continue;
            const theirs = Number(row[`${csa}_${poles}pole_${name}`]);
            near(
              usEfficiency(hp * HORSEPOWER_W, poles, level, enclosure),
              theirs,
              0.006,
              `${hp} hp ${csa} ${poles} ${name}`,
            );
            compared++;
          }
    }
    expect(compared).toBeGreaterThan(40);
  });

  // IEC 60034-30-1: interpolation polynomial of the standard, recalled apart from the table. 0.15 points.
  it('the standard’s own formula gives its table', () => {
    for (const row of rowsOf('iec_efficiency'))
      for (const level of ['IE1', 'IE2', 'IE3'] as const) {
        const formula = row[`${level}_by_interpolation_formula`];
        if (formula !== undefined)
          near(
            100 * iecEfficiency(1000 * Number(row['kW']), Number(row['poles']), level),
            Number(formula),
            0.15,
            level,
          );
      }
  });

  // IEC 60034-1, recalled: standard site; 1 % of the permitted rise for each 100 m (80 K, class B: 0.8 K); classes F and H ask for cooler air.
  it('site: 1,000 m and 40 °C, height as if the air were warmer, the better classes need no derating either', () => {
    expect(siteDerating(1000, 40)).toBe(1);
    near(siteDerating(1500, 40), siteDerating(0, 44), 1e-12);
    for (const row of rowsOf('derating_site'))
      if (row['thermal_class'] !== undefined)
        near(
          siteDerating(Number(row['altitude_m']), Number(row['ambient_at_which_no_derating_is_needed'])),
          1,
          0.02,
          JSON.stringify(row),
        );
  });

  // NEMA MG 1, recalled: currents are 6 to 10 times as unbalanced as the voltages.
  it('unbalanced currents', () => {
    expect(unbalanceEffect(0.02).currentUnbalance.map((x) => Number(x.toFixed(9)))).toEqual([0.12, 0.2]);
  });

  // US DOE tip sheet, a university note, AMCA 203 (recalled): every belt lies within two deviations of what is taken, or its range touches.
  it('every belt of the sources lies within the doubt', () => {
    const { value, sd } = driveEfficiency({ kind: 'belt' });
    const [low, high] = [value - 2 * sd, value + 2 * sd];
    for (const row of rowsOf('belts')) {
      const range = row['loss']
        ? (row['loss'] as number[]).map((l) => 1 - l)
        : row['eff'] === undefined
          ? null
          : [row['eff']].flat();
      if (range === null || row['drive'] === 'direct') continue;
      const numbers = range.map(Number);
      expect(Math.max(...numbers), String(row['drive'])).toBeGreaterThanOrEqual(low - 1e-9);
      expect(Math.min(...numbers), String(row['drive'])).toBeLessThanOrEqual(high + 1e-9);
    }
  });

  // US DOE fact sheet, read: best efficiency near three quarters load; efficiency falls sharply below half, power factor sooner.
  it('efficiency peaks near three quarters load, power factor falls sooner', () => {
    for (const ratedPower_W of [750, 2200, 7500]) {
      const { plate } = wholePlate({ ratedPower_W, voltage_V: 400, speed_rpm: 1430, phases: 3, frequency_Hz: 50 });
      const at = (load: number) => drawnBy(currentModel(plate), load * ratedPower_W, 400);
      const loads = Array.from({ length: 31 }, (_, i) => 0.2 + 0.035 * i);
      const best = loads.reduce((a, b) => (at(b).efficiency > at(a).efficiency ? b : a));
      near(best, 0.75, 0.2, `${ratedPower_W} W`);
      expect(at(0.25).efficiency / at(0.5).efficiency).toBeLessThan(at(0.5).efficiency / at(0.75).efficiency);
      expect(at(0.5).powerFactor / at(1).powerFactor).toBeLessThan(at(0.5).efficiency / at(1).efficiency - 0.1);
    }
  });

  // US DOE fact sheet and IEC 60034-1, recalled: slip is not for rewound motors, nor closer than about 20 %.
  it('slip is no closer than a fifth, and nothing on a rewound motor', () => {
    const motor = { ratedPower_W: 2200, speed_rpm: 2850, voltage_V: 400, phases: 3 as const, frequency_Hz: 50 };
    const situation = {
      drive: { kind: 'direct' as const },
      supply: { voltage_V: 400, phases: 3 as const, frequency_Hz: 50 },
    };
    const read = shaftPowerFromSlip({ at: motorAtSite({ ...situation, motor }), motorSpeed_rpm: 2880 })!;
    expect(Math.hypot(read.sharedSd_W, read.ownSd_W) / read.shaftPower_W).toBeGreaterThan(0.2);
    const rewound = motorAtSite({ ...situation, motor: { ...motor, rewound: true } });
    expect(shaftPowerFromSlip({ at: rewound, motorSpeed_rpm: 2880 })).toBeNull();
  });

  // Heating and air-conditioning textbook, page on fans, read: forward-curved and radial rise to free delivery, backward-curved limits itself,
  // propeller fans draw most when shut.
  it('which wheels load the motor when the pipe is off', () => {
    const power = (family: 'forward-curved' | 'radial' | 'backward-curved' | 'axial') =>
      FAMILY[family].powerShape.map(([, p]) => p);
    for (const family of ['forward-curved', 'radial'] as const) {
      const p = power(family);
      expect(p.every((value, i) => i === 0 || value > p[i - 1]!)).toBe(true);
      expect(FAMILY[family].overloading).toBe(true);
    }
    const backward = power('backward-curved');
    expect(Math.max(...backward)).toBeGreaterThan(backward.at(-1)!);
    expect(power('axial')[0]).toBe(Math.max(...power('axial')));
  });

  it('no section is left without a check: here, in motor.test or in motor-whole-jobs.test', () => {
    const here = ['csa_efficiency', 'iec_efficiency', 'derating_site', 'unbalance', 'belts', 'load_facts'];
    const elsewhere = [
      'doe_examples',
      'input_power',
      'us_efficiency',
      'part_load',
      'nec_three_phase',
      'nec_single_phase',
      'current_sanity',
    ];
    expect(Object.keys(sections).sort()).toEqual([...here, ...elsewhere].sort());
  });
});
