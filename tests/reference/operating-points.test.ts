import { describe, expect, it } from 'vitest';
import { checkJob, type Assessment } from '../../src/index.ts';
import { siteAir } from '../../src/air/index.ts';
import { judge } from '../../src/judge.ts';
import { readReference } from './read-reference.ts';

/**
 * Worked operating points of fixtures/reference/fan_laws.json, taken through whole jobs: where blower and ducts meet, what that makes
 * of the air power, and what hot air changes.
 */
type Row = Record<string, number>;
type Example = { id: string; given: Row; answer_full: Row };
const { sections } = readReference<{
  sections: {
    air_power: { rows: Row[] };
    system_curve: { rows: Row[] };
    published_examples: { rows: Example[] };
  };
}>('fan_laws.json');

type Shop = { temperature_C?: number; blower: Record<string, unknown>; elements: Record<string, unknown>[] };

/** One machine, its pipe without a length worth naming, and this blower, in dry air at sea level. */
function judged({ temperature_C = 20, blower, elements }: Shop): Assessment['cases'][number] {
  const checked = checkJob({
    format: 'blower-bench-job',
    version: 1,
    name: 'worked example',
    site: { altitude_m: 0, airTemperature_C: temperature_C, relativeHumidity: 0 },
    supply: { voltage_V: 400, frequency_Hz: 50, phases: 3 },
    material: 'light-powder',
    blowers: [
      {
        id: 'b',
        wheel: { family: 'radial', diameter_m: 0.4 },
        drive: { kind: 'direct' },
        runSpeed_rpm: 2900,
        motor: { ratedPower_W: 7500 },
        ...blower,
      },
    ],
    ductwork: {
      sections: [{ id: 'm', into: 'blower', pickup: { machine: 'machine' }, gate: {}, elements }],
      discharge: [{ kind: 'exit', diameter_m: 1, k: 0 }],
    },
  });
  if (!checked.ok) throw new Error(JSON.stringify(checked.issues));
  return judge(checked.value).assessment.cases[0]!;
}
const resistance = (flow_m3_s: number, pressure_Pa: number, exponent = 2) => ({
  kind: 'fixed-resistance',
  flow_m3_s,
  pressure_Pa,
  exponent,
});
const densityAt = (airTemperature_C: number) =>
  siteAir({ altitude_m: 0, airTemperature_C, relativeHumidity: 0 }).air.density_kg_m3;
/** A falling chart, in the air of 20 °C, that runs through one point. */
const chartThrough = (flow: number, total_Pa: number, power_W: number) => ({
  kind: 'chart',
  speed_rpm: 2900,
  airDensity_kg_m3: densityAt(20),
  pressureKind: 'total',
  pressure: [
    [0, 1.3 * total_Pa],
    [flow, total_Pa],
    [2 * flow, 0.3 * total_Pa],
  ],
  shaftPower: [
    [0, 0.5 * power_W],
    [flow, power_W],
    [2 * flow, 1.4 * power_W],
  ],
});
const within = (value: number, expected: number, relative: number) =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThan(relative);

describe('operating points of whole jobs against worked examples', () => {
  // air_power: efficiency = Q p / P of total and static pressure; 1e-6 there, here to what the solver's curve allows.
  it('flow, pressures, shaft power and efficiency where blower and ducts meet', () => {
    for (const row of sections.air_power.rows) {
      const [flow, total, fanStatic, power] = [row['Q']!, row['p_total']!, row['p_static']!, row['shaft_power_W']!];
      const outlet_m2 = flow * Math.sqrt(densityAt(20) / 2 / (total - fanStatic));
      const { operatingPoint: point } = judged({
        blower: {
          outletArea_m2: outlet_m2,
          evidence: [chartThrough(flow, total, power)],
        },
        elements: [resistance(flow, total)],
      });
      within(point!.flow_m3_s, flow, 1e-4);
      within(point!.totalPressure_Pa, total, 1e-4);
      within(point!.staticPressure_Pa, fanStatic, 1e-3);
      within(point!.shaftPower_W!, power, 1e-4);
      within(point!.efficiency!, row['eff_total']!, 1e-3);
    }
  });

  const steady = {
    outletArea_m2: 0.05,
    evidence: [{ kind: 'chart', speed_rpm: 2900, airDensity_kg_m3: 1.2, pressure: [[0, 4000], [2, 4000], [3, 0]] }], // prettier-ignore
  };
  const lossAt = (elements: Record<string, unknown>[], flow: number) => {
    const { flow_m3_s: flows, totalPressure_Pa: losses } = judged({ blower: steady, elements }).systemCurve;
    const i = flows.findIndex((q) => q >= flow);
    const [a, b] = [i - 1, i];
    const t = (flow - flows[a]!) / (flows[b]! - flows[a]!);
    return losses[a]! + t * (losses[b]! - losses[a]!);
  };

  // system_curve: p = k Q², and a filter whose fifth of the loss is laminar. The drawn curve is read by straight lines between its points: 2 %.
  it('system curves of ducts and of ducts with a filter', () => {
    const ducts = [resistance(1, 1000)];
    const withFilter = [resistance(1, 800), resistance(1, 200, 1)];
    for (const row of sections.system_curve.rows.filter((r) => r['Q_ratio'] !== undefined)) {
      const flow = row['Q_ratio']!;
      within(lossAt(ducts, flow) / 1000, row['p_ratio_square_law']!, 0.02);
      within(lossAt(withFilter, flow) / 1000, row['p_ratio_with_20%_laminar_filter']!, 0.02);
    }
    for (const row of sections.system_curve.rows.filter((r) => r['Q1'] !== undefined))
      within(lossAt([resistance(row['Q1']!, row['p1']!)], row['Q2']!), row['p2']!, 0.02);
  });

  // Stoecker's worked example: the same fan and ducts in air of 40 °C. Printed 1,685 W.
  it('a blower and its ducts in hotter air: flow stays, pressure and power fall with the density', () => {
    const { given, answer_full: answer } = sections.published_examples.rows.find((r) => r.id === 'stoecker_40C')!;
    const [flow, pressure, power] = [given['Q']!, given['p']!, given['P_W']!];
    const diameter = 0.4;
    const dynamic_Pa = (densityAt(20) / 2) * (flow / ((Math.PI / 4) * diameter ** 2)) ** 2;
    const at = (temperature_C: number) =>
      judged({
        temperature_C,
        blower: {
          outletArea_m2: 0.3,
          evidence: [chartThrough(flow, pressure, power)],
        },
        elements: [{ kind: 'entry', diameter_m: diameter, k: pressure / dynamic_Pa }],
      }).operatingPoint!;
    within(at(20).flow_m3_s, flow, 1e-4);
    within(at(40).flow_m3_s, answer['Q']!, 1e-4);
    within(at(40).totalPressure_Pa, answer['p']!, 1e-3);
    within(at(40).shaftPower_W!, answer['P_W']!, 1e-3);
  });
});
