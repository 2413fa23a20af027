import type { MeasureNext } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import type { JudgedBlower } from '../judge.ts';
import type { DuctDraws } from '../operate/duct-draws.ts';

/** What one instrument would show were each draw the truth. */
export type PredictedReading = {
  /** by draw, in any measure that is nearly normal (ln of a pressure, a deviate) */
  values: Float64Array;
  /** one standard deviation of the reading itself, in that measure */
  sd: number;
};

/** Something a person could measure, and what it would read were each draw the truth. */
export type Measurement = Pick<MeasureNext, 'measurement' | 'text' | 'values' | 'detail'> & {
  /** what the instruments show at the same time: one entry each */
  readings: PredictedReading[];
  /** flow [m3/s] at which it shows the fan curve; null where it shows something else */
  showsCurveAt_m3_s: number | null;
};

export type MeasurementSituation = { job: Job; index: number; judged: JudgedBlower; ductDraws: DuctDraws };

/** One kind of measurement. Adding a kind is one file and one line in `measurements/index.ts`. */
export type MeasurementMaker = (situation: MeasurementSituation) => Measurement[];
