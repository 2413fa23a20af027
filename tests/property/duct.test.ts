import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compileNetwork,
  createState,
  ductworkIssues,
  respond,
  DOUBT_KINDS,
  pressureBudget,
  solveAtFlow,
  solveWithFan,
  systemLoss,
  termLoss_Pa,
  totalLoss_Pa,
  type Ductwork,
  type FanCurve,
  type Network,
} from '../../src/duct/index.ts';
import { randomDuctwork, someOpen } from './random-ductwork.ts';

const air = { density_kg_m3: 0.95, viscosity_Pa_s: 1.83e-5, pressure_Pa: 81000 };
const compile = (ductwork: Ductwork, open: Iterable<string>): Network =>
  compileNetwork(ductwork, { air, open, filterState: 'clean', outletArea_m2: 0.03 });
const settings = { seed: 20, numRuns: 400 };
const plan = fc.integer({ min: 0, max: 1000 });
const flow_m3_s = fc.constantFrom(1e-7, 1e-4, 0.01, 0.3, 2, 20);

/** A falling fan curve: shut-off pressure and free delivery. */
const fanOf = (pressure_Pa: number, free_m3_s: number): FanCurve => ({
  pressure_Pa: (q) => pressure_Pa * (1 - (q / free_m3_s) ** 2),
  slope: (q) => (-2 * pressure_Pa * q) / free_m3_s ** 2,
});

describe('any possible tree', () => {
  test('is found possible and converges at any flow, cold and warm', () => {
    fc.assert(
      fc.property(
        randomDuctwork(120),
        plan,
        fc.array(flow_m3_s, { minLength: 1, maxLength: 4 }),
        (ductwork, pick, flows) => {
          expect(ductworkIssues(ductwork)).toEqual([]);
          const network = compile(ductwork, someOpen(ductwork, pick));
          fc.pre(!network.blocked);
          const warm = createState(network);
          for (const q of flows) {
            const state = solveAtFlow(network, q, warm);
            expect(state.solved).toBe(true);
            expect(state.iterations).toBeLessThan(60);
            const cold = solveAtFlow(network, q);
            expect(Math.abs(cold.suction_Pa - state.suction_Pa)).toBeLessThanOrEqual(1e-6 * cold.suction_Pa);
          }
        },
      ),
      settings,
    );
  });

  test('flow balances at every junction, and every loss is the one its elements say', () => {
    fc.assert(
      fc.property(randomDuctwork(120), plan, flow_m3_s, (ductwork, pick, q) => {
        const network = compile(ductwork, someOpen(ductwork, pick));
        fc.pre(!network.blocked);
        const state = solveAtFlow(network, q);
        const arriving = new Float64Array(ductwork.sections.length);
        let atBlower = 0;
        ductwork.sections.forEach((_, i) => {
          const into = network.target[i]!;
          if (into < 0) atBlower += state.sectionFlow_m3_s[i]!;
          else arriving[into]! += state.sectionFlow_m3_s[i]!;
        });
        expect(Math.abs(atBlower / q - 1)).toBeLessThan(1e-9);
        ductwork.sections.forEach(({ pickup, gate }, i) => {
          const through = state.sectionFlow_m3_s[i]!;
          if (pickup == null) expect(Math.abs(arriving[i]! - through)).toBeLessThanOrEqual(1e-9 * through);
          if (network.rowOf[i]! < 0) return void expect(through).toBe(0);
          let lost = network.terms[i]!.reduce((sum, { term }) => sum + termLoss_Pa(term, through, air), 0);
          if (pickup != null && network.open[i] === 0) {
            lost += (air.density_kg_m3 / 2) * (through / (0.6 * gate!.closedLeakArea_m2!)) ** 2;
          }
          const between = state.endSuction_Pa[i]! - state.startSuction_Pa[i]!;
          // The last two terms: an opening without loss has the least one, and differences of suctions end at their digits.
          expect(Math.abs(between - lost)).toBeLessThanOrEqual(
            1e-6 * lost + 1.001e-3 * through ** 2 + 1e-11 * state.suction_Pa,
          );
        });
      }),
      settings,
    );
  });

  test("the system's loss rises with the flow", () => {
    fc.assert(
      fc.property(
        randomDuctwork(40),
        plan,
        flow_m3_s,
        fc.double({ min: 1.0001, max: 3, noNaN: true }),
        (ductwork, pick, q, more) => {
          const network = compile(ductwork, someOpen(ductwork, pick));
          fc.pre(!network.blocked);
          expect(systemLoss(network, q * more)).toBeGreaterThan(systemLoss(network, q));
        },
      ),
      settings,
    );
  });

  test('no number of a solved state, its response or its budget is NaN or infinite', () => {
    fc.assert(
      fc.property(randomDuctwork(40), plan, fc.constantFrom(0, 1e-7, 0.3, 20), (ductwork, pick, q) => {
        const network = compile(ductwork, someOpen(ductwork, pick));
        const state = solveAtFlow(network, network.blocked ? 0 : q);
        const lnFlow = new Float64Array(ductwork.sections.length);
        const response = respond(state);
        const lnLoss = response.draw(
          new Float64Array(DOUBT_KINDS.length).fill(2),
          new Float64Array(lnFlow.length + 1).fill(-2),
          lnFlow,
        );
        const numbers = [
          state.suction_Pa,
          state.suctionSlope,
          totalLoss_Pa(state),
          lnLoss,
          ...state.sectionFlow_m3_s,
          ...state.sectionLoss_Pa,
          ...state.startSuction_Pa,
          ...response.flowPerFanFlow,
          ...lnFlow,
          ...(pressureBudget(state)?.parts.map(({ pressure_Pa }) => pressure_Pa) ?? []),
        ];
        for (const number of numbers) expect(Number.isFinite(number)).toBe(true);
      }),
      settings,
    );
  });
});

describe('with a falling fan', () => {
  const pressure = fc.double({ min: 50, max: 30_000, noNaN: true });
  const free = fc.double({ min: 0.01, max: 10, noNaN: true });

  test('fan and system meet, in one state, at one pressure', () => {
    fc.assert(
      fc.property(randomDuctwork(60), plan, pressure, free, (ductwork, pick, pressure_Pa, free_m3_s) => {
        const network = compile(ductwork, someOpen(ductwork, pick));
        const fan = fanOf(pressure_Pa, free_m3_s);
        const state = solveWithFan(network, fan, [0, free_m3_s]);
        if (network.blocked) return void expect(state.totalFlow_m3_s).toBe(0);
        const q = state.totalFlow_m3_s;
        expect(q).toBeGreaterThan(0);
        expect(Math.abs(totalLoss_Pa(state) - fan.pressure_Pa(q))).toBeLessThan(1e-7 * pressure_Pa);
        expect(Math.abs(systemLoss(network, q) - totalLoss_Pa(state))).toBeLessThan(1e-6 * pressure_Pa);
      }),
      settings,
    );
  });

  test("opening a gate never lowers the total flow and never raises another machine's", () => {
    fc.assert(
      fc.property(
        randomDuctwork(40),
        plan,
        fc.nat(),
        pressure,
        free,
        (ductwork, pick, which, pressure_Pa, free_m3_s) => {
          const before = someOpen(ductwork, pick);
          const closed = ductwork.sections.filter(
            ({ id, pickup, gate }) => pickup != null && gate != null && !before.includes(id),
          );
          fc.pre(closed.length > 0);
          const opened = closed[which % closed.length]!.id;
          const fan = fanOf(pressure_Pa, free_m3_s);
          const [less, more] = [before, [...before, opened]].map((open) =>
            solveWithFan(compile(ductwork, open), fan, [0, free_m3_s]),
          );
          const slack = 1e-7 * free_m3_s;
          expect(more!.totalFlow_m3_s).toBeGreaterThanOrEqual(less!.totalFlow_m3_s - slack);
          ductwork.sections.forEach(({ id, pickup }, i) => {
            if (pickup == null || id === opened) return;
            expect(more!.sectionFlow_m3_s[i]!).toBeLessThanOrEqual(less!.sectionFlow_m3_s[i]! + slack);
          });
        },
      ),
      settings,
    );
  });
});

describe('a comb of a thousand machines', () => {
  const comb = (machines: number): Ductwork => ({
    sections: Array.from({ length: machines }, (_, i) => [
      {
        id: `m${i}`,
        into: `t${i}`,
        pickup: {},
        gate: i % 3 === 0 ? { closedLeakArea_m2: 1e-5 } : null,
        elements: [
          { kind: 'entry' as const, diameter_m: 0.1, k: 0.5 + (i % 7) / 5 },
          { kind: 'pipe' as const, length_m: 2 + (i % 5), diameter_m: 0.1, roughness_m: 1e-4 },
        ],
      },
      {
        id: `t${i}`,
        into: i + 1 < machines ? `t${i + 1}` : 'blower',
        elements: [{ kind: 'pipe' as const, length_m: 2, diameter_m: 0.1 + 0.02 * Math.sqrt(i), roughness_m: 1e-4 }],
      },
    ]).flat(),
  });

  test('solves in few passes, and a hundred times the machines need hardly more of them', () => {
    const [few, many] = [10, 1000].map((machines) => {
      const ductwork = comb(machines);
      expect(ductworkIssues(ductwork)).toEqual([]);
      const state = solveAtFlow(compile(ductwork, []), 0.05 * machines);
      expect(state.solved).toBe(true);
      return state.iterations;
    });
    expect(many!).toBeLessThan(3 * few!);
  });
});

describe('a chain of mains, one behind the other', () => {
  const chain = (mains: number): Ductwork => ({
    sections: Array.from({ length: mains }, (_, i) => ({
      id: `s${i}`,
      into: i + 1 < mains ? `s${i + 1}` : 'blower',
      pickup: i === 0 ? {} : null,
      elements: [{ kind: 'pipe' as const, length_m: 1, diameter_m: 0.1, roughness_m: 1e-4 }],
    })),
  });

  test('of any depth is solved in as many passes as a short one, and loses in proportion', () => {
    const [short, long] = [10, 20_000].map((mains) => solveAtFlow(compile(chain(mains), []), 0.2));
    expect(long!.solved).toBe(true);
    expect(long!.iterations).toBeLessThanOrEqual(short!.iterations + 1);
    expect(Math.abs(long!.suction_Pa / short!.suction_Pa / 2000 - 1)).toBeLessThan(1e-6);
  });
});
