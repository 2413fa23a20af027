import { describe, expect, it } from 'vitest';
import {
  addedFlowDoubts,
  checkReadings,
  flowDoubt,
  FLOW_DOUBT,
  readingDoubt,
  reduceReadings,
  tubeStretch,
  type Rig,
  type Row,
} from '../../../src/readings/index.ts';
import { Readings } from '../../../src/readings/schema.ts';
import { AIR } from './rig.ts';

const VANE: Rig = { method: 'vane-traverse', pipeDiameter_m: 0.2 };
const PITOT: Rig = { method: 'pitot-traverse', pipeDiameter_m: 0.2 };
const CAP: Rig = { method: 'orifice-cap', tap: 'far', pipeDiameter_m: 0.15 };

function pointOf(rig: Rig, row: Row) {
  const reduced = reduceReadings({ kind: 'readings', rig, rows: [row] }, AIR, '/e');
  if (!reduced.ok) throw new Error(JSON.stringify(reduced.issues));
  return { point: reduced.value.points[0]!, warnings: reduced.warnings };
}
const refused = (rig: unknown): string[] => {
  const read = Readings.safeParse({ kind: 'readings', rig, rows: [] });
  return read.success
    ? checkReadings(read.data, '/e').map((issue) => `${issue.path} ${issue.message}`)
    : read.error.issues.map((issue) => `${issue.path.join('/')} ${issue.code}`);
};

describe('a hub in the middle', () => {
  it('takes its area from the air: 100 mm in 200 mm leave three quarters', () => {
    const row: Row = { staticPressure_Pa: 300, velocities_m_s: [10, 10] };
    const free = pointOf(VANE, row).point.flow_m3_s;
    expect(free).toBeCloseTo(10 * 0.0314159, 5);
    expect(pointOf({ ...VANE, hubDiameter_m: 0.1 }, row).point.flow_m3_s / free).toBeCloseTo(0.75, 9);
    const pitot: Row = { staticPressure_Pa: 300, velocityPressures_Pa: [60, 62] };
    const ratio =
      pointOf({ ...PITOT, hubDiameter_m: 0.1 }, pitot).point.flow_m3_s / pointOf(PITOT, pitot).point.flow_m3_s;
    expect(ratio).toBeCloseTo(0.75, 9);
  });

  it('makes the flow less sure, the larger the less; one that fills the pipe is refused', () => {
    const doubts = [0, 0.05, 0.1, 0.15].map((hub) => flowDoubt(hub === 0 ? PITOT : { ...PITOT, hubDiameter_m: hub }));
    expect(doubts[0]).toBe(FLOW_DOUBT['pitot-traverse'].sd);
    for (let i = 1; i < doubts.length; i++) expect(doubts[i]!).toBeGreaterThan(doubts[i - 1]!);
    expect(refused({ ...PITOT, hubDiameter_m: 0.2 })).toEqual([
      '/e/rig/hubDiameter_m A hub of 0.2 m does not go into a pipe of 0.2 m: look at both sizes.',
    ]);
    expect(refused({ ...PITOT, hubDiameter_m: 0 })).toEqual(['rig/hubDiameter_m too_small']);
  });
});

describe('an anemometer too large for its pipe', () => {
  it('is named, and its share of the area is doubted by half', () => {
    const row: Row = { staticPressure_Pa: 300, velocities_m_s: [10] };
    const { point, warnings } = pointOf({ ...VANE, anemometerDiameter_m: 0.1 }, row);
    expect(warnings).toContainEqual({
      code: 'anemometer-too-big',
      path: '/e/rig/anemometerDiameter_m',
      text: "The anemometer's head is 50 % of the pipe's width: it blocks the air it measures. Measure at a mouth or box five times as wide.",
    });
    // a quarter of the area, half of it in doubt: 0.125, beside the usual 0.05
    const flow = point.shared.find((e) => e.error.endsWith('/flow-coefficient'))!.flow_m3_s / point.flow_m3_s;
    expect(flow).toBeCloseTo(Math.hypot(0.05, 0.125), 9);
    expect(pointOf({ ...VANE, anemometerDiameter_m: 0.04 }, row).warnings).toEqual([]);
  });

  it('is refused where it does not go in', () => {
    expect(refused({ ...VANE, anemometerDiameter_m: 0.25 })[0]).toBe(
      '/e/rig/anemometerDiameter_m An anemometer of 0.25 m does not go into a pipe of 0.2 m: look at both sizes.',
    );
    expect(refused({ method: 'vane-traverse', width_m: 0.3, height_m: 0.08, anemometerDiameter_m: 0.1 })).toHaveLength(
      1,
    );
  });
});

describe('a short pipe', () => {
  it('8 diameters before and 2 after cost nothing, none cost 6 % each; in between by their share', () => {
    expect(flowDoubt({ ...PITOT, straightBefore_m: 1.6, straightAfter_m: 0.4 })).toBe(FLOW_DOUBT['pitot-traverse'].sd);
    expect(flowDoubt({ ...PITOT, straightBefore_m: 0, straightAfter_m: 0.4 })).toBeCloseTo(Math.hypot(0.035, 0.06), 9);
    expect(flowDoubt({ ...PITOT, straightBefore_m: 0.8, straightAfter_m: 0.2 })).toBeCloseTo(
      Math.hypot(0.035, 0.03, 0.03),
      9,
    );
    expect(addedFlowDoubts({ ...PITOT, straightBefore_m: 0.8 }).map((d) => [d.cause, d.ground])).toEqual([
      ['short-before', 'less than 8 diameters of straight pipe before'],
    ]);
  });

  it('a tap called far but nearer than five diameters is less sure; a plate needs its straight pipe too', () => {
    expect(flowDoubt({ ...CAP, lengthToTap_m: 0.8 })).toBe(FLOW_DOUBT['orifice-cap'].sd);
    expect(flowDoubt({ ...CAP, lengthToTap_m: 0.3 })).toBeGreaterThan(0.06);
    expect(flowDoubt({ ...CAP, tap: 'near', lengthToTap_m: 0.06 })).toBe(FLOW_DOUBT['orifice-cap'].sd);
    expect(flowDoubt({ method: 'orifice-in-pipe', pipeDiameter_m: 0.15, straightBefore_m: 0.3 })).toBeGreaterThan(
      FLOW_DOUBT['orifice-in-pipe'].sd,
    );
  });

  it('what somebody says of the flow himself wins', () => {
    expect(flowDoubt({ ...PITOT, straightBefore_m: 0, uncertainty: { flowRelative: 0.01 } })).toBe(0.01);
  });
});

describe('a tube that leans or holds another liquid', () => {
  it('stands for less pressure a length: a sixth at 9.6°, 0.8 for paraffin', () => {
    // sin 9.594° = 1/6
    expect(tubeStretch({ ...CAP, tube: { angle_deg: 9.5941 } })).toBeCloseTo(1 / 6, 5);
    expect(tubeStretch({ ...CAP, tube: { liquidDensity_kg_m3: 798.56 } })).toBeCloseTo(0.8, 4);
    expect(tubeStretch(CAP)).toBe(1);
  });

  it('is read more finely, but all its readings share the doubt of its lean', () => {
    const row: Row = { staticPressure_Pa: 120, orificeDiameter_m: 0.1 };
    const scaleOf = (rig: Rig) => {
      const { point } = pointOf(rig, row);
      return point.shared.find((e) => e.error.endsWith('/manometer-scale'))!.pressure_Pa / point.pressure_Pa;
    };
    const readingOf = (rig: Rig) => readingDoubt({ kind: 'readings', rig, rows: [row] })(120);
    const leaning: Rig = { ...CAP, tube: { angle_deg: 10 } };
    expect(readingOf(leaning)).toBeLessThan(readingOf(CAP) / 3);
    // ± 1° at 10°: 0.01008/tan 10° = 5.7 %
    expect(scaleOf(leaning) / scaleOf(CAP)).toBeCloseTo(Math.hypot(0.008, 0.01008 / Math.tan(Math.PI / 18)) / 0.008, 2);
    expect(scaleOf({ ...CAP, tube: { angle_deg: 30 } })).toBeLessThan(scaleOf(leaning));
    expect(scaleOf({ ...CAP, tube: { liquidDensity_kg_m3: 800 } })).toBeGreaterThan(scaleOf(CAP));
    expect(scaleOf({ ...CAP, tube: { angle_deg: 90 } })).toBeCloseTo(scaleOf(CAP), 9);
  });

  it('is refused flat, upside down, or filled with air', () => {
    expect(refused({ ...CAP, tube: { angle_deg: 0 } })).toEqual(['rig/tube/angle_deg too_small']);
    expect(refused({ ...CAP, tube: { angle_deg: 100 } })).toEqual(['rig/tube/angle_deg too_big']);
    expect(refused({ ...CAP, tube: { liquidDensity_kg_m3: 1.2 } })).toEqual(['rig/tube/liquidDensity_kg_m3 too_small']);
  });
});

describe('a pipe', () => {
  it('is wider outside than inside', () => {
    expect(refused({ ...CAP, pipeOutsideDiameter_m: 0.15 })).toEqual([
      "/e/rig/pipeOutsideDiameter_m A pipe of 0.15 m outside can't be 0.15 m inside: look at both diameters.",
    ]);
    expect(refused({ ...CAP, pipeOutsideDiameter_m: 0.16 })).toEqual([]);
  });
});
