import { CURVE_UNKNOWNS, UNKNOWN, type CurveModel } from './model.ts';
import type { PowerObservation, PressureObservation } from './observation.ts';

/** How finely and how far the level of flow is scanned, in its standard deviations. */
const REACH = 4;
const STEP = 0.25;
/** Misfit that the smooth deviation of the shape will take up later, relative to the top pressure. */
const SHAPE_MISFIT = 0.1;
const MOST_STARTS = 3;

/**
 * Places to start the fit from, best first: levels of flow at which the base curve, its pressure scaled to the readings, comes
 * nearest to them. A dipped curve has several; without readings there is only the base curve itself.
 */
export function scannedStarts(
  model: CurveModel,
  pressures: readonly PressureObservation[],
  powers: readonly PowerObservation[],
): Float64Array[] {
  const withPower = (z: Float64Array) => {
    z[UNKNOWN.powerLevel] = startOfPower(model, powers, z);
    return z;
  };
  if (pressures.length === 0 || model.spread.flowLevel === 0) return [withPower(new Float64Array(CURVE_UNKNOWNS))];
  const scan: { cost: number; z: Float64Array }[] = [];
  for (let zq = -REACH; zq <= REACH; zq += STEP) {
    const z = new Float64Array(CURVE_UNKNOWNS);
    z[UNKNOWN.flowLevel] = zq;
    const curve = model.curve(z);
    const at = pressures.map((o) => (o.kind === 'static' ? curve.static_Pa : curve.total_Pa)(o.flow_m3_s));
    const own = at.reduce((s, v) => s + v * v, 0);
    const both = at.reduce((s, v, i) => s + v * pressures[i]!.pressure_Pa, 0);
    const ratio = Math.min(Math.max(both / own, 1e-3), 1e3);
    z[UNKNOWN.pressureLevel] = Math.log(ratio) / model.spread.pressureLevel;
    const allowed = SHAPE_MISFIT * model.base.pressureScale_Pa * ratio;
    const misfit = at.reduce((s, v, i) => s + ((ratio * v - pressures[i]!.pressure_Pa) / allowed) ** 2, 0);
    scan.push({ cost: misfit + zq * zq + z[UNKNOWN.pressureLevel]! ** 2, z });
  }
  const costAt = (i: number) => scan[i]?.cost ?? Infinity;
  return scan
    .filter(({ cost }, i) => cost <= costAt(i - 1) && cost <= costAt(i + 1))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MOST_STARTS)
    .map(({ z }) => withPower(z));
}

/** Level of power at which the curve meets the middle of what the motor's readings point to: near enough for meters that say little near idle. */
function startOfPower(model: CurveModel, powers: readonly PowerObservation[], z: Float64Array): number {
  if (powers.length === 0 || model.spread.powerLevel === 0) return 0;
  const curve = model.curve(z);
  const off = powers
    .map((o) => Math.log(o.shaftPower_W / Math.max(curve.shaftPower_W(o.flow_m3_s), 1e-9)))
    .sort((a, b) => a - b);
  const middle = off[off.length >> 1]! / model.spread.powerLevel;
  return Math.min(Math.max(middle, -REACH), REACH);
}
