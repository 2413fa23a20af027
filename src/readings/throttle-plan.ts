import type { Bench } from './bench.ts';
import { expectedAtFlow, unthrottledFlow, type Expected, type ForeseenCurve } from './expected.ts';

/** Throttle positions looked at, as shares of the unthrottled flow [-]. */
const SHARES = Array.from({ length: 18 }, (_, i) => 0.1 + 0.05 * i);
/** A plate in the pipe should show at least this at the lowest flow [Pa], and be no wider than the standard's ratio. */
const PLATE = { least_Pa: 100, ratios: [0.75, 0.7, 0.65, 0.6, 0.55, 0.5, 0.45, 0.4, 0.35, 0.3] };

/**
 * How far to throttle a rig that measures at any flow. The tube tells where to stop: each position is known by what it shows.
 * @param wanted flows to bound [m3/s]; @param beyond by this share outside of them
 */
export function throttlePositions(
  bench: Bench,
  curve: ForeseenCurve,
  [low, high]: readonly [number, number],
  beyond: number,
): { candidates: Expected[]; closed: Expected | null; open: Expected | null } {
  const hole = bench.rig.method === 'orifice-in-pipe' ? plateHole(bench, curve, (1 - beyond) * low) : null;
  const free = unthrottledFlow(bench, curve);
  const at = (flow: number): Expected[] => {
    const expected = expectedAtFlow(bench, flow, curve, hole);
    return expected === null ? [] : [expected];
  };
  if (free === null || !(free > 0)) return { candidates: [], closed: null, open: null };
  const flows = [...SHARES.map((share) => share * free), (1 - beyond) * low, (low + high) / 2, (1 + beyond) * high];
  return {
    candidates: flows.filter((flow) => flow > 0 && flow < free).flatMap(at),
    closed: at(0)[0] ?? null,
    open: hole === null ? (at(free)[0] ?? null) : null,
  };
}

/** The widest plate that still shows enough at the lowest flow [m]. */
function plateHole(bench: Bench, curve: ForeseenCurve, lowest_m3_s: number): number {
  const holes = PLATE.ratios.map((ratio) => Math.round(ratio * bench.pipe.diameter_m * 1000) / 1000);
  const shown = (hole: number): number =>
    expectedAtFlow(bench, lowest_m3_s, curve, hole)?.row.differentialPressure_Pa ?? 0;
  return holes.find((hole) => shown(hole) >= PLATE.least_Pa) ?? holes[holes.length - 1]!;
}
