import { describe, expect, test } from 'vitest';
import {
  compileNetwork,
  LOSS_PARTS,
  pressureBudget,
  solveAtFlow,
  totalLoss_Pa,
  worstPickup,
  type Ductwork,
} from '../../../src/duct/index.ts';

const air = { density_kg_m3: 1.2, viscosity_Pa_s: 1.8e-5, pressure_Pa: 101325 };
const shop = (required: [number | null, number | null]): Ductwork => ({
  sections: [
    {
      id: 'saw',
      into: 'main',
      pickup: { requiredFlow_m3_s: required[0] },
      elements: [
        { kind: 'entry', entry: 'machine-port', diameter_m: 0.1 },
        { kind: 'pipe', surface: 'flexible-hose', length_m: 1.5, diameter_m: 0.1 },
        { kind: 'fitting', fitting: 'hose-bend-90', diameter_m: 0.1 },
        { kind: 'branch-entry', angle_deg: 45, diameter_m: 0.1 },
      ],
    },
    {
      id: 'planer',
      into: 'main',
      pickup: { requiredFlow_m3_s: required[1] },
      gate: {},
      elements: [{ kind: 'entry', entry: 'plain', diameter_m: 0.125 }],
    },
    {
      id: 'main',
      into: 'blower',
      elements: [
        { kind: 'pipe', surface: 'drain-pipe', length_m: 6, diameter_m: 0.15 },
        { kind: 'fitting', fitting: 'elbow-90', radiusRatio: 1.5, count: 2, diameter_m: 0.15 },
        { kind: 'cyclone', inletDiameter_m: 0.15, k: 4 },
      ],
    },
  ],
  discharge: [
    { kind: 'pipe', surface: 'galvanised-duct', length_m: 2, diameter_m: 0.15 },
    { kind: 'filters', count: 4, each: { cleanFlow_m3_s: 0.1, cleanPressure_Pa: 250, exponent: 1.5 } },
    { kind: 'exit', diameter_m: 0.3 },
  ],
});
const solve = (ductwork: Ductwork, open: string[]) =>
  solveAtFlow(compileNetwork(ductwork, { air, open, filterState: 'clean', outletArea_m2: 0.02 }), 0.4);

describe('pressure budget', () => {
  const state = solve(shop([0.2, 0.2]), ['planer']);
  const budget = pressureBudget(state)!;
  const part = (name: string) => budget.parts.find((each) => each.part === name)!.pressure_Pa;

  test('adds up to the whole loss, whichever machine it starts at', () => {
    for (const pickup of [0, 1]) {
      const sum = pressureBudget(state, pickup)!.parts.reduce((total, { pressure_Pa }) => total + pressure_Pa, 0);
      expect(Math.abs(sum / totalLoss_Pa(state) - 1)).toBeLessThan(1e-7);
    }
  });

  test('all parts are there, in order, each with what belongs to it', () => {
    expect(budget.parts.map((each) => each.part)).toEqual(LOSS_PARTS);
    for (const name of LOSS_PARTS) expect(part(name), name).toBeGreaterThan(0);
    expect(part('filters')).toBeCloseTo(250, 9);
    const velocity = 0.4 / ((Math.PI / 4) * 0.15 ** 2);
    expect(part('cyclone')).toBeCloseTo((4 * 1.2 * velocity ** 2) / 2, 9);
    expect(part('bends')).toBeCloseTo((2 * 0.225404 * 1.2 * velocity ** 2) / 2, 4);
  });

  test('a bare outlet is the way out', () => {
    const free = solve({ ...shop([null, null]), discharge: [] }, ['planer']);
    expect(pressureBudget(free)!.parts.at(-1)).toEqual({
      part: 'way-out',
      pressure_Pa: expect.closeTo(0.6 * 20 ** 2, 9),
    });
  });
});

describe('the worst machine', () => {
  test('gets least of what it needs', () => {
    expect(pressureBudget(solve(shop([0.01, 0.4]), ['planer']))!.pickupId).toBe('planer');
    expect(pressureBudget(solve(shop([0.4, 0.01]), ['planer']))!.pickupId).toBe('saw');
    expect(pressureBudget(solve(shop([null, 0.01]), ['planer']))!.pickupId).toBe('planer');
  });

  test('or has the least flow, where nothing is asked for', () => {
    expect(pressureBudget(solve(shop([null, null]), ['planer']))!.pickupId).toBe('saw');
  });

  test('is an open one, and there is none when all are shut', () => {
    const gated = {
      sections: shop([1, 1]).sections.map((section) => ({ ...section, gate: { closedLeakArea_m2: 1e-4 } })),
    };
    expect(pressureBudget(solve(gated, ['planer']))!.pickupId).toBe('planer');
    const shut = solve(gated, []);
    expect(worstPickup(shut)).toBe(-1);
    expect(pressureBudget(shut)).toBeNull();
    expect(pressureBudget(solve(gated, ['planer']), 0)).toBeNull();
  });
});
