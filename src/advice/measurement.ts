import type { MeasureNext } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import type { JudgedBlower } from '../judge.ts';
import type { DuctDraws } from '../operate/duct-draws.ts';

/** Something a person could measure, and what it would read were each draw the truth. */
export type Measurement = Pick<MeasureNext, 'measurement' | 'text' | 'detail'> & {
  /** predicted reading of each draw, in any measure that is nearly normal (ln of a pressure, a deviate) */
  reading: Float64Array;
  /** one standard deviation of the reading itself, in that measure */
  sd: number;
  /** flow [m3/s] at which it shows the fan curve; null where it shows something else */
  showsCurveAt_m3_s: number | null;
};

export type MeasurementSituation = { job: Job; index: number; judged: JudgedBlower; ductDraws: DuctDraws };

/** One kind of measurement. Adding a kind is one file and one line in `measurements/index.ts`. */
export type MeasurementMaker = (situation: MeasurementSituation) => Measurement[];
