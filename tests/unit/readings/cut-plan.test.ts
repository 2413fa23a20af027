import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cutPlan,
  cuttableHoles,
  HOLE_RATIOS,
  METHOD_NAMES,
  PLAN_LENGTH,
  reduceReadings,
  type CutPlan,
  type CutPlanRequest,
  type Rig,
} from '../../../src/readings/index.ts';
import { AIR, fanStatic, frictionIn, meets, roundPipe, velocityPressureIn } from './rig.ts';

const PIPE_m = 0.1536;
const CURVE = { pressure_Pa: fanStatic, freeFlow_m3_s: 0.6 * Math.sqrt((0.3 + Math.sqrt(0.09 + 5.2)) / 2.6) };
const RIG: Rig = { method: 'orifice-cap', tap: 'far', pipeDiameter_m: PIPE_m, surface: 'spiral-duct' };

const request = (over: Partial<CutPlanRequest> = {}): CutPlanRequest => ({
  rig: RIG,
  air: AIR,
  curve: CURVE,
  shopFlows_m3_s: [0.17, 0.23],
  highestPressure_Pa: 2000,
  ...over,
});
const planned = (over: Partial<CutPlanRequest> = {}): CutPlan => {
  const plan = cutPlan(request(over));
  if (plan === null) throw new Error('no plan');
  return plan;
};

describe('the holes to cut', () => {
  it('are expected where a rig worked forwards by other means would run', () => {
    const pipe = roundPipe(PIPE_m);
    for (const { flow_m3_s, row } of planned().steps.filter((s) => s.role !== 'closed' && s.role !== 'open')) {
      const jet = 0.6 * (Math.PI / 4) * row.orificeDiameter_m! ** 2;
      // far tap, inlet side: hole and sudden enlargement, friction along the pipe, against the fan's static pressure
      const enlargement = (q: number) => (AIR.density_kg_m3 / 2) * (q / jet - q / pipe.area_m2) ** 2;
      const q = meets((f) => enlargement(f) + frictionIn(pipe, pipe.toTap_m + pipe.toBlower_m, Math.max(f, 0.02)));
      expect(flow_m3_s).toBeCloseTo(q, 4);
      const reading = enlargement(q) + velocityPressureIn(pipe, q) + frictionIn(pipe, pipe.toTap_m, q);
      expect(Math.abs(row.staticPressure_Pa / reading - 1)).toBeLessThan(1e-3);
    }
  });

  it('begin in the middle of the shop’s flows, then bound them, then shut-off and open, then fill the gaps', () => {
    const { steps, wanted_m3_s, fromShop } = planned();
    expect(steps.map((s) => s.role)).toEqual(['middle', 'lowest', 'highest', 'closed', 'open', 'between']);
    expect(fromShop).toBe(true);
    expect(wanted_m3_s).toEqual([0.17, 0.23]);
    const [middle, lowest, highest, closed, open] = steps;
    expect(Math.abs(middle!.flow_m3_s - 0.2)).toBeLessThan(0.02);
    expect(lowest!.flow_m3_s).toBeLessThan(0.17);
    expect(highest!.flow_m3_s).toBeGreaterThan(0.23);
    expect(closed!.row).toEqual({ staticPressure_Pa: 2000, orificeDiameter_m: 0 });
    expect(open!.row.orificeDiameter_m).toBe(PIPE_m);
  });

  it('are whole multiples of 5 mm by compass, or sizes hole saws are sold in, 0.2 to 0.9 of the pipe', () => {
    expect(cuttableHoles(0.1, 'compass', HOLE_RATIOS.usual).map((d) => Math.round(d * 1000))).toEqual([
      20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80,
    ]);
    expect(cuttableHoles(0.05, 'compass', HOLE_RATIOS.usual)[0]).toBeCloseTo(0.01, 9);
    expect(cuttableHoles(0.1, 'hole-saw', HOLE_RATIOS.usual)).toContain(0.076);
    // hole saws are made in eighths of an inch, stamped in whole millimetres
    for (const hole of cuttableHoles(0.25, 'hole-saw', HOLE_RATIOS.most))
      expect(Math.abs(hole - 0.0254 * (Math.round(hole / 0.003175) / 8))).toBeLessThan(0.001);
    const { steps } = planned({ cutting: 'hole-saw' });
    const saws = cuttableHoles(PIPE_m, 'hole-saw', HOLE_RATIOS.most);
    for (const { row } of steps.filter((s) => s.role !== 'closed' && s.role !== 'open'))
      expect(saws).toContain(row.orificeDiameter_m);
  });

  it('say how high the tube must be: 2,000 Pa are 204 mm of water, with a twentieth to spare', () => {
    expect(planned().tubeLeg_m).toBeCloseTo(0.25, 9);
    // 3,000 Pa × 1.05 ÷ 9.80665 = 321 mm
    expect(planned({ highestPressure_Pa: 3000 }).tubeLeg_m).toBeCloseTo(0.35, 9);
  });

  it('name a wider pipe where this one is too narrow for the shop’s highest flow', () => {
    const narrow = { rig: { ...RIG, pipeDiameter_m: 0.075 } };
    const plan = planned({ ...narrow, shopFlows_m3_s: [0.4] });
    const most = Math.max(...plan.steps.map((s) => s.flow_m3_s));
    expect(most).toBeLessThan(0.4);
    // the area of the pipe grows with the flow wanted
    expect((plan.widerPipe_m! / 0.075) ** 2).toBeCloseTo((1.1 * 0.4) / most, 6);
    expect(planned().widerPipe_m).toBeNull();
  });

  it('leave the cap on where a tap near it or the outlet side would not tell the flow', () => {
    for (const rig of [
      { ...RIG, tap: 'near' as const },
      { ...RIG, side: 'outlet' as const },
    ])
      expect(planned({ rig }).steps.some((s) => s.role === 'open')).toBe(false);
  });

  it('go for the middle of the curve where no ducts are drawn, and for nothing where the curve has no pressure', () => {
    const plan = planned({ shopFlows_m3_s: [] });
    expect(plan.fromShop).toBe(false);
    expect(plan.wanted_m3_s[0] / CURVE.freeFlow_m3_s).toBeCloseTo(0.35, 9);
    expect(cutPlan(request({ curve: { pressure_Pa: () => 0, freeFlow_m3_s: 1 } }))).toBeNull();
    expect(cutPlan(request({ rig: { method: 'orifice-cap' } }))).toBeNull();
    expect(cutPlan(request({ rig: { method: 'conical-inlet', pipeDiameter_m: 0.15 } }))).toBeNull();
  });
});

describe('plans of any shop and pipe', () => {
  const shops = fc
    .record({
      pipe: fc.double({ min: 0.1, max: 0.25, noNaN: true }),
      low: fc.double({ min: 0.12, max: 0.3, noNaN: true }),
      wide: fc.double({ min: 1, max: 1.6, noNaN: true }),
      tap: fc.constantFrom('near' as const, 'far' as const),
      side: fc.constantFrom('inlet' as const, 'outlet' as const),
      cutting: fc.constantFrom('compass' as const, 'hole-saw' as const),
    })
    .map(({ pipe, low, wide, cutting, ...rig }) => ({
      low,
      high: Math.min(0.5, low * wide),
      plan: planned({
        rig: { ...RIG, ...rig, pipeDiameter_m: pipe },
        shopFlows_m3_s: [low, Math.min(0.5, low * wide)],
        cutting,
      }),
      pipe,
    }));

  it('wider holes pass more and the blower gives less there; none is wider than the contract allows', () => {
    fc.assert(
      fc.property(shops, ({ plan, pipe }) => {
        const rising = [...plan.steps].sort((a, b) => a.row.orificeDiameter_m! - b.row.orificeDiameter_m!);
        for (let i = 1; i < rising.length; i++) expect(rising[i]!.flow_m3_s).toBeGreaterThan(rising[i - 1]!.flow_m3_s);
        for (const s of rising.filter((r) => r.role !== 'open' && r.role !== 'closed')) {
          expect(s.row.orificeDiameter_m!).toBeLessThanOrEqual(0.9 * pipe * (1 + 1e-9));
          expect(s.row.orificeDiameter_m!).toBeGreaterThanOrEqual(0.2 * pipe * (1 - 1e-9));
        }
        expect(new Set(rising.map((s) => s.row.orificeDiameter_m)).size).toBe(plan.steps.length);
        expect(plan.steps.length).toBeLessThanOrEqual(PLAN_LENGTH);
      }),
      { numRuns: 60 },
    );
  });

  it('bound the shop’s flows from both sides, or ask for a wider pipe', () => {
    fc.assert(
      fc.property(shops, ({ plan, low, high }) => {
        const flows = plan.steps.map((s) => s.flow_m3_s);
        expect(Math.min(...flows)).toBeLessThan(low);
        if (plan.widerPipe_m === null) expect(Math.max(...flows)).toBeGreaterThanOrEqual(high);
      }),
      { numRuns: 60 },
    );
  });
});

describe('whatever the method', () => {
  const RIGS: Record<(typeof METHOD_NAMES)[number], Partial<Rig>> = {
    'orifice-cap': { tap: 'far' },
    'conical-inlet': { throatDiameter_m: 0.13 },
    'bell-mouth': { throatDiameter_m: 0.13 },
    'orifice-in-pipe': { tappings: 'corner' },
    'pitot-traverse': {},
    'vane-traverse': {},
    'bag-fill': { bagVolume_m3: 2 },
  };
  it.each(METHOD_NAMES)(
    '%s: rows as foreseen, put through the reduction, give the flow and pressure foreseen',
    (method) => {
      for (const side of ['inlet', 'outlet'] as const) {
        const rig: Rig = { pipeDiameter_m: PIPE_m, surface: 'spiral-duct', side, method, ...RIGS[method] };
        const { steps } = planned({ rig });
        expect(steps.length).toBeGreaterThanOrEqual(5);
        const reduced = reduceReadings({ kind: 'readings', rig, rows: steps.map((s) => s.row), air: null }, AIR, '/e');
        if (!reduced.ok) throw new Error(JSON.stringify(reduced.issues));
        expect(reduced.value.points.length).toBe(steps.length);
        reduced.value.points.forEach((point, i) => {
          expect(point.flow_m3_s).toBeCloseTo(steps[i]!.flow_m3_s, 6);
          expect(point.pressure_Pa).toBeCloseTo(steps[i]!.pressure_Pa, 2);
          expect(point.pressure_Pa).toBeCloseTo(fanStatic(point.flow_m3_s), 2);
        });
      }
    },
  );

  it('a bag says nothing at shut-off; a plate keeps one hole for all rows', () => {
    const bag = planned({ rig: { method: 'bag-fill', pipeDiameter_m: PIPE_m, bagVolume_m3: 2 } });
    expect(bag.steps.some((s) => s.role === 'closed')).toBe(false);
    const plate = planned({ rig: { method: 'orifice-in-pipe', pipeDiameter_m: PIPE_m, tappings: 'corner' } });
    expect(new Set(plate.steps.map((s) => s.row.orificeDiameter_m)).size).toBe(1);
  });
});
