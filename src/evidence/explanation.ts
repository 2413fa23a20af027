import type { ReadingsEvidence } from '../job/types.ts';
import { pointer } from '../issues/result.ts';

/** A blunder that may have happened, and the readings as they would be without it. */
export type Explanation = {
  code: string;
  /** below the evidence's own pointer */
  path: string;
  text: string;
  readings: ReadingsEvidence;
  /** ln of how much the change stretches the pressures: what a likelihood must be multiplied with to compare */
  lnStretch: number;
};

export type Row = ReadingsEvidence['rows'][number];

/** Fields of a row that one water tube shows. Source: definition (the job format). */
export const TUBE = ['staticPressure_Pa', 'throatPressure_Pa', 'differentialPressure_Pa'] as const;

/** The row with everything a water tube showed multiplied. Source: definition. */
export const timesTube = (row: Row, by: number): Row => ({
  ...row,
  ...Object.fromEntries(TUBE.flatMap((field) => (row[field] == null ? [] : [[field, by * row[field]]]))),
  ...(row.velocityPressures_Pa ? { velocityPressures_Pa: row.velocityPressures_Pa.map((p) => by * p) } : {}),
});

/** The readings with each row changed. Source: definition. */
export const changedRows = (readings: ReadingsEvidence, change: (row: Row, i: number) => Row): ReadingsEvidence => ({
  ...readings,
  rows: readings.rows.map(change),
});

/** Pointer of a row or of a field in it, below the evidence. Source: definition. */
export const rowPath = (i: number, field?: string): string =>
  pointer('rows', i, ...(field === undefined ? [] : [field]));
