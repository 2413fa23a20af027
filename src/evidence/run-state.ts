/**
 * The state all evidence is brought to: the speed the wheel will run at and the air of the site.
 * A speed that nobody knows is null: evidence taken with the blower's own drive then stands as measured.
 */
export type RunState = {
  speed_rpm: number | null;
  /** relative standard deviation of that speed */
  speedSd: number;
  airDensity_kg_m3: number;
};

/** Factors that bring flow, pressure and power measured at another speed and density to the run state (fan laws, one wheel). */
export type StateFactors = { flow: number; pressure: number; power: number };

/** @param speed_rpm speed of the evidence, null where unknown: then taken as the run speed */
export function factorsTo(run: RunState, speed_rpm: number | null, airDensity_kg_m3: number): StateFactors {
  const speed = run.speed_rpm === null || speed_rpm === null ? 1 : run.speed_rpm / speed_rpm;
  const density = run.airDensity_kg_m3 / airDensity_kg_m3;
  return { flow: speed, pressure: speed ** 2 * density, power: speed ** 3 * density };
}

/** Standard air of fan charts. Source: ISO 5801 (1.2 kg/m3). */
export const CHART_AIR_DENSITY = 1.2;
