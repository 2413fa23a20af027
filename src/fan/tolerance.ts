/**
 * What a printed chart promises, as 95 % limits relative to the printed value.
 * Source: ISO 13348:2007 table 2, tolerance grades AN1–AN4 (from memory).
 */
export const CHART_TOLERANCE = {
  AN1: { flow: 0.01, pressure: 0.01, shaftPower: 0.02 },
  AN2: { flow: 0.025, pressure: 0.025, shaftPower: 0.03 },
  AN3: { flow: 0.05, pressure: 0.05, shaftPower: 0.08 },
  AN4: { flow: 0.1, pressure: 0.1, shaftPower: 0.16 },
} as const;

export type AccuracyGrade = keyof typeof CHART_TOLERANCE;

/** A chart that names no grade is taken as the widest. */
export const UNKNOWN_GRADE: AccuracyGrade = 'AN4';

/**
 * No chart of a used blower is believed more closely than this in flow, as a 95 % limit.
 * Source: AMCA 200, field tolerance of ±7.5 % in flow for certified fans (as quoted by makers; not read in the original).
 */
export const USED_BLOWER_FLOW_LIMIT = 0.075;

/**
 * Relative standard deviation of a plate's rated flow or pressure: a claim, read off one point, of a blower since worn.
 * Estimated; no source.
 */
export const RATED_POINT_SD = { flow: 0.08, pressure: 0.08, shaftPower: 0.12 } as const;

const TWO_SIDED_95 = 1.959964;

/** Standard deviations of flow, pressure and shaft power of a chart of the given grade, for a used blower. */
export function chartDeviation(grade: AccuracyGrade): { flow: number; pressure: number; shaftPower: number } {
  const limit = CHART_TOLERANCE[grade];
  return {
    flow: Math.max(limit.flow, USED_BLOWER_FLOW_LIMIT) / TWO_SIDED_95,
    pressure: limit.pressure / TWO_SIDED_95,
    shaftPower: limit.shaftPower / TWO_SIDED_95,
  };
}
