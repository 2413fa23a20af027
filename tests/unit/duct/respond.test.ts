import { describe, expect, test } from 'vitest';
import {
  compileNetwork,
  DOUBT_KINDS,
  respond,
  solveAtFlow,
  totalLoss_Pa,
  type Ductwork,
  type Element,
} from '../../../src/duct/index.ts';

const air = { density_kg_m3: 0.95, viscosity_Pa_s: 1.83e-5, pressure_Pa: 81000 };
const elbow = (k: number, doubt?: number): Element => ({
  kind: 'fitting',
  fitting: 'elbow-90',
  diameter_m: 0.125,
  k,
  doubt,
});

/** Two machines into a main with a cyclone, filters behind the blower; `scale` multiplies losses by kind of doubt. */
function shop(scale: Partial<Record<(typeof DOUBT_KINDS)[number], number>> = {}): Ductwork {
  const times = (kind: (typeof DOUBT_KINDS)[number]) => scale[kind] ?? 1;
  return {
    sections: [
      {
        id: 'saw',
        into: 'main',
        pickup: {},
        elements: [
          { kind: 'entry', diameter_m: 0.1, k: 1.2 * times('entry') },
          { kind: 'fitting', fitting: 'elbow-90', diameter_m: 0.1, k: 0.3 * times('elbow'), count: 3 },
          { kind: 'pipe', length_m: 6, diameter_m: 0.1, roughness_m: 3e-5 * times('pipe-roughness') },
        ],
      },
      {
        id: 'planer',
        into: 'main',
        pickup: {},
        elements: [
          { kind: 'entry', diameter_m: 0.125, k: 0.6 * times('entry') },
          {
            kind: 'pipe',
            surface: 'flexible-hose',
            length_m: 2,
            diameter_m: 0.125,
            roughness_m: 0.002 * times('hose-roughness'),
          },
          elbow(0.25 * times('elbow')),
        ],
      },
      {
        id: 'main',
        into: 'blower',
        elements: [
          { kind: 'pipe', length_m: 4, diameter_m: 0.16, roughness_m: 1e-4 * times('pipe-roughness') },
          { kind: 'cyclone', inletDiameter_m: 0.15, k: 4 * times('cyclone') },
        ],
      },
    ],
    discharge: [
      {
        kind: 'filters',
        count: 6,
        each: { cleanFlow_m3_s: 0.1, cleanPressure_Pa: 180 * times('filters'), exponent: 1.5 },
      },
    ],
  };
}

const solve = (ductwork: Ductwork, flow_m3_s = 0.4) =>
  solveAtFlow(compileNetwork(ductwork, { air, open: [], filterState: 'clean' }), flow_m3_s);
const kinds = (values: Partial<Record<(typeof DOUBT_KINDS)[number], number>>) =>
  Float64Array.from(DOUBT_KINDS, (kind) => values[kind] ?? 0);

describe('linear response of a solved system', () => {
  const state = solve(shop());
  const response = respond(state);
  const quiet = new Float64Array(4);
  const lnFlow = new Float64Array(3);

  test.each(['entry', 'elbow', 'cyclone', 'filters'] as const)(
    'an error of all %s losses, against a full solve',
    (kind) => {
      const z = 0.3;
      const lnLoss = response.draw(kinds({ [kind]: z }), quiet, lnFlow);
      const factor = Math.exp(0.1 * Math.SQRT1_2 * z);
      const moved = solve(shop({ [kind]: factor }));
      expect(lnLoss).toBeGreaterThan(0);
      expect(Math.abs(lnLoss - Math.log(totalLoss_Pa(moved) / totalLoss_Pa(state)))).toBeLessThan(0.02 * lnLoss);
      for (let i = 0; i < 3; i++) {
        const exact = Math.log(moved.sectionFlow_m3_s[i]! / state.sectionFlow_m3_s[i]!);
        expect(Math.abs(lnFlow[i]! - exact)).toBeLessThan(0.03 * Math.abs(exact) + 1e-9);
      }
    },
  );

  test.each(['pipe-roughness', 'hose-roughness'] as const)(
    'an error of %s acts through the friction factor',
    (kind) => {
      const z = 0.2;
      const lnLoss = response.draw(kinds({ [kind]: z }), quiet, lnFlow);
      const moved = solve(shop({ [kind]: Math.exp(0.3 * Math.SQRT1_2 * z) }));
      const exact = Math.log(totalLoss_Pa(moved) / totalLoss_Pa(state));
      expect(exact).toBeGreaterThan(0);
      expect(Math.abs(lnLoss - exact)).toBeLessThan(0.03 * exact);
    },
  );

  test('when every loss takes the same factor, the total takes it exactly and no flow moves', () => {
    const elements = (k: number): Element[] => [elbow(k, 0.2)];
    const same: Ductwork = {
      sections: [
        { id: 'a', into: 'm', pickup: {}, elements: elements(2) },
        { id: 'b', into: 'm', pickup: {}, elements: elements(0.7) },
        { id: 'm', into: 'blower', elements: elements(1.1) },
      ],
      discharge: elements(0.4),
    };
    const lnLoss = respond(solve(same)).draw(kinds({ elbow: 1.7 }), quiet, lnFlow);
    expect(lnLoss).toBeCloseTo(0.2 * Math.SQRT1_2 * 1.7, 12);
    for (const change of lnFlow) expect(Math.abs(change)).toBeLessThan(1e-12);
  });

  test("a section's own error moves its own flow down and its neighbour's up, by half of the variance", () => {
    const own = Float64Array.of(1, 0, 0, 0);
    response.draw(kinds({}), own, lnFlow);
    expect(lnFlow[0]).toBeLessThan(0);
    expect(lnFlow[1]).toBeGreaterThan(0);
    expect(lnFlow[2]).toBeCloseTo(0, 12);
    const single = respond(solve({ sections: [{ id: 'a', into: 'blower', pickup: {}, elements: [elbow(1, 0.2)] }] }));
    const one = new Float64Array(1);
    expect(single.draw(kinds({}), Float64Array.of(1, 0), one)).toBeCloseTo(0.2 * Math.SQRT1_2, 12);
  });

  test('flow by fan flow, against a solve at a slightly larger flow', () => {
    const more = solve(shop(), 0.4 * 1.001);
    for (let i = 0; i < 3; i++) {
      const exact = Math.log(more.sectionFlow_m3_s[i]! / state.sectionFlow_m3_s[i]!) / Math.log(1.001);
      expect(response.flowPerFanFlow[i]).toBeCloseTo(exact, 4);
    }
    expect(response.flowPerFanFlow[2]).toBeCloseTo(1, 12);
  });

  test('without flow nothing answers', () => {
    const still = respond(solve(shop(), 0));
    expect(still.draw(kinds({ elbow: 1 }), quiet, lnFlow)).toBe(0);
    expect([...lnFlow, ...still.flowPerFanFlow]).toEqual([0, 0, 0, 0, 0, 0]);
  });
});
