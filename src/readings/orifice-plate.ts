export type Tappings = 'corner' | 'flange' | 'D-and-half-D';

/** Place of the taps, upstream and downstream of the plate, in pipe diameters. Source: ISO 5167-2:2003, 5.2. */
const TAP_PLACES: Record<Tappings, (diameter_m: number) => [up: number, down: number]> = {
  corner: () => [0, 0],
  'D-and-half-D': () => [1, 0.47],
  flange: (diameter_m) => [0.0254 / diameter_m, 0.0254 / diameter_m],
};
/** Pipes thinner than this get one more term [m]. Source: as above. */
const THIN_PIPE_m = 0.07112;

/** An orifice plate in a pipe: inside diameter and hole [m], and where the taps are. */
export type OrificePlate = { diameter_m: number; hole_m: number; tappings: Tappings };

/**
 * Discharge coefficient of an orifice plate [-], Reader-Harris/Gallagher.
 * @param reynolds on the pipe's diameter [-], > 0
 * Beyond the standard's range (diameter ratio 0.1–0.75, Re 5000 and more) it is the same equation extrapolated.
 * Source: ISO 5167-2:2003, 5.3.2.1.
 */
export function dischargeCoefficient({ diameter_m, hole_m, tappings }: OrificePlate, reynolds: number): number {
  const beta = hole_m / diameter_m;
  const [up, down] = TAP_PLACES[tappings](diameter_m);
  const A = ((19_000 * beta) / reynolds) ** 0.8;
  const M = (2 * down) / (1 - beta);
  const beta4 = beta ** 4;
  const small = diameter_m < THIN_PIPE_m ? 0.011 * (0.75 - beta) * (2.8 - diameter_m / 0.0254) : 0;
  return (
    0.5961 +
    0.0261 * beta ** 2 -
    0.216 * beta ** 8 +
    0.000521 * ((1e6 * beta) / reynolds) ** 0.7 +
    (0.0188 + 0.0063 * A) * beta ** 3.5 * (1e6 / reynolds) ** 0.3 +
    (0.043 + 0.08 * Math.exp(-10 * up) - 0.123 * Math.exp(-7 * up)) * (1 - 0.11 * A) * (beta4 / (1 - beta4)) -
    0.031 * (M - 0.8 * M ** 1.1) * beta ** 1.3 +
    small
  );
}

/** Isentropic exponent of air [-]. */
const KAPPA = 1.4;

/**
 * Expansibility factor of an orifice plate [-].
 * @param pressure_Pa     absolute pressure before the plate [Pa]
 * @param differential_Pa pressure across the plate [Pa], less than a quarter of it
 * Source: ISO 5167-2:2003, 5.3.2.2.
 */
export function expansibility(diameterRatio: number, pressure_Pa: number, differential_Pa: number): number {
  const ratio = Math.max(0.75, 1 - differential_Pa / pressure_Pa);
  return 1 - (0.351 + 0.256 * diameterRatio ** 4 + 0.93 * diameterRatio ** 8) * (1 - ratio ** (1 / KAPPA));
}

/** Least Reynolds number of the pipe for which the standard vouches [-]. Source: ISO 5167-2:2003, 5.3.1. */
export function leastReynolds({ diameter_m, hole_m, tappings }: OrificePlate): number {
  const beta = hole_m / diameter_m;
  if (tappings === 'flange') return Math.max(5000, 170 * beta ** 2 * diameter_m * 1000);
  return beta <= 0.56 ? 5000 : 16_000 * beta ** 2;
}

const ROUNDS = 100;

/**
 * Volume flow through an orifice plate [m3/s], in air of the density before it.
 * @param differential_Pa pressure across the plate [Pa], ≥ 0
 * The coefficient depends on the flow a little: repeated until it stands still.
 */
export function orificePlateFlow(
  plate: OrificePlate,
  differential_Pa: number,
  air: { density_kg_m3: number; viscosity_Pa_s: number; pressure_Pa: number },
): { flow_m3_s: number; coefficient: number; expansibility: number; reynolds: number } {
  const beta = plate.hole_m / plate.diameter_m;
  const epsilon = expansibility(beta, air.pressure_Pa, differential_Pa);
  const ideal =
    ((epsilon / Math.sqrt(1 - beta ** 4)) * (Math.PI / 4) * plate.hole_m ** 2 * Math.sqrt(2 * differential_Pa)) /
    Math.sqrt(air.density_kg_m3);
  const reynoldsAt = (flow: number) =>
    (4 * flow * air.density_kg_m3) / (Math.PI * plate.diameter_m * air.viscosity_Pa_s);
  let coefficient = 0.6;
  for (let round = 0; round < ROUNDS && ideal > 0; round++) {
    const next = dischargeCoefficient(plate, Math.max(SLOWEST, reynoldsAt(coefficient * ideal)));
    if (Math.abs(next - coefficient) < 1e-15) break;
    coefficient = next;
  }
  const flow_m3_s = coefficient * ideal;
  return { flow_m3_s, coefficient, expansibility: epsilon, reynolds: reynoldsAt(flow_m3_s) };
}

/** Below this Reynolds number the extrapolated equation runs away; the coefficient is held. */
const SLOWEST = 1000;
