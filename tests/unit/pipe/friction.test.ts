import { describe, expect, test } from 'vitest';
import {
  blendedFriction,
  blendEnd,
  colebrookInverseRoot,
  colebrookReynoldsExponent,
  colebrookRoughnessExponent,
  darcyFrictionFactor,
  straightPipeLoss,
} from '../../../src/pipe/index.ts';

const logSlope = (f: (x: number) => number, x: number) =>
  (Math.log(f(x * 1.0001)) - Math.log(f(x / 1.0001))) / (2 * Math.log(1.0001));

describe('darcyFrictionFactor', () => {
  test('by hand: the answer satisfies Colebrook', () => {
    const f = darcyFrictionFactor(1e5, 1e-4);
    expect(f).toBeCloseTo(0.018514, 6);
    expect(1 / Math.sqrt(f)).toBeCloseTo(-2 * Math.log10(1e-4 / 3.7 + 2.51 / (1e5 * Math.sqrt(f))), 9);
  });

  test('joins without a step or a kink at 2000 and 4000, and the loss rises throughout', () => {
    for (const roughness of [0, 1e-3, 0.05, 0.3]) {
      for (const joint of [2000, 4000]) {
        const [below, above] = [
          darcyFrictionFactor(joint * (1 - 1e-9), roughness),
          darcyFrictionFactor(joint * (1 + 1e-9), roughness),
        ];
        expect(Math.abs(above / below - 1)).toBeLessThan(1e-7);
        const at = (re: number) => darcyFrictionFactor(re, roughness);
        expect(Math.abs(logSlope(at, joint * 1.0002) - logSlope(at, joint / 1.0002))).toBeLessThan(0.01);
      }
      let before = 0;
      for (let re = 1000; re < 6000; re += 10) {
        const loss = darcyFrictionFactor(re, roughness) * re * re;
        expect(loss).toBeGreaterThan(before);
        before = loss;
      }
    }
  });

  test.each([0, -1, NaN, Infinity])('refuses Reynolds number %s', (reynolds) => {
    expect(() => darcyFrictionFactor(reynolds, 0)).toThrow(
      `darcyFrictionFactor: reynolds must be finite and above 0, received ${reynolds}`,
    );
  });

  test.each([-0.1, 1.1, NaN])('refuses relative roughness %s', (roughness) => {
    expect(() => darcyFrictionFactor(1e5, roughness)).toThrow(
      `darcyFrictionFactor: relativeRoughness must be within 0..1, received ${roughness}`,
    );
  });
});

describe('Colebrook by 1/√f', () => {
  test.each([0.01, 1, 7, 50, 1e6])('any start leads to the root: %s', (guess) => {
    const x = colebrookInverseRoot(1e-3 / 3.7, 2.51 / 1e5, guess);
    expect(1 / (x * x)).toBeCloseTo(darcyFrictionFactor(1e5, 1e-3), 10);
  });

  test('exponents are the slopes of the factor', () => {
    for (const [re, rough] of [
      [5e3, 1e-5],
      [1e5, 1e-3],
      [1e6, 0.03],
    ] as const) {
      const x = colebrookInverseRoot(rough / 3.7, 2.51 / re, 7);
      const byReynolds = logSlope((r) => darcyFrictionFactor(r, rough), re);
      const byRoughness = logSlope((r) => darcyFrictionFactor(re, r), rough);
      expect(colebrookReynoldsExponent(rough / 3.7, 2.51 / re, x)).toBeCloseTo(byReynolds, 5);
      expect(colebrookRoughnessExponent(rough / 3.7, 2.51 / re, x)).toBeCloseTo(byRoughness, 5);
    }
  });

  test('the blend reports its own slope', () => {
    const end = blendEnd(1e-3);
    for (const re of [2100, 2800, 3900]) {
      expect(blendedFriction(re, end).exponent).toBeCloseTo(
        logSlope((r) => Math.exp(blendedFriction(r, end).logF), re),
        6,
      );
    }
  });
});

describe('straightPipeLoss', () => {
  const air = { density_kg_m3: 1.2, viscosity_Pa_s: 1.8e-5 };
  const pipe = { length_m: 3, diameter_m: 0.1, roughness_m: 1e-4 };

  test('f·L/D·ρ/2·v², by hand at 20 m/s', () => {
    const flow = 20 * (Math.PI / 4) * 0.01;
    const f = darcyFrictionFactor((1.2 * 20 * 0.1) / 1.8e-5, 1e-3);
    expect(straightPipeLoss(pipe, flow, air)).toBeCloseTo(f * 30 * 240, 9);
  });

  test('nothing is lost without flow or without length', () => {
    expect(straightPipeLoss(pipe, 0, air)).toBe(0);
    expect(straightPipeLoss({ ...pipe, length_m: 0 }, 0.1, air)).toBe(0);
  });

  test('refuses a negative flow', () => {
    expect(() => straightPipeLoss(pipe, -0.1, air)).toThrow(
      'straightPipeLoss: flow_m3_s must be finite and not below 0, received -0.1',
    );
  });
});
