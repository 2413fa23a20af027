import { describe, expect, it } from 'vitest';
import {
  DOUBTS,
  FLOW_DOUBT,
  METHODS,
  reduceReadings,
  type Effect,
  type ReadingPoint,
  type Rig,
  type Row,
} from '../../../src/readings/index.ts';
import { readingStep } from '../../../src/readings/uncertainty.ts';
import { AIR } from './rig.ts';

const FAR: Rig = { method: 'orifice-cap', pipeDiameter_m: 0.2, tap: 'far', lengthTapToBlower_m: 0.3 };
const ROW: Row = {
  staticPressure_Pa: -1234,
  orificeDiameter_m: 0.1,
  speed_rpm: 2850,
  current_A: 4,
  voltage_V: 400,
  inputPower_W: 1500,
};

function pointOf(rig: Rig, row: Row, path = '/e'): ReadingPoint {
  const reduced = reduceReadings({ kind: 'readings', rig, rows: [row] }, AIR, path);
  if (!reduced.ok) throw new Error(JSON.stringify(reduced.issues));
  return reduced.value.points[0]!;
}
const named = (effects: readonly Effect[], name: string): Effect => {
  const found = effects.find((e) => e.error === name || e.error.endsWith(`/${name}`));
  if (!found) throw new Error(`no error called ${name} among ${effects.map((e) => e.error).join(', ')}`);
  return found;
};

describe('errors that rows share', () => {
  const point = pointOf(FAR, ROW);

  it('a larger flow coefficient means more flow and, through the velocity pressure, less static pressure', () => {
    const effect = named(point.shared, 'flow-coefficient');
    expect(effect.flow_m3_s / point.flow_m3_s).toBeCloseTo(0.025, 9);
    expect(effect.pressure_Pa).toBeLessThan(0);
  });

  it('a manometer that reads high gives more of both: pressure by its share, flow by half of it', () => {
    const effect = named(point.shared, 'manometer-scale');
    expect(effect.flow_m3_s / point.flow_m3_s).toBeCloseTo(0.004, 4);
    expect(effect.pressure_Pa / point.pressure_Pa).toBeCloseTo(0.008, 4);
  });

  it('air believed too heavy gives too little flow, and too little pressure once brought to other air', () => {
    const effect = named(point.shared, 'rig-air-density');
    expect(effect.flow_m3_s / point.flow_m3_s).toBeCloseTo(-0.0025, 4);
    expect(effect.pressure_Pa / point.pressure_Pa).toBeCloseTo(-0.005, 4);
  });

  it('more friction before the tap leaves less of the reading for flow; behind it, more pressure for the blower', () => {
    const wide = pointOf(FAR, { ...ROW, staticPressure_Pa: -500, orificeDiameter_m: 0.17 });
    const effect = named(wide.shared, 'rig-friction');
    expect(effect.flow_m3_s).toBeLessThan(0);
    expect(effect.pressure_Pa).toBeGreaterThan(0);
  });

  it('a wider pipe carries less velocity pressure: more static pressure is left, pitot flow grows with the area', () => {
    expect(named(point.shared, 'pipe-diameter').pressure_Pa).toBeGreaterThan(0);
    const pitot = pointOf(
      { method: 'pitot-traverse', pipeDiameter_m: 0.2 },
      { staticPressure_Pa: -900, velocityPressures_Pa: [100, 120] },
    );
    expect(named(pitot.shared, 'pipe-diameter').flow_m3_s / pitot.flow_m3_s).toBeCloseTo(0.01, 4);
  });

  it('only errors that are felt are listed, and their names keep two rigs apart', () => {
    expect(point.shared.map((e) => e.error)).toEqual(
      ['flow-coefficient', 'manometer-scale', 'rig-air-density', 'pipe-diameter', 'rig-friction'].map((e) => `/e/${e}`),
    );
    const other = pointOf(FAR, ROW, '/other').shared.map((e) => e.error);
    expect(other.some((name) => point.shared.some((e) => e.error === name))).toBe(false);
    const shutOff = pointOf(FAR, { ...ROW, orificeDiameter_m: 0 });
    expect(shutOff.shared.map((e) => e.error)).toEqual(['/e/manometer-scale', '/e/rig-air-density']);
  });

  it('a cap on the outlet is less sure, a given doubt of the flow wins', () => {
    const flow = (rig: Rig, row: Row) => {
      const p = pointOf(rig, row);
      return named(p.shared, 'flow-coefficient').flow_m3_s / p.flow_m3_s;
    };
    expect(flow({ ...FAR, side: 'outlet' }, { ...ROW, staticPressure_Pa: 900 })).toBeCloseTo(0.045, 6);
    expect(flow({ ...FAR, uncertainty: { flowRelative: 0.01 } }, ROW)).toBeCloseTo(0.01, 6);
  });

  it('a near tap with no length given leaves the friction wide open', () => {
    const near: Rig = { method: 'orifice-cap', pipeDiameter_m: 0.2, tap: 'near' };
    const row = { staticPressure_Pa: -600, orificeDiameter_m: 0.16 };
    const guessed = named(pointOf(near, row).shared, 'rig-friction').pressure_Pa;
    const given = named(pointOf({ ...near, lengthTapToBlower_m: 0.3 }, row).shared, 'rig-friction').pressure_Pa;
    expect(guessed / given).toBeCloseTo(2 / 0.3, 6);
  });
});

describe('errors of a row alone', () => {
  it('reading: step, eye and half a percent; the tap of a cap gives flow as well', () => {
    const point = pointOf(FAR, ROW);
    const sd = Math.hypot(1 / Math.sqrt(12), 4, 0.005 * 1234);
    const effect = named(point.own, 'manometer-reading');
    expect(effect.pressure_Pa / point.pressure_Pa).toBeCloseTo(sd / 1234, 4);
    expect(effect.flow_m3_s / point.flow_m3_s).toBeCloseTo(sd / 1234 / 2, 4);
    const told = pointOf({ ...FAR, uncertainty: { pressure_Pa: 25 } }, ROW);
    expect(named(told.own, 'manometer-reading').pressure_Pa / told.pressure_Pa).toBeCloseTo(25 / 1234, 4);
  });

  it('steps people read to are seen in their numbers', () => {
    expect(readingStep([1000, 850, 400, 50])).toBe(50);
    expect(readingStep([1000, 860, 430, 50])).toBe(10);
    expect(readingStep([150, 131, 88].map((mm) => mm * 9.80665))).toBeCloseTo(9.80665, 9);
    expect(readingStep([150, 130, 85].map((mm) => mm * 9.80665))).toBeCloseTo(5 * 9.80665, 9);
    expect(readingStep([1003, 861.5, 433])).toBe(1);
    expect(readingStep([1000, 500])).toBe(1);
  });

  it('hole: 0.3 mm on its diameter, so a small hole is less sure; none where the doubt of the flow is given', () => {
    const share = (hole: number) => {
      const p = pointOf(FAR, { ...ROW, orificeDiameter_m: hole });
      return named(p.own, 'hole').flow_m3_s / p.flow_m3_s;
    };
    expect(share(0.03)).toBeCloseTo(0.02, 3);
    expect(share(0.03)).toBeGreaterThan(2 * share(0.075));
    expect(pointOf({ ...FAR, uncertainty: { flowRelative: 0.01 } }, ROW).own.map((e) => e.error)).toEqual([
      'manometer-reading',
      'speed',
    ]);
  });

  it('speed: 0.25 % where measured, 0.4 % where not, else as told; twice as much on pressure', () => {
    const speed = (rig: Rig, row: Row) => {
      const p = pointOf(rig, row);
      const e = named(p.own, 'speed');
      return [e.flow_m3_s / p.flow_m3_s, e.pressure_Pa / p.pressure_Pa];
    };
    expect(speed(FAR, ROW)).toEqual([expect.closeTo(-0.0025, 9), expect.closeTo(-0.005, 9)]);
    expect(speed(FAR, { ...ROW, speed_rpm: null })).toEqual([expect.closeTo(-0.004, 9), expect.closeTo(-0.008, 9)]);
    expect(speed({ ...FAR, uncertainty: { speed_rpm: 28.5 } }, ROW)).toEqual([
      expect.closeTo(-0.01, 9),
      expect.closeTo(-0.02, 9),
    ]);
  });

  it('many pitot or anemometer points average their own errors away, not the shared one', () => {
    const pitot = (count: number) =>
      pointOf(
        { method: 'pitot-traverse', pipeDiameter_m: 0.2 },
        { staticPressure_Pa: -900, velocityPressures_Pa: Array(count).fill(100) },
      );
    expect(
      named(pitot(4).own, 'velocity-pressures').flow_m3_s / named(pitot(16).own, 'velocity-pressures').flow_m3_s,
    ).toBeCloseTo(2, 6);
    expect(named(pitot(4).shared, 'flow-coefficient').flow_m3_s).toBeCloseTo(
      named(pitot(16).shared, 'flow-coefficient').flow_m3_s,
      12,
    );
    const vane = pointOf(
      { method: 'vane-traverse', pipeDiameter_m: 0.2 },
      { staticPressure_Pa: -900, velocities_m_s: [10, 10, 10, 10] },
    );
    expect(named(vane.own, 'velocities').flow_m3_s / vane.flow_m3_s).toBeCloseTo(0.01, 6);
  });

  it('a bag: 0.2 s a fill', () => {
    const bag = pointOf(
      { method: 'bag-fill', pipeDiameter_m: 0.2, bagVolume_m3: 1.6 },
      { staticPressure_Pa: -900, fillTime_s: 10 },
    );
    expect(named(bag.own, 'fill-time').flow_m3_s / bag.flow_m3_s).toBeCloseTo(-0.02, 4);
  });

  it('meters carry their own and their shared doubt', () => {
    const { electrical } = pointOf({ ...FAR, uncertainty: { current_A: 0.08 } }, ROW);
    expect(electrical).toEqual({
      current_A: { value: 4, ownRelativeSd: 0.02, shared: { error: '/e/clamp-meter', relativeSd: 0.015 } },
      voltage_V: { value: 400, ownRelativeSd: 0.005, shared: { error: '/e/volt-meter', relativeSd: 0.01 } },
      inputPower_W: { value: 1500, ownRelativeSd: 0.012, shared: { error: '/e/watt-meter', relativeSd: 0.012 } },
    });
    expect(pointOf(FAR, { staticPressure_Pa: -9, orificeDiameter_m: 0.1 }).electrical.current_A).toBeNull();
  });

  it('every method has a doubt with its ground', () => {
    for (const { method } of METHODS) expect(FLOW_DOUBT[method].ground.length).toBeGreaterThan(10);
    for (const doubt of Object.values(DOUBTS)) expect(doubt.sd).toBeGreaterThan(0);
  });
});
