import { describe, expect, test } from 'vitest';
import {
  compileNetwork,
  createState,
  solveAtFlow,
  solveWithFan,
  systemLoss,
  totalLoss_Pa,
  totalSlope,
  type Ductwork,
  type Element,
  type FanCurve,
  type Section,
} from '../../../src/duct/index.ts';

const air = { density_kg_m3: 1, viscosity_Pa_s: 1.8e-5, pressure_Pa: 85000 };
/** A loss of `resistance`·Q² [Pa]. */
const square = (resistance: number): Element => ({
  kind: 'fixed-resistance',
  flow_m3_s: 1,
  pressure_Pa: resistance,
  exponent: 2,
});
const machine = (id: string, into: string, resistance: number, more: Partial<Section> = {}): Section => ({
  id,
  into,
  pickup: {},
  elements: [square(resistance)],
  ...more,
});
const compile = (ductwork: Ductwork, open: string[] = [], outletArea_m2?: number) =>
  compileNetwork(ductwork, { air, open, filterState: 'clean', outletArea_m2 });

/** Two machines of 400 and 100 Pa/(m3/s)² meet in a main of 500: side by side they are 1/(1/20 + 1/10)² = 44.44. */
const shop: Ductwork = {
  sections: [
    machine('saw', 'main', 400),
    machine('planer', 'main', 100),
    { id: 'main', into: 'blower', elements: [square(500)] },
  ],
  discharge: [square(50)],
};

describe('by hand', () => {
  test('series add, parallels add the inverse roots, and the flows share 1 : 2', () => {
    const state = solveAtFlow(compile(shop), 0.6);
    expect(state.suction_Pa).toBeCloseTo((400 / 9 + 500) * 0.36, 9);
    expect(state.dischargeLoss_Pa).toBeCloseTo(50 * 0.36, 9);
    expect([...state.sectionFlow_m3_s]).toEqual([
      expect.closeTo(0.2, 12),
      expect.closeTo(0.4, 12),
      expect.closeTo(0.6, 12),
    ]);
    expect([...state.sectionLoss_Pa]).toEqual([expect.closeTo(16, 9), expect.closeTo(16, 9), expect.closeTo(180, 9)]);
    expect([...state.startSuction_Pa]).toEqual([0, 0, expect.closeTo(16, 9)]);
    expect([...state.endSuction_Pa]).toEqual([expect.closeTo(16, 9), expect.closeTo(16, 9), expect.closeTo(196, 9)]);
    expect(totalSlope(state)).toBeCloseTo((2 * totalLoss_Pa(state)) / 0.6, 6);
  });

  test('a fan of 1000 − 1000·Q² meets 594.4·Q² at √(1000/1594.4)', () => {
    const fan: FanCurve = { pressure_Pa: (q) => 1000 - 1000 * q * q, slope: (q) => -2000 * q };
    const state = solveWithFan(compile(shop), fan, [0, 1]);
    expect(state.totalFlow_m3_s).toBeCloseTo(Math.sqrt(1000 / (1000 + 400 / 9 + 550)), 10);
  });

  test('several sections into the blower share one suction', () => {
    const state = solveAtFlow(compile({ sections: [machine('a', 'blower', 900), machine('b', 'blower', 100)] }), 0.4);
    expect(state.sectionFlow_m3_s[0]).toBeCloseTo(0.1, 12);
    expect(state.endSuction_Pa[0]).toBeCloseTo(9, 9);
    expect(state.endSuction_Pa[1]).toBeCloseTo(9, 9);
  });

  test('a blower that blows freely loses its outlet velocity pressure', () => {
    const sections = [machine('a', 'blower', 100)];
    expect(solveAtFlow(compile({ sections, discharge: [] }, [], 0.02), 0.4).dischargeLoss_Pa).toBeCloseTo(
      0.5 * 20 ** 2,
      9,
    );
    expect(solveAtFlow(compile({ sections }), 0.4).dischargeLoss_Pa).toBe(0);
    // With a run behind it, the run counts and the bare outlet does not.
    expect(solveAtFlow(compile({ sections, discharge: [square(10)] }, [], 0.02), 1).dischargeLoss_Pa).toBeCloseTo(
      10,
      9,
    );
  });
});

describe('gates', () => {
  const gated = (leak_m2: number | null): Ductwork => ({
    sections: [
      machine('saw', 'main', 400, { gate: { closedLeakArea_m2: leak_m2 } }),
      machine('planer', 'main', 100),
      { id: 'main', into: 'blower', gate: {}, elements: [square(500)] },
    ],
  });

  test('open when the plan names it, and always without a gate or on a trunk', () => {
    const network = compile(gated(null), ['saw']);
    expect([...network.open]).toEqual([1, 1, 0]);
    expect(solveAtFlow(network, 0.6).sectionFlow_m3_s[0]).toBeCloseTo(0.2, 12);
  });

  test('closed without a leak lets nothing through and shows the suction it hangs on', () => {
    for (const tight of [null, 0, 1e-13]) {
      const state = solveAtFlow(compile(gated(tight)), 0.6);
      expect(state.sectionFlow_m3_s[0]).toBe(0);
      expect(state.sectionFlow_m3_s[1]).toBeCloseTo(0.6, 12);
      expect(state.endSuction_Pa[0]).toBeCloseTo(36, 9);
    }
  });

  test('closed with a leak is an orifice in series: Q = 0.6·A·√(2Δp/ρ)', () => {
    const leak_m2 = 1e-3;
    const state = solveAtFlow(compile(gated(leak_m2)), 0.6);
    const leaking = state.sectionFlow_m3_s[0]!;
    const acrossLeak_Pa = state.endSuction_Pa[0]! - 400 * leaking ** 2;
    expect(leaking).toBeCloseTo(0.6 * leak_m2 * Math.sqrt((2 * acrossLeak_Pa) / air.density_kg_m3), 12);
  });

  test('all shut: a wall at zero flow', () => {
    const network = compile({ sections: [machine('saw', 'blower', 400, { gate: {} })] });
    expect(network.blocked).toBe(true);
    expect(systemLoss(network, 0)).toBe(0);
    const fan: FanCurve = { pressure_Pa: () => 1000, slope: () => 0 };
    expect(solveWithFan(network, fan, [0, 1])).toMatchObject({ totalFlow_m3_s: 0, suction_Pa: 0, solved: true });
    expect(() => solveAtFlow(network, 0.1)).toThrow(
      'solveAtFlow: every opening is shut, so only a flow of 0 is possible',
    );
  });

  test('a dead end has no flow', () => {
    const sections = [machine('a', 'blower', 100), { id: 'stub', into: 'blower', elements: [square(1)] }];
    expect([...solveAtFlow(compile({ sections }), 0.5).sectionFlow_m3_s]).toEqual([0.5, 0]);
  });
});

describe('filters clean and loaded', () => {
  const each = { cleanFlow_m3_s: 0.1, cleanPressure_Pa: 200, loadedPressure_Pa: 700, exponent: 1 };
  const ductwork: Ductwork = {
    sections: [machine('a', 'blower', 0, { elements: [{ kind: 'filters', count: 2, each }] })],
  };

  test.each([
    ['clean', 100],
    ['loaded', 350],
  ] as const)('%s', (filterState, loss_Pa) => {
    const network = compileNetwork(ductwork, { air, open: [], filterState });
    expect(systemLoss(network, 0.1)).toBeCloseTo(loss_Pa, 9);
  });
});

describe('warm starts', () => {
  const pipes: Ductwork = {
    sections: shop.sections.map((section) => ({
      ...section,
      elements: [{ kind: 'pipe', length_m: 5, diameter_m: 0.12, roughness_m: 1e-4 }, ...section.elements],
    })),
  };
  const network = compile(pipes);

  test('the state is reused, and a near one saves passes', () => {
    const cold = solveAtFlow(network, 0.4);
    const warm = createState(network);
    solveAtFlow(network, 0.41, warm);
    expect(solveAtFlow(network, 0.4, warm)).toBe(warm);
    expect(warm.iterations).toBeLessThan(cold.iterations);
    expect(Math.abs(warm.suction_Pa / cold.suction_Pa - 1)).toBeLessThan(1e-8);
  });

  test('from standstill it starts cold again', () => {
    const state = solveAtFlow(network, 0.4);
    solveAtFlow(network, 0, state);
    expect([...state.sectionFlow_m3_s, state.suction_Pa]).toEqual([0, 0, 0, 0]);
    expect(Math.abs(solveAtFlow(network, 0.4, state).suction_Pa / systemLoss(network, 0.4) - 1)).toBeLessThan(1e-8);
  });

  test('a state of another network is refused', () => {
    expect(() => solveAtFlow(network, 0.4, createState(compile(shop)))).toThrow(
      'solve: the warm start belongs to another network',
    );
  });
});

describe('fans that are not smooth', () => {
  test('a kinked fan is bracketed when joint steps go to and fro', () => {
    // The slopes tell the wrong story on both sides of the root, as those of a staircase do.
    const stairs: FanCurve = { pressure_Pa: (q) => 600 - 250 * Math.floor(q * 8) - 20 * q, slope: () => -20 };
    const state = solveWithFan(compile(shop), stairs, [0, 1]);
    const { totalFlow_m3_s: q } = state;
    const before = stairs.pressure_Pa(q - 1e-9) - systemLoss(state.network, q - 1e-9);
    const after = stairs.pressure_Pa(q + 1e-9) - systemLoss(state.network, q + 1e-9);
    expect(before).toBeGreaterThanOrEqual(0);
    expect(after).toBeLessThanOrEqual(0);
  });

  test('a rising fan curve is met where it crosses, stable or not', () => {
    // By the quadratic formula: 594.4·Q² = 50 + 300·Q.
    const rising: FanCurve = { pressure_Pa: (q) => 50 + 300 * q, slope: () => 300 };
    const c = 400 / 9 + 550;
    const expected = (300 + Math.sqrt(300 ** 2 + 4 * c * 50)) / (2 * c);
    expect(solveWithFan(compile(shop), rising, [0.1, 2]).totalFlow_m3_s).toBeCloseTo(expected, 9);
  });
});

describe("caller's mistakes", () => {
  const network = compile(shop);
  const fan: FanCurve = { pressure_Pa: () => 1e6, slope: () => 0 };

  test.each([-1, NaN, Infinity])('a flow of %s', (flow) => {
    expect(() => solveAtFlow(network, flow)).toThrow(
      `solveAtFlow: totalFlow_m3_s must be finite and not below 0, received ${flow}`,
    );
  });

  test('a bracket that is none, or without a crossing', () => {
    expect(() => solveWithFan(network, fan, [1, 1])).toThrow('solveWithFan: expected 0 ≤ low < high, received 1, 1');
    expect(() => solveWithFan(network, fan, [0.1, 1])).toThrow(
      'solveWithFan: fan − system does not change its sign between 0.1 and 1 m3/s',
    );
  });

  test('a ductwork that was not checked', () => {
    const nowhere = { sections: [machine('a', 'b', 1)] };
    expect(() => compile(nowhere)).toThrow('compileNetwork: section a flows nowhere; check the ductwork first');
    const ring = { sections: [machine('a', 'b', 1), machine('b', 'a', 1)] };
    expect(() => compile(ring)).toThrow('compileNetwork: sections flow in a circle; check the ductwork first');
  });
});
