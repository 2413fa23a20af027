import { straightPipeLoss } from '../pipe/index.ts';
import type { Bench } from './bench.ts';
import type { Row } from './schema.ts';

/** Below this a pressure is too small to take a root of [Pa]. */
const LEAST_SIGNAL_Pa = 0.5;

/** Velocity pressure in the pipe with the tap [Pa], ρ/2·(Q/A)². */
export const velocityPressure = (bench: Bench, flow_m3_s: number): number =>
  (bench.air.density_kg_m3 / 2) * (flow_m3_s / bench.pipe.area_m2) ** 2;

/** Friction over a length of the test pipe [Pa]; a channel counts as a round pipe of its hydraulic diameter. */
export function pipeFriction(bench: Bench, length_m: number, flow_m3_s: number): number {
  const { diameter_m, area_m2, roughness_m } = bench.pipe;
  const sameVelocity_m3_s = (flow_m3_s / area_m2) * (Math.PI / 4) * diameter_m ** 2;
  return bench.frictionFactor * straightPipeLoss({ length_m, diameter_m, roughness_m }, sameVelocity_m3_s, bench.air);
}

/** Reading at the tap [Pa] with its sign made good: suction may be typed with or without its minus. */
export const tapReading = (bench: Bench, row: Row): number =>
  bench.side === 'inlet' ? Math.abs(row.staticPressure_Pa) : row.staticPressure_Pa;

/** Size of a pressure that drives a flow [Pa]: 0 stays 0, anything else is large enough to take a root of. */
export const signal = (reading_Pa: number): number =>
  reading_Pa === 0 ? 0 : Math.max(Math.abs(reading_Pa), LEAST_SIGNAL_Pa);

/**
 * The blower's pressure from the tap: inlet side fan static = |p_s| − p_v + friction; outlet side fan total = p_s + p_v + friction;
 * friction is that between tap and blower. Source: ISO 5801 definitions of fan static and fan total pressure, air incompressible.
 */
export function fanPressure(bench: Bench, row: Row, flow_m3_s: number): number {
  const p_v = velocityPressure(bench, flow_m3_s);
  const friction = pipeFriction(bench, bench.tapToBlower_m, flow_m3_s);
  return bench.side === 'inlet' ? tapReading(bench, row) - p_v + friction : tapReading(bench, row) + p_v + friction;
}
