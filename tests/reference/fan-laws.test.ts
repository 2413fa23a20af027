import { describe, expect, it } from 'vitest';
import reference from '../../fixtures/reference/fan_laws.json' with { type: 'json' };
import shapes from '../../fixtures/reference/fan_shapes.json' with { type: 'json' };
import {
  dimensionlessUnits,
  fanScale,
  scaleFanPoint,
  staticFromTotal,
  tipSpeed,
  totalFromStatic,
  velocityPressure,
} from '../../src/fan/laws.ts';

const { sections } = reference;
type Numbers = Record<string, number>;
const published = new Map(
  sections.published_examples.rows.map((row) => [
    row.id,
    {
      given: row.given as unknown as Numbers,
      printed: (row.answer_printed ?? {}) as unknown as Numbers,
      full: row.answer_full as unknown as Numbers,
    },
  ]),
);
const example = (id: string) => {
  const row = published.get(id);
  if (!row) throw new Error(`no example ${id}`);
  return row;
};
const within = (value: number, expected: number, relative: number, what = '') =>
  expect(Math.abs(value / expected - 1), `${what}: ${value} against ${expected}`).toBeLessThanOrEqual(relative);

/** Conventional inch of water [Pa]. Source: unit definition (fan_laws.json, air_horsepower_constant). */
const INCH_OF_WATER = 249.0889;
const AT_REST = { speed_rpm: 1000, airDensity_kg_m3: 1.2 };

describe('fan laws against published values (fixtures/reference/fan_laws.json)', () => {
  // Complete-similarity scaling; computed from the laws. 1e-6.
  it('scaling of a duty point to another speed, size and density', () => {
    for (const row of sections.scaling.rows) {
      const point = { flow_m3_s: row.from.Q, pressure_Pa: row.from.p_total, shaftPower_W: row.from.P };
      const state = (s: { N: number; D: number; rho: number }) => ({
        speed_rpm: s.N,
        diameter_m: s.D,
        airDensity_kg_m3: s.rho,
      });
      const scaled = scaleFanPoint(point, state(row.from), state(row.to));
      // the last row prints its speed to 8 digits, which costs the power 4e-8
      within(scaled.flow_m3_s, row.Q, 1e-6);
      within(scaled.pressure_Pa, row.p_total, 1e-6);
      within(scaled.shaftPower_W!, row.P, 1e-6);
    }
  });

  // Computed from the laws. 1e-6.
  it('speed ratios', () => {
    for (const row of sections.speed_ratios.rows) {
      const scale = fanScale(AT_REST, { ...AT_REST, speed_rpm: 1000 * row.speed_ratio });
      within(scale.flow, row.Q_ratio, 1e-6);
      within(scale.pressure, row.p_ratio, 1e-6);
      within(scale.power, row.P_ratio, 1e-6);
    }
  });

  // Stoecker & Jones, fan at 20 and 40 °C: printed 1685 W. 1e-4 on the full answer, with densities of an ideal gas as there.
  it('a fan in warmer air', () => {
    const { given, full, printed } = example('stoecker_40C');
    const density = (temperature_C: number) => 101_325 / (287.05 * (temperature_C + 273.15));
    const scaled = scaleFanPoint(
      { flow_m3_s: given.Q!, pressure_Pa: given.p!, shaftPower_W: given.P_W! },
      { speed_rpm: 60 * given.N_rev_s!, airDensity_kg_m3: density(given.t1!) },
      { speed_rpm: 60 * given.N_rev_s!, airDensity_kg_m3: density(given.t2!) },
    );
    expect(scaled.flow_m3_s).toBe(full.Q);
    within(scaled.pressure_Pa, full.p!, 1e-4);
    within(scaled.shaftPower_W!, full.P_W!, 1e-4);
    expect(Math.round(scaled.shaftPower_W!)).toBe(printed.P_W);
  });

  // Trade-journal note, rules read: density at constant speed, constant pressure and constant mass flow. 1e-6.
  it('density rules', () => {
    for (const r of ['0.8', '0.9', '1.1']) {
      const ratio = Number(r);
      const at = (n: number) => fanScale(AT_REST, { speed_rpm: AT_REST.speed_rpm * n, airDensity_kg_m3: 1.2 * ratio });
      const speed = example(`density_constant_speed_${r}`).full;
      within(at(1).flow, speed.Q_ratio!, 1e-6);
      within(at(1).pressure, speed.p_ratio!, 1e-6);
      within(at(1).power, speed.P_ratio!, 1e-6);
      const pressure = example(`density_constant_pressure_${r}`).full;
      within(at(pressure.N_ratio!).pressure, 1, 1e-6);
      within(at(pressure.N_ratio!).flow, pressure.Q_ratio!, 1e-6);
      within(at(pressure.N_ratio!).power, pressure.P_ratio!, 1e-6);
      const mass = example(`density_constant_mass_${r}`).full;
      within(at(mass.N_ratio!).flow * ratio, 1, 1e-6);
      within(at(mass.N_ratio!).pressure, mass.p_ratio!, 1e-6);
      within(at(mass.N_ratio!).power, mass.P_ratio!, 1e-6);
    }
  });

  // US EPA APTI practice problem, university homework sheet and a printed sentence; to their printed rounding.
  it('worked examples of speed changes', () => {
    const epa = example('epa_fan_speed');
    const flow = fanScale({ ...AT_REST, speed_rpm: epa.given.N1! }, { ...AT_REST, speed_rpm: epa.printed.N2! }).flow;
    within(epa.given.Q1_acfm! * flow, epa.given.Q2_acfm!, 1e-6);

    within(
      fanScale(AT_REST, { ...AT_REST, speed_rpm: 1100 }).power,
      example('ten_percent_more_flow').full.P_ratio!,
      1e-6,
    );

    for (const [id, power] of [
      ['hw_speed_down', 'hp'],
      ['hw_speed_up', 'kW'],
    ] as const) {
      const { given, full, printed } = example(id);
      const scaled = scaleFanPoint(
        { flow_m3_s: given.Q1_cfm!, pressure_Pa: given.p1_inwg!, shaftPower_W: given[`P1_${power}`]! },
        { speed_rpm: given.N1!, airDensity_kg_m3: 1.2 },
        { speed_rpm: given.N2!, airDensity_kg_m3: 1.2 },
      );
      within(scaled.flow_m3_s, full.Q2_cfm!, 1e-4);
      within(scaled.pressure_Pa, full.p2_inwg!, 1e-4);
      within(scaled.shaftPower_W!, full[`P2_${power}`]!, 1e-4);
      expect(scaled.pressure_Pa).toBeCloseTo(printed.p2_inwg!, 2);
      expect(scaled.shaftPower_W!).toBeCloseTo(printed[`P2_${power}`]!, 2);
    }
  });

  // Velocity pressure in handbook form: VP = (V/4005)², which belongs to 1.2014 kg/m3 and 20 °C water. 1e-3.
  it('velocity pressure of a duct', () => {
    for (const row of sections.velocity_pressure.rows) {
      const area = (Math.PI / 4) * (row.duct_inch * 0.0254) ** 2;
      within(velocityPressure(row.Q_m3_s, area, 1.2014), row['VP_Pa_rho_1.2014'], 1e-3);
    }
  });

  // Fan static = fan total − velocity pressure at the outlet; the difference of static pressures is the trap. 1e-6.
  it('fan static and fan total pressure', () => {
    for (const row of sections.pressure_definitions.rows) {
      const outlet = { flow_m3_s: row.Q, outletArea_m2: row.A_outlet, airDensity_kg_m3: row.rho };
      within(velocityPressure(row.Q, row.A_outlet, row.rho), row.vp_outlet, 1e-6);
      within(velocityPressure(row.Q, row.A_inlet, row.rho), row.vp_inlet, 1e-6);
      within(staticFromTotal(row.fan_total, outlet), row.fan_static, 1e-6);
      within(totalFromStatic(row.fan_static, outlet), row.fan_total, 1e-6);
      expect(row.fan_static).toBeLessThan(row.static_difference_only);
    }
  });

  // 60 Hz wheel (3450 min⁻¹) on 50 Hz (2850 min⁻¹): 0.83 flow, 0.68 pressure, 0.56 power; the builders' rule, two digits.
  it('a 60 Hz blower on 50 Hz', () => {
    const scale = fanScale({ speed_rpm: 3450, airDensity_kg_m3: 1.2 }, { speed_rpm: 2850, airDensity_kg_m3: 1.2 });
    expect(scale.flow).toBeCloseTo(0.83, 2);
    expect(scale.pressure).toBeCloseTo(0.68, 2);
    expect(scale.power).toBeCloseTo(0.56, 2);
  });

  // ψ, φ of Eck on ρ/2·u² and π/4·D²·u (fan_shapes.json, coefficients). 1e-6.
  it('size-free numbers', () => {
    for (const row of shapes.sections.coefficients.rows) {
      const unit = dimensionlessUnits({ speed_rpm: row.N, diameter_m: row.D2, airDensity_kg_m3: row.rho });
      within(tipSpeed(row.D2, row.N), row.u2, 1e-6);
      within(row.Q / unit.flow_m3_s, row.phi, 1e-6);
      within(row.p_total / unit.pressure_Pa, row.psi, 1e-6);
    }
  });

  // A published 14 in backward wheel at 3450 min⁻¹ has ψ about 1.0 in the middle of its table, at 10 in of water. 5 %.
  it('a published table of a small backward wheel', () => {
    const unit = dimensionlessUnits({ speed_rpm: 3450, diameter_m: 14 * 0.0254, airDensity_kg_m3: 1.2 });
    within((10 * INCH_OF_WATER) / unit.pressure_Pa, 1, 0.05);
  });
});
