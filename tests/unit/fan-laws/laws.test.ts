import { describe, expect, it } from 'vitest';
import { FAMILY } from '../../../src/fan/families.ts';
import {
  dimensionlessUnits,
  fanScale,
  scaleFanPoint,
  tipSpeed,
  totalFromStatic,
  velocityPressure,
} from '../../../src/fan/laws.ts';
import { highestSafeSpeed, tipSpeedCheck } from '../../../src/fan/tip-speed.ts';

const state = { speed_rpm: 2000, airDensity_kg_m3: 1.2 };

describe('fan laws by hand', () => {
  it('half the speed: half the flow, a quarter of the pressure, an eighth of the power', () => {
    const point = { flow_m3_s: 0.4, pressure_Pa: 1600, shaftPower_W: 1200 };
    expect(scaleFanPoint(point, state, { ...state, speed_rpm: 1000 })).toEqual({
      flow_m3_s: 0.2,
      pressure_Pa: 400,
      shaftPower_W: 150,
    });
  });

  it('keeps unknown power unknown', () => {
    expect(scaleFanPoint({ flow_m3_s: 1, pressure_Pa: 1, shaftPower_W: null }, state, state).shaftPower_W).toBeNull();
    expect(scaleFanPoint({ flow_m3_s: 1, pressure_Pa: 1 }, state, state).shaftPower_W).toBeUndefined();
  });

  it('velocity pressure: 20 m/s in air of 1.2 is 240 Pa', () => {
    expect(velocityPressure(0.2, 0.01, 1.2)).toBeCloseTo(240, 9);
    expect(totalFromStatic(1000, { flow_m3_s: 0.2, outletArea_m2: 0.01, airDensity_kg_m3: 1.2 })).toBeCloseTo(1240, 9);
  });

  it('efficiency is φ·ψ/λ', () => {
    const unit = dimensionlessUnits({ speed_rpm: 2850, diameter_m: 0.45, airDensity_kg_m3: 0.943 });
    const [phi, psi, lambda] = [0.3 / unit.flow_m3_s, 1300 / unit.pressure_Pa, 1000 / unit.power_W];
    expect((phi * psi) / lambda).toBeCloseTo((0.3 * 1300) / 1000, 12);
  });

  it('throws at a programmer’s mistake', () => {
    expect(() => fanScale({ ...state, speed_rpm: 0 }, state)).toThrow(
      'speed_rpm: expected a positive number, received 0',
    );
    expect(() => fanScale(state, { ...state, diameter_m: 0.4 })).toThrow(
      'diameter_m: expected in both states or in neither, received undefined and 0.4',
    );
    expect(() => velocityPressure(1, 0, 1.2)).toThrow('area_m2: expected a positive number, received 0');
    expect(() => tipSpeed(Number.NaN, 1000)).toThrow('diameter_m: expected a positive number, received NaN');
  });
});

describe('tip speed against what a wheel stands', () => {
  it('refuses a 12 in squirrel cage on 2850 min⁻¹: 45 m/s, the family ends at 40', () => {
    const check = tipSpeedCheck({ family: 'forward-curved', diameter_m: 0.3048 }, 2850);
    expect(check.value).toBeCloseTo(45.5, 1);
    expect(check).toMatchObject({ limit: 20, unit: 'm/s', ok: false, probability: 0, verdict: 'no' });
  });

  it('passes below the low figure, doubts between, and lets a known safe speed win', () => {
    const wheel = { family: 'radial', diameter_m: 0.4 } as const;
    expect(tipSpeedCheck(wheel, 2800)).toMatchObject({ ok: true, probability: 1, verdict: 'yes' });
    const between = tipSpeedCheck(wheel, 4000);
    expect(between).toMatchObject({ ok: false, verdict: 'unsure', limit: FAMILY.radial.tipSpeedLimit_m_s[0] });
    expect(between.probability).toBeCloseTo((130 - Math.PI * 0.4 * (4000 / 60)) / 70, 12);
    expect(tipSpeedCheck({ ...wheel, safeTipSpeed_m_s: 50 }, 2800)).toMatchObject({
      limit: 50,
      ok: false,
      verdict: 'no',
    });
  });

  it('says nothing where size or speed is unknown, and takes an unknown family as the weakest', () => {
    expect(tipSpeedCheck({ family: 'radial' }, 2800)).toMatchObject({
      value: null,
      ok: null,
      probability: null,
      verdict: null,
    });
    expect(tipSpeedCheck({ family: 'radial', diameter_m: 0.4 }, null).verdict).toBeNull();
    expect(tipSpeedCheck({ family: 'unknown', diameter_m: 0.3 }, 1000).verdict).toBe('yes');
    expect(tipSpeedCheck({ family: 'unknown', diameter_m: 0.3 }, 2850).verdict).toBe('no');
  });

  it('names the highest speed that passes', () => {
    const wheel = { family: 'backward-curved', diameter_m: 0.35 } as const;
    const speed = highestSafeSpeed(wheel)!;
    expect(tipSpeed(0.35, speed)).toBeCloseTo(60, 9);
    expect(highestSafeSpeed({ family: 'radial' })).toBeNull();
  });
});
