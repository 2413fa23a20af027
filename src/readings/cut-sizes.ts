import { LARGEST_RATIO } from './methods/orifice-cap.ts';

/** How a hole is made: scribed with a compass and sawn, or with a hole saw. */
export type Cutting = 'compass' | 'hole-saw';

/**
 * Diameters of hole saws as they are sold [mm]: the inch sizes by eighths, rounded as they are stamped.
 * Source: common practice of tool shops.
 */
const HOLE_SAWS_mm = [
  19, 22, 25, 29, 32, 35, 38, 41, 44, 48, 51, 54, 57, 60, 64, 67, 70, 73, 76, 79, 83, 86, 89, 92, 95, 98, 102, 105, 108,
  111, 114, 121, 127, 133, 140, 146, 152, 159, 168, 177, 210,
];

/**
 * Smallest and largest hole as shares of the pipe [-]. Below a fifth the edge of a hand-cut hole counts too much; to 0.8 the
 * coefficient is known best. Source: holes of 20–80 % of the pipe's area, ASME J. Fluids Eng. 56 (1934) 903 (read as excerpt);
 * ISO 5167-2 vouches for 0.1 to 0.75; the job document's own limit is 0.9.
 */
export const HOLE_RATIOS = { least: 0.2, usual: 0.8, most: LARGEST_RATIO } as const;

const COARSE_PIPE_m = 0.1;
const STEP_mm = { wide: 5, thin: 2 };

/**
 * Hole diameters one can cut into a cap [m], rising.
 * @param pipe_m inside of the test pipe
 * @param most   largest hole as a share of it
 */
export function cuttableHoles(pipe_m: number, cutting: Cutting, most: number): number[] {
  const [from, to] = [HOLE_RATIOS.least * pipe_m * 1000 * (1 - 1e-9), most * pipe_m * 1000 * (1 + 1e-9)];
  if (cutting === 'hole-saw') return HOLE_SAWS_mm.filter((mm) => mm >= from && mm <= to).map((mm) => mm / 1000);
  const step = pipe_m >= COARSE_PIPE_m ? STEP_mm.wide : STEP_mm.thin;
  const holes: number[] = [];
  for (let mm = Math.ceil(from / step) * step; mm <= to; mm += step) holes.push(mm / 1000);
  return holes;
}
