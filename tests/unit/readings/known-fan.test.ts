import { describe, expect, it } from 'vitest';
import { METHODS, reduceReadings, type Rig, type Row } from '../../../src/readings/index.ts';
import { AIR, fanStatic, frictionIn, meets, roundPipe, speedIn, velocityPressureIn, type Pipe } from './rig.ts';

const D = 0.16;
const PIPE = roundPipe(D);
const HALF_RHO = AIR.density_kg_m3 / 2;

/** Reduces rows and compares with the flows at which the fan really ran; on the outlet side with the pressure it really made. */
function expectRecovered(rig: Rig, rows: Row[], flows: number[], pressureAt: (q: number) => number = fanStatic): void {
  const reduced = reduceReadings({ kind: 'readings', rig: { surface: 'spiral-duct', ...rig }, rows }, AIR, '/e');
  expect(reduced.ok).toBe(true);
  if (!reduced.ok) return;
  expect(reduced.value.points).toHaveLength(flows.length);
  reduced.value.points.forEach((point, i) => {
    expect(Math.abs(point.flow_m3_s - flows[i]!)).toBeLessThan(1e-9 * flows[i]! + 1e-15);
    expect(Math.abs(point.pressure_Pa / pressureAt(flows[i]!) - 1)).toBeLessThan(1e-9);
  });
}

/** On the inlet side the tap shows what the fan makes, less the friction behind the tap, plus the speed of the air. */
const inletTap = (pipe: Pipe, q: number) =>
  -(fanStatic(q) - frictionIn(pipe, pipe.toBlower_m, q) + velocityPressureIn(pipe, q));

describe('a rig with a known fan gives the fan back', () => {
  const holes = [0.04, 0.06, 0.08, 0.1, 0.12, 0.144];
  const enlargement = (hole: number, q: number) =>
    HALF_RHO * (q / (0.6 * (Math.PI / 4) * hole ** 2) - speedIn(PIPE, q)) ** 2;

  it('holes in a cap, far tap, shut-off and cap off among them', () => {
    const flows = holes.map((hole) =>
      meets((q) => enlargement(hole, q) + frictionIn(PIPE, PIPE.toTap_m + PIPE.toBlower_m, q)),
    );
    const open = meets((q) => 0.93 * velocityPressureIn(PIPE, q) + frictionIn(PIPE, PIPE.toTap_m + PIPE.toBlower_m, q));
    const rows: Row[] = [
      { orificeDiameter_m: 0, staticPressure_Pa: -2000 },
      ...holes.map((hole, i) => ({
        orificeDiameter_m: hole,
        staticPressure_Pa: -(
          enlargement(hole, flows[i]!) +
          velocityPressureIn(PIPE, flows[i]!) +
          frictionIn(PIPE, PIPE.toTap_m, flows[i]!)
        ),
      })),
      {
        orificeDiameter_m: D,
        staticPressure_Pa: -(1.93 * velocityPressureIn(PIPE, open) + frictionIn(PIPE, PIPE.toTap_m, open)),
      },
    ];
    expectRecovered({ method: 'orifice-cap', pipeDiameter_m: D, tap: 'far' }, rows, [0, ...flows, open]);
    expect(Math.max(...flows)).toBeGreaterThan(2 * Math.min(...flows));
  });

  it('holes in a cap, near tap', () => {
    const flows = holes.map((hole) => meets((q) => enlargement(hole, q) + frictionIn(PIPE, PIPE.toBlower_m, q)));
    const rows = holes.map((hole, i) => ({
      orificeDiameter_m: hole,
      staticPressure_Pa: -HALF_RHO * (flows[i]! / (0.6 * (Math.PI / 4) * hole ** 2)) ** 2,
    }));
    expectRecovered({ method: 'orifice-cap', pipeDiameter_m: D, tap: 'near' }, rows, flows);
  });

  it('a cap on the outlet gives total pressure', () => {
    const flows = [0.1, 0.25, 0.4];
    const total = (q: number) => fanStatic(q) + velocityPressureIn(PIPE, q);
    const rows = flows.map((q) => {
      const staticPressure_Pa = total(q) - velocityPressureIn(PIPE, q) - frictionIn(PIPE, PIPE.toBlower_m, q);
      return { staticPressure_Pa, orificeDiameter_m: holeOnOutlet(q, staticPressure_Pa) };
    });
    expectRecovered({ method: 'orifice-cap', side: 'outlet', pipeDiameter_m: D }, rows, flows, total);
  });

  const flows = [0.12, 0.25, 0.38, 0.5];

  it('pitot traverse, round and rectangular, with an uneven profile', () => {
    const profile = [0.7, 0.9, 1.1, 1.3];
    const rows = (pipe: Pipe) =>
      flows.map((q) => ({
        staticPressure_Pa: inletTap(pipe, q),
        velocityPressures_Pa: profile.map((share) => HALF_RHO * (share * speedIn(pipe, q)) ** 2),
      }));
    expectRecovered({ method: 'pitot-traverse', pipeDiameter_m: D }, rows(PIPE), flows);
    const hydraulic = (2 * 0.15 * 0.2) / 0.35;
    const channel: Pipe = { diameter_m: hydraulic, area_m2: 0.03, toTap_m: 8 * hydraulic, toBlower_m: 1.5 * hydraulic };
    expectRecovered({ method: 'pitot-traverse', width_m: 0.15, height_m: 0.2 }, rows(channel), flows);
  });

  it('vane traverse', () => {
    const rows = flows.map((q) => ({
      staticPressure_Pa: inletTap(PIPE, q),
      velocities_m_s: [0.8, 1.2, 1].map((share) => share * speedIn(PIPE, q)),
    }));
    expectRecovered({ method: 'vane-traverse', pipeDiameter_m: D }, rows, flows);
  });

  it('filling a bag', () => {
    const rows = flows.map((q) => ({ staticPressure_Pa: inletTap(PIPE, q), fillTime_s: 4 / q }));
    expectRecovered({ method: 'bag-fill', pipeDiameter_m: D, bagVolume_m3: 4 }, rows, flows);
  });

  it('cone and bell-mouth', () => {
    const throat = 0.12;
    const area = (Math.PI / 4) * throat ** 2;
    const rows = (coefficient: (q: number) => number) =>
      flows.map((q) => ({
        staticPressure_Pa: inletTap(PIPE, q),
        throatPressure_Pa: -HALF_RHO * (q / area / coefficient(q)) ** 2,
      }));
    const reynolds = (q: number) => (AIR.density_kg_m3 * (q / area) * throat) / AIR.viscosity_Pa_s;
    const cone = rows((q) => (reynolds(q) < 300_000 ? 1 - 0.5 / reynolds(q) ** 0.2 : 0.96));
    expectRecovered({ method: 'conical-inlet', pipeDiameter_m: D, throatDiameter_m: throat }, cone, flows);
    expectRecovered(
      { method: 'bell-mouth', pipeDiameter_m: D, throatDiameter_m: throat },
      rows(() => 0.99),
      flows,
    );
  });

  it('every method is tried here or against the standard’s own numbers', () => {
    const tried = [
      'orifice-cap',
      'pitot-traverse',
      'conical-inlet',
      'bell-mouth',
      'vane-traverse',
      'bag-fill',
      'orifice-in-pipe',
    ];
    expect(METHODS.map((m) => m.method).sort()).toEqual(tried.sort());
  });
});

/** Hole that passes a flow at a pressure before the cap, found by halving: p_s = ρ/2·[(Q/(Cc·a))² − (Q/A)²]. */
function holeOnOutlet(q: number, pressure_Pa: number): number {
  let [low, high] = [0.01, 0.9 * D];
  for (let i = 0; i < 200; i++) {
    const hole = (low + high) / 2;
    const beta = hole / D;
    const contraction = (0.6 * 1.622) / (1 + 0.622 * (1 - 0.215 * beta ** 2 - 0.785 * beta ** 5));
    const needed = HALF_RHO * ((q / (contraction * (Math.PI / 4) * hole ** 2)) ** 2 - speedIn(PIPE, q) ** 2);
    if (needed > pressure_Pa) low = hole;
    else high = hole;
  }
  return (low + high) / 2;
}
