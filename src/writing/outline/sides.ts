import type { View } from './view.ts';

type Xy = readonly [number, number];

/** One side of a plate: a chord and how far its middle bulges outwards, and the edge along it. */
export type Side = {
  readonly from: Xy;
  readonly to: Xy;
  readonly bulge: number;
  /** share of the side with a clear edge, 0..1 */
  readonly clear: number;
  /** mean step of colour across it, 0..441 */
  readonly step: number;
};

const PLACES = 40;
/** Corners may be round, or have a rivet. */
const FROM_END = 0.08;
/** Inside and outside are compared over so many pixels: thin lines count little. */
const BAND_PX = 5;
const CLEAR_STEP = 14;
const EDGE_PX = 3;
/** A side most of which the photo cuts off is taken for less than half clear. */
const LEAST_KNOWN = 0.25;
const CUT_OFF = { clear: 0.45, step: 8 };
/** A curved side has to have so many times the edge of the best straight one. */
const CURVED_IS_BETTER = 1.06;
/** Share of the clearest edge at each place above which a side is straight. */
const STRAIGHT_ENOUGH = 0.93;

/**
 * Moves a side onto the clearest edge near it: both ends and the middle go to and fro until the edge along it is best.
 * @param from,to the side, the plate on its right, view pixels
 * @param reach how far its ends may move to either side
 * @param bulges how far the middle may bulge outwards and inwards
 */
export function snapSide(view: View, from: Xy, to: Xy, reach: number, bulges: number): Side {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const normal: Xy = [(to[1] - from[1]) / length, -(to[0] - from[0]) / length];
  const far = Math.ceil(reach + bulges);
  const steps = stepTable(view, from, to, normal, far);
  const wide = 2 * far + 1;
  // roots: a strong stretch is not worth many weak ones, and yet the middle of an edge is better than its flank
  const roots = steps.map(Math.sqrt);
  const pace = Math.max(1, reach / 8);
  const bestOf = (curves: readonly number[]) => {
    let best = { worth: -1, a: 0, b: 0, c: 0 };
    for (const c of curves)
      for (let a = -reach; a <= reach; a += pace)
        for (let b = -reach; b <= reach; b += pace) {
          let sum = 0;
          for (let i = 0; i < PLACES; i++) {
            const t = placeAt(i);
            const o = Math.round(a + (b - a) * t + 4 * c * t * (1 - t)) + far;
            if (o >= 0 && o < wide) sum += roots[i * wide + o]!;
          }
          // of equal edges the nearest
          const worth = sum * (1 - 0.002 * (Math.abs(a) + Math.abs(b)));
          if (worth > best.worth) best = { worth, a, b, c };
        }
    return best;
  };
  const straight = bestOf([0]);
  // a straight edge that is clear all along needs no curve
  const most = Array.from({ length: PLACES }, (_, i) =>
    roots.subarray(i * wide, (i + 1) * wide).reduce((m, v) => Math.max(m, v), 0),
  );
  const isClear = straight.worth > STRAIGHT_ENOUGH * most.reduce((sum, v) => sum + v, 0);
  const curves = isClear || bulges === 0 ? [] : Array.from({ length: 17 }, (_, i) => ((i - 8) * bulges) / 8);
  const curved = bestOf(curves.filter((c) => Math.abs(c) > 1.5));
  const best = curved.worth > CURVED_IS_BETTER * straight.worth ? curved : straight;
  const { a, b, c } = best;
  let [clear, step, known] = [0, 0, 0];
  for (let i = 0; i < PLACES; i++) {
    const t = placeAt(i);
    const out = a + (b - a) * t + 4 * c * t * (1 - t);
    const x = from[0] + (to[0] - from[0]) * t + normal[0] * out;
    const y = from[1] + (to[1] - from[1]) * t + normal[1] * out;
    // beyond the photo's edge there is nothing to tell whether the plate ends
    if (x < EDGE_PX || y < EDGE_PX || x > view.width - EDGE_PX || y > view.height - EDGE_PX) continue;
    const o = Math.round(out) + far;
    const v = Math.max(steps[i * wide + o] ?? 0, steps[i * wide + o + 1] ?? 0, steps[i * wide + o - 1] ?? 0);
    if (v >= CLEAR_STEP) clear++;
    step += v;
    known++;
  }
  const isCutOff = known < LEAST_KNOWN * PLACES;
  const seen = isCutOff ? CUT_OFF : { clear: clear / known, step: step / known };
  const along = (p: Xy, o: number): Xy => [p[0] + normal[0] * o, p[1] + normal[1] * o];
  return { from: along(from, a), to: along(to, b), bulge: c, ...seen };
}

const placeAt = (i: number) => FROM_END + ((1 - 2 * FROM_END) * (i + 0.5)) / PLACES;

/** Step of colour across the side at each place along it and each distance from it, −far..far. */
function stepTable(view: View, from: Xy, to: Xy, normal: Xy, far: number): Float32Array {
  const wide = 2 * far + 1;
  const out = new Float32Array(PLACES * wide);
  const row = wide + 2 * BAND_PX;
  const profile = [new Float32Array(row), new Float32Array(row), new Float32Array(row)];
  for (let i = 0; i < PLACES; i++) {
    for (let n = 0; n < row; n++) {
      const o = n - far - BAND_PX;
      const sum = [0, 0, 0];
      // a little along the side too, against grain
      for (const d of [-0.3, 0, 0.3]) {
        const t = placeAt(i + d);
        const x = from[0] + (to[0] - from[0]) * t + normal[0] * o;
        const y = from[1] + (to[1] - from[1]) * t + normal[1] * o;
        const k =
          Math.min(view.height - 1, Math.max(0, Math.floor(y))) * view.width +
          Math.min(view.width - 1, Math.max(0, Math.floor(x)));
        for (let c = 0; c < 3; c++) sum[c]! += view.colours[c]![k]!;
      }
      for (let c = 0; c < 3; c++) profile[c]![n] = sum[c]! / 3;
    }
    for (let o = 0; o < wide; o++) {
      let square = 0;
      for (const p of profile) {
        let difference = 0;
        for (let d = 0; d < BAND_PX; d++) difference += p[o + BAND_PX + d]! - p[o + BAND_PX - 1 - d]!;
        square += (difference / BAND_PX) ** 2;
      }
      out[i * wide + o] = Math.sqrt(square);
    }
  }
  return out;
}
