/**
 * A test rig worked forwards, from a known fan to what its instruments would show: written apart from the program, by other means
 * (bisection, friction factor by plain repetition), so that the two can check each other.
 */
export const AIR = { density_kg_m3: 0.97, viscosity_Pa_s: 1.83e-5, pressure_Pa: 81_500 };
const ROUGHNESS_m = 0.00009;

export type Pipe = { diameter_m: number; area_m2: number; toTap_m: number; toBlower_m: number };

export const roundPipe = (diameter_m: number): Pipe => ({
  diameter_m,
  area_m2: (Math.PI * diameter_m ** 2) / 4,
  toTap_m: 8 * diameter_m,
  toBlower_m: 1.5 * diameter_m,
});

/** A wheel that gives 2,000 Pa shut off and blows 0.6 m³/s free: static pressure at a flow. */
export const fanStatic = (q: number): number => 2000 * (1 + 0.3 * (q / 0.6) - 1.3 * (q / 0.6) ** 2);

export const speedIn = (pipe: Pipe, q: number): number => q / pipe.area_m2;
export const velocityPressureIn = (pipe: Pipe, q: number): number => (AIR.density_kg_m3 * speedIn(pipe, q) ** 2) / 2;

export function frictionIn(pipe: Pipe, length_m: number, q: number): number {
  if (q === 0) return 0;
  const re = (AIR.density_kg_m3 * speedIn(pipe, q) * pipe.diameter_m) / AIR.viscosity_Pa_s;
  if (re < 4000) throw new Error(`the rig runs at Re ${re}: choose a larger flow`);
  let f = 0.02;
  for (let i = 0; i < 200; i++)
    f = (-2 * Math.log10(ROUGHNESS_m / pipe.diameter_m / 3.7 + 2.51 / (re * Math.sqrt(f)))) ** -2;
  return ((f * length_m) / pipe.diameter_m) * velocityPressureIn(pipe, q);
}

/** Flow at which the fan's pressure meets a resistance rising with flow. */
export function meets(resistance: (q: number) => number): number {
  let [low, high] = [0, 0.65];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (fanStatic(middle) > resistance(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
