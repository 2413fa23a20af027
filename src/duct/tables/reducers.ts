import type { Coefficient } from './coefficient.ts';

/** Whole cone angle taken where none is given: the short reducers that are sold. */
export const USUAL_CONE_ANGLE_DEG = 45;

/**
 * Loss coefficient of a change of diameter, on the velocity pressure of the smaller side.
 * Widening: (1 − A1/A2)², the exact momentum loss of a sudden step (Borda–Carnot), times 2.6·sin(θ/2) for cones below
 * 45°. Narrowing: 0.5·√sin(θ/2)·(1 − A2/A1), below 45° 0.8·sin(θ/2)·(1 − A2/A1); 180° is a sudden step.
 * Source: Crane TP-410; fixtures/reference/fittings.json, `expansion` and `contraction`. Rennels, Miller, Idelchik, Blevins
 * differ: two of the doubts reach them all.
 */
export function reducer(shape: {
  fromDiameter_m: number;
  toDiameter_m: number;
  coneAngle_deg?: number | null;
}): Coefficient {
  const { fromDiameter_m, toDiameter_m } = shape;
  const angle_deg = shape.coneAngle_deg ?? USUAL_CONE_ANGLE_DEG;
  const sine = Math.sin((angle_deg * Math.PI) / 360);
  const steep = angle_deg >= 45;
  const source = 'Crane TP-410; sudden widening is the exact momentum loss (Borda–Carnot)';
  const extra = shape.coneAngle_deg == null ? 0.2 : 0;
  if (fromDiameter_m <= toDiameter_m) {
    const step = (1 - (fromDiameter_m / toDiameter_m) ** 2) ** 2;
    const k = step * (steep ? 1 : 2.6 * sine);
    return { k, doubt: atLeast(steep ? 0.2 : 0.45, k) + extra, source };
  }
  const narrowing = 1 - (toDiameter_m / fromDiameter_m) ** 2;
  const k = narrowing * (steep ? 0.5 * Math.sqrt(sine) : 0.8 * sine);
  const spread = angle_deg >= 150 ? 0.2 : angle_deg >= 75 ? 0.35 : 0.65;
  return { k, doubt: atLeast(spread, k) + extra, source };
}

/** Handbooks differ by this much at least, however little a small change of width loses [-]. */
const SMALLEST_SPREAD = 0.03;
const atLeast = (doubt: number, k: number): number =>
  k > 0 ? Math.max(doubt, Math.min(1, SMALLEST_SPREAD / k)) : doubt;
