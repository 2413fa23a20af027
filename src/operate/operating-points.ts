import type { FlowState } from '../duct/index.ts';
import type { FanEstimate } from '../fan/estimate.ts';
import { crossings } from './crossings.ts';
import type { System, SystemCurve } from './system.ts';

/** A flow at which the blower can run in these ducts, with everything solved there. */
export type Point = {
  flow_m3_s: number;
  total_Pa: number;
  static_Pa: number;
  /** of the wheel */
  shaftPower_W: number;
  stable: boolean;
  state: FlowState;
};

/** All points rising in flow: the stable one of least flow decides on air and dust, the stable one of highest power on the motor. */
export type Points = { all: Point[]; least: Point | null; heaviest: Point | null };

/** Every flow at which the best curve and the system meet, each with the whole tree solved there. */
export function operatingPoints(estimate: FanEstimate, system: System, curve: SystemCurve): Points {
  const { best, knots_m3_s } = estimate;
  const point = (state: FlowState, stable: boolean): Point => ({
    flow_m3_s: state.totalFlow_m3_s,
    total_Pa: best.total_Pa(state.totalFlow_m3_s),
    static_Pa: best.static_Pa(state.totalFlow_m3_s),
    shaftPower_W: best.shaftPower_W(state.totalFlow_m3_s),
    stable,
    state,
  });
  const all = system.network.blocked
    ? [point(system.at(0), true)]
    : crossings(knots_m3_s, best.total_Pa, curve.value_Pa).flatMap(({ low, high, stable }) => {
        const bracket = widened(low, high, knots_m3_s, (q) => best.total_Pa(q) - system.loss_Pa(q));
        return bracket === null ? [] : [point(system.meet(best, bracket), stable)];
      });
  const stable = all.filter((p) => p.stable);
  return {
    all,
    least: stable[0] ?? null,
    heaviest: stable.reduce<Point | null>((h, p) => (h === null || p.shaftPower_W > h.shaftPower_W ? p : h), null),
  };
}

/**
 * The crossing was seen on the interpolated system curve; at the very edge of a bracket the exact one may lie a hair
 * outside. Steps outwards until the signs differ; null where the crossing was only a touch.
 */
function widened(
  low: number,
  high: number,
  knots: readonly number[],
  excess: (q: number) => number,
): [number, number] | null {
  const step = (high - low) * 0.01;
  const top = knots[knots.length - 1]!;
  let [a, b] = [low, high];
  for (let i = 0; i < 4; i++) {
    if (excess(a) > 0 !== excess(b) > 0) return [a, b];
    [a, b] = [Math.max(0, a - step), Math.min(top, b + step)];
  }
  return null;
}
