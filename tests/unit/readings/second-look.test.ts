import { describe, expect, it } from 'vitest';
import { siteAir } from '../../../src/air/index.ts';
import { METHODS, reduceReadings, type Readings, type Rig, type Row } from '../../../src/readings/index.ts';
import { AIR } from './rig.ts';

const FAR: Rig = { method: 'orifice-cap', pipeDiameter_m: 0.2, tap: 'far', lengthTapToBlower_m: 0.3 };
const ROW: Row = { staticPressure_Pa: -1234, orificeDiameter_m: 0.1, speed_rpm: 2850 };

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
        const reduced = reduceReadings({ kind: 'readings', rig, rows: [zeros] }, AIR, '/e');
        const points = reduced.ok ? reduced.value.points : [];
        const numbers = points.flatMap((p) => [p, ...p.shared, ...p.own]).flatMap((o) => [o.flow_m3_s, o.pressure_Pa]);
        expect(numbers.length).toBeGreaterThan(0);
        expect(numbers.every(Number.isFinite), `${method} ${side}`).toBe(true);
      }
    }
  });
});
