import type { Air } from '../air/index.ts';
import { benchOf, type Bench } from './bench.ts';
import { expectedAtHole, type Expected, type ForeseenCurve } from './expected.ts';
import { cuttableHoles, HOLE_RATIOS, type Cutting } from './cut-sizes.ts';
import { missingInRig } from './missing.ts';
import { methodNamed } from './methods/index.ts';
import type { Rig } from './schema.ts';
import { throttlePositions } from './throttle-plan.ts';

/** Why a reading is wanted: it stands in the middle of the shop's flows, bounds them, is an end of the curve, or fills a gap. */
export type StepRole = 'middle' | 'lowest' | 'highest' | 'closed' | 'open' | 'between';

/** One reading to take and what it should show; `smallSignal`: so little on the tube that a leaning tube is worth its trouble. */
export type CutStep = Expected & { role: StepRole; smallSignal: boolean };

export type CutPlan = {
  /** in the order they should be taken */
  steps: CutStep[];
  /** flows of the shop that the readings are to bound [m3/s]; those of the curve's middle where no ducts are drawn */
  wanted_m3_s: [low: number, high: number];
  /** the wanted flows come from the shop's own running points */
  fromShop: boolean;
  /** how high each leg of a U-tube must be [m of water], for the strongest blower that is likely */
  tubeLeg_m: number;
  /** inside of a pipe wide enough [m], where this one is too narrow to reach the highest flow; else null */
  widerPipe_m: number | null;
};

export type CutPlanRequest = {
  rig: Rig;
  /** air in which the test will be made */
  air: Air;
  curve: ForeseenCurve;
  /** flows at which this shop would run it, all gate plans, clean and loaded [m3/s]; none where no ducts are drawn */
  shopFlows_m3_s: readonly number[];
  /** highest pressure that is likely at shut-off [Pa] */
  highestPressure_Pa: number;
  cutting?: Cutting;
};

/** So far outside the shop's flows the bounding readings stand: what the curve is wrong by before the test. Common practice. */
const BEYOND = 0.1;
/** Shares of the free flow between which a blower is usually run; used where no ducts are drawn. Common practice. */
const USUAL_SHARES = [0.35, 0.7] as const;
/** Readings in a plan: with five or more a blunder shows. */
export const PLAN_LENGTH = 6;
/** Two readings nearer than this share of the free flow tell nearly the same. */
const APART = 0.04;
/** Below this a water tube is read to 6 % or worse [Pa]. Source: ± 1 mm on 15 mm. */
const SMALL_SIGNAL_Pa = 150;
const WATER_Pa_per_m = 9806.65;
const LEG_STEP_m = 0.05;

/**
 * Which holes to cut, or how far to throttle, and in which order, so that the readings bound where this shop will run it: first
 * near the middle of its flows, then just outside their ends, then shut-off and open, then the widest gaps. Holes and system meet
 * the blower at the same flow, whatever its true curve, when their resistance is the same: so the plan holds even where the curve
 * is only guessed.
 * @returns null where the rig is not told yet, or the curve gives nothing to plan with
 */
export function cutPlan(request: CutPlanRequest): CutPlan | null {
  const { rig, air, curve, shopFlows_m3_s, highestPressure_Pa, cutting = 'compass' } = request;
  const bench = benchOf(rig, air);
  if (bench === null || missingInRig(methodNamed(rig.method), rig, '').length > 0) return null;
  const inRange = shopFlows_m3_s.filter((q) => q > 0 && q < curve.freeFlow_m3_s);
  const fromShop = inRange.length > 0;
  const wanted: [number, number] = fromShop
    ? [Math.min(...inRange), Math.max(...inRange)]
    : [USUAL_SHARES[0] * curve.freeFlow_m3_s, USUAL_SHARES[1] * curve.freeFlow_m3_s];
  const { candidates, closed, open } =
    bench.rig.method === 'orifice-cap'
      ? holes(bench, curve, cutting, wanted[1])
      : throttlePositions(bench, curve, wanted, BEYOND);
  if (candidates.length === 0) return null;
  const chosen = ordered(candidates, { closed, open }, wanted, curve.freeFlow_m3_s);
  const most = Math.max(...chosen.map((s) => s.flow_m3_s));
  const likely = Math.max(highestPressure_Pa, ...chosen.map((s) => s.row.staticPressure_Pa));
  const steps = chosen.map((s) => ({ ...s, smallSignal: smallSignal(s) }));
  return {
    steps,
    wanted_m3_s: wanted,
    fromShop,
    tubeLeg_m: Math.ceil((1.05 * likely) / WATER_Pa_per_m / LEG_STEP_m) * LEG_STEP_m,
    widerPipe_m: most < wanted[1] ? bench.pipe.diameter_m * Math.sqrt(((1 + BEYOND) * wanted[1]) / most) : null,
  };
}

/** The least of what the tube has to show in a row, were it a tube at all. */
function smallSignal({ row }: Expected): boolean {
  const shown = [
    row.staticPressure_Pa,
    row.throatPressure_Pa,
    row.differentialPressure_Pa,
    ...(row.velocityPressures_Pa ?? []),
  ];
  return shown.some((p) => p != null && p !== 0 && Math.abs(p) < SMALL_SIGNAL_Pa);
}

type Choice = { candidates: Expected[]; closed: Expected | null; open: Expected | null };

/** Holes one can cut, with what each would show; holes beyond the usual ratio only where the shop's flow asks for them. */
function holes(bench: Bench, curve: ForeseenCurve, cutting: Cutting, highest_m3_s: number): Choice {
  const at = (hole: number): Expected[] => {
    const expected = expectedAtHole(bench, hole, curve);
    return expected === null ? [] : [expected];
  };
  const pipe = bench.pipe.diameter_m;
  let candidates = cuttableHoles(pipe, cutting, HOLE_RATIOS.usual).flatMap(at);
  const reach = Math.max(0, ...candidates.map((c) => c.flow_m3_s));
  if (reach < (1 + BEYOND) * highest_m3_s) candidates = cuttableHoles(pipe, cutting, HOLE_RATIOS.most).flatMap(at);
  const canBeOpen = bench.side === 'inlet' && bench.tap === 'far';
  return { candidates, closed: at(0)[0] ?? null, open: canBeOpen ? (at(pipe)[0] ?? null) : null };
}

type Chosen = Expected & { role: StepRole };

function ordered(
  candidates: readonly Expected[],
  ends: { closed: Expected | null; open: Expected | null },
  [low, high]: readonly [number, number],
  free_m3_s: number,
): Chosen[] {
  const chosen: Chosen[] = [];
  const left = (): Expected[] =>
    candidates.filter((c) => chosen.every((s) => Math.abs(s.flow_m3_s - c.flow_m3_s) >= APART * free_m3_s));
  const take = (candidate: Expected | null | undefined, role: StepRole): void => {
    if (candidate != null) chosen.push({ ...candidate, role });
  };
  take(nearest(candidates, (low + high) / 2), 'middle');
  const middle = chosen[0]!.flow_m3_s;
  const below = left().filter((c) => c.flow_m3_s < middle);
  take(greatest(below.filter((c) => c.flow_m3_s <= (1 - BEYOND) * low)) ?? nearest(below, low), 'lowest');
  const above = left().filter((c) => c.flow_m3_s > middle);
  const bound = least(above.filter((c) => c.flow_m3_s >= (1 + BEYOND) * high));
  take(bound ?? greatest(above), 'highest');
  take(ends.closed, 'closed');
  take(ends.open, 'open');
  while (chosen.length < PLAN_LENGTH) {
    const next = nearest(left(), middleOfWidestGap(chosen.map((s) => s.flow_m3_s)));
    if (next === null) break;
    take(next, 'between');
  }
  return chosen;
}

const nearest = <C extends Expected>(from: readonly C[], flow: number): C | null =>
  from.reduce<C | null>(
    (best, c) => (best === null || Math.abs(c.flow_m3_s - flow) < Math.abs(best.flow_m3_s - flow) ? c : best),
    null,
  );
const greatest = (from: readonly Expected[]): Expected | null => nearest(from, BEYOND_ALL_m3_s);
const least = (from: readonly Expected[]): Expected | null => nearest(from, 0);
/** Beyond every flow a blower could have. */
const BEYOND_ALL_m3_s = 1e9;

function middleOfWidestGap(flows: readonly number[]): number {
  const rising = [...flows].sort((a, b) => a - b);
  let [widest, middle] = [-1, rising[0] ?? 0];
  for (let i = 1; i < rising.length; i++) {
    const gap = rising[i]! - rising[i - 1]!;
    if (gap > widest) [widest, middle] = [gap, (rising[i]! + rising[i - 1]!) / 2];
  }
  return middle;
}
