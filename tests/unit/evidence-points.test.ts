import { describe, expect, it } from 'vitest';
import { evidencePoints } from '../../src/index.ts';
import type { Blower } from '../../src/index.ts';

/** Standard air: 15 °C dry at sea level is 1.225 kg/m³ (ISO 2533); the chart below is drawn for just that air and the run speed. */
const site = { altitude_m: 0, airTemperature_C: 15, relativeHumidity: 0, barometricPressure_Pa: 101_325 };
const blower = (evidence: Blower['evidence']): Blower => ({
  id: 'b1',
  wheel: { family: 'radial', diameter_m: 0.4 },
  outletArea_m2: 0.02,
  drive: { kind: 'direct' },
  runSpeed_rpm: 2900,
  motor: { ratedPower_W: 2200 },
  evidence,
});
const points = (evidence: Blower['evidence']) => evidencePoints(blower(evidence), { site, supply: {}, ductwork: null });

describe('finds as points on the plot', () => {
  it('lifts a static chart by the velocity pressure of the outlet: 0.4 m³/s through 0.02 m² is 20 m/s, 245 Pa', () => {
    const [first, second] = points([
      {
        kind: 'chart',
        speed_rpm: 2900,
        airDensity_kg_m3: 1.225,
        pressureKind: 'static',
        pressure: [
          [0, 2000],
          [0.4, 1000],
        ],
      },
    ]);
    expect(first).toMatchObject({ evidence: 0, kind: 'chart', row: null, flow_m3_s: 0 });
    expect(first!.totalPressure_Pa).toBeCloseTo(2000, -1);
    expect(second!.totalPressure_Pa).toBeCloseTo(1245, -1);
  });

  it('brings half the speed to the run speed: twice the flow, four times the pressure', () => {
    const [point] = points([
      {
        kind: 'rated-point',
        flow_m3_s: 0,
        pressure_Pa: 500,
        pressureKind: 'total',
        speed_rpm: 1450,
        airDensity_kg_m3: 1.225,
      },
    ]);
    expect(point).toMatchObject({ kind: 'rated-point', row: null, flow_m3_s: 0 });
    expect(point!.totalPressure_Pa).toBeCloseTo(2000, -1);
  });

  it('knows each reading by its row, and shows a long chart by a dozen points with both ends', () => {
    const rows = [0, 0.06].map((orificeDiameter_m) => ({
      orificeDiameter_m,
      staticPressure_Pa: 2000,
      speed_rpm: 2900,
    }));
    const pressure = Array.from({ length: 100 }, (_, i): [number, number] => [i / 100, 2000 - i]);
    const all = points([
      { kind: 'readings', rig: { method: 'orifice-cap', pipeDiameter_m: 0.15, tap: 'far' }, rows },
      { kind: 'chart', speed_rpm: 2900, airDensity_kg_m3: 1.225, pressureKind: 'total', pressure },
      { kind: 'wheel' },
    ]);
    expect(all.filter((p) => p.kind === 'readings').map((p) => p.row)).toEqual([0, 1]);
    const chart = all.filter((p) => p.kind === 'chart');
    expect(chart).toHaveLength(12);
    expect(chart.at(-1)!.flow_m3_s).toBeCloseTo(0.99, 6);
    expect(all.some((p) => p.kind === 'wheel')).toBe(false);
  });
});
