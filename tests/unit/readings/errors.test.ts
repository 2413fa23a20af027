import { describe, expect, it } from 'vitest';
import { siteAir } from '../../../src/air/index.ts';
import {
  DOUBTS,
  FLOW_DOUBT,
  METHODS,
  reduceReadings,
  type Effect,
  type ReadingPoint,
  type Readings,
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

describe('air at the test', () => {
  const { air: site } = siteAir({ altitude_m: 1850, airTemperature_C: 24, relativeHumidity: 0.5 });
  const densityWith = (air: Readings['air']) => {
    const reduced = reduceReadings({ kind: 'readings', rig: FAR, air, rows: [ROW] }, site, '/e');
    return reduced.ok ? { density: reduced.value.points[0]!.airDensity_kg_m3, warnings: reduced.warnings } : null;
  };

  it('is the site’s where the readings say nothing', () => {
    expect(densityWith(null)!.density).toBe(site.density_kg_m3);
  });

  it('takes temperature, barometer and humidity from the readings', () => {
    const given = { temperature_C: 30, barometricPressure_Pa: 80_000, relativeHumidity: 0.3 };
    const { air } = siteAir({ airTemperature_C: 30, barometricPressure_Pa: 80_000, relativeHumidity: 0.3 });
    expect(densityWith(given)).toEqual({ density: air.density_kg_m3, warnings: [] });
  });

  it('a barometer alone scales the site’s air', () => {
    expect(densityWith({ barometricPressure_Pa: 0.98 * site.pressure_Pa })!.density).toBeCloseTo(
      0.98 * site.density_kg_m3,
      12,
    );
  });

  it('a barometer brought to sea level is asked about', () => {
    expect(densityWith({ barometricPressure_Pa: 101_300 })!.warnings).toEqual([
      {
        code: 'barometer-not-at-site',
        path: '/e/air/barometricPressure_Pa',
        text: "The shop's own air has about 810 hPa. Weather reports give the pressure brought to sea level: read the barometer where the test is made.",
      },
    ]);
  });
});

describe('readings worth a second look', () => {
  const warningsOf = (rig: Rig, ...rows: Row[]) => {
    const reduced = reduceReadings({ kind: 'readings', rig, rows }, AIR, '/e');
    return reduced.ok ? reduced.warnings : [];
  };
  const pitot: Rig = { method: 'pitot-traverse', pipeDiameter_m: 0.2 };

  it('suction smaller than the air’s own speed makes', () => {
    expect(warningsOf(pitot, { staticPressure_Pa: -60, velocityPressures_Pa: [100, 100] })).toEqual([
      {
        code: 'suction-too-small',
        path: '/e/rows/0/staticPressure_Pa',
        text: "60 Pa at the tap is less than the air's own speed makes (100 Pa). Was one leg of the tube read, or is a diameter wrong?",
      },
    ]);
  });

  it('a minus on some rows only', () => {
    const row = (staticPressure_Pa: number) => ({ staticPressure_Pa, velocityPressures_Pa: [100] });
    expect(warningsOf(pitot, row(-900), row(900), row(-800))).toEqual([
      {
        code: 'sign-doubtful',
        path: '/e/rows/1/staticPressure_Pa',
        text: 'Some rows have a minus and some have none. On the inlet side all are taken as suction.',
      },
    ]);
    expect(warningsOf(pitot, row(900), row(800))).toEqual([]);
  });

  it('a bag that fills too fast, a cone too slow, a plate beyond its standard, taps not named, strong suction', () => {
    expect(
      warningsOf(
        { method: 'bag-fill', pipeDiameter_m: 0.2, bagVolume_m3: 0.4 },
        { staticPressure_Pa: -900, fillTime_s: 3 },
      ),
    ).toEqual([
      {
        code: 'bag-too-fast',
        path: '/e/rows/0/fillTime_s',
        text: 'The bag was full in 3 s: below 5 s the flow can hardly be told. Use a larger bag.',
      },
    ]);
    expect(
      warningsOf(
        { method: 'conical-inlet', throatDiameter_m: 0.05 },
        { staticPressure_Pa: -900, throatPressure_Pa: -10 },
      )[0],
    ).toMatchObject({
      code: 'outside-standard',
      text: expect.stringMatching(
        /^The air in the cone is too slow for its formula \(Reynolds number \d+, 20,000 needed\): the flow is less sure\.$/,
      ),
    });
    const plate: Rig = { method: 'orifice-in-pipe', pipeDiameter_m: 0.2, tappings: 'corner' };
    expect(
      warningsOf(plate, { staticPressure_Pa: -900, orificeDiameter_m: 0.156, differentialPressure_Pa: 300 })[0]!.text,
    ).toBe('The hole is 0.78 of the pipe; the standard vouches for 0.1 to 0.75. The flow is less sure.');
    expect(
      warningsOf(
        { ...plate, tappings: null },
        { staticPressure_Pa: -900, orificeDiameter_m: 0.1, differentialPressure_Pa: 300 },
      ),
    ).toEqual([
      {
        code: 'tappings-assumed',
        path: '/e/rig/tappings',
        text: 'It is not said where the taps of the plate are: corner taps are taken. The difference is below 2 %.',
      },
    ]);
    expect(warningsOf(FAR, { staticPressure_Pa: -6000, orificeDiameter_m: 0.1 })).toEqual([
      {
        code: 'compressible',
        path: '/e/rows/0/staticPressure_Pa',
        text: 'The pressure is more than a twentieth of the air’s own: the air thins on its way, and the flow is a few percent off.',
      },
    ]);
  });

  it('readings of nothing give numbers, never NaN', () => {
    const zeros: Row = {
      staticPressure_Pa: 0,
      orificeDiameter_m: 0.1,
      throatPressure_Pa: 0,
      differentialPressure_Pa: 0,
      velocityPressures_Pa: [0, 0],
      velocities_m_s: [0],
      fillTime_s: 0.01,
    };
    for (const { method } of METHODS) {
      for (const side of ['inlet', 'outlet'] as const) {
        const rig: Rig = {
          method,
          side,
          pipeDiameter_m: 0.2,
          throatDiameter_m: 0.15,
          bagVolume_m3: 1,
          tappings: 'flange',
          tap: 'near',
        };
        const point = pointOf(rig, zeros);
        const numbers = [point, ...point.shared, ...point.own].flatMap((o) => [o.flow_m3_s, o.pressure_Pa]);
        expect(numbers.every(Number.isFinite), `${method} ${side}`).toBe(true);
      }
    }
  });
});
