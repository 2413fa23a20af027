import { foreseenBy, type Foreseen } from '../fan/foreseen.ts';
import { estimateFan, type FanEstimate } from '../fan/estimate.ts';
import type { PressureObservation } from '../fan/observation.ts';
import type { Blower, ReadingsEvidence } from '../job/types.ts';
import { checkReadings } from '../readings/index.ts';
import { gatherEvidence, type Gathered, type Place } from './gather.ts';
import type { Row } from './explanation.ts';

/** One test of a blower, ready to be looked at again with something in it changed. */
export type SecondThoughts = {
  /** the whole curve anew with other readings in this test; null where they cannot be, or lose a row */
  with(readings: ReadingsEvidence): FanEstimate | null;
  /** the curve anew without one row of this test */
  without(row: number): FanEstimate | null;
  /** rows as points of the curve, each null where it cannot be one */
  asPoints(rows: readonly Row[]): (PressureObservation | null)[];
  foreseen(by: FanEstimate, point: PressureObservation): Foreseen;
};

/**
 * @param index which piece of the blower's evidence the test is
 * @param estimate the curve out of all evidence as it stands
 */
export function secondThoughts(
  blower: Blower,
  place: Place,
  index: number,
  readings: ReadingsEvidence,
  estimate: FanEstimate,
): SecondThoughts {
  const path = `${place.path}/evidence/${index}`;
  let asItStands: Gathered | null = null;
  const gathered = () => (asItStands ??= gatherEvidence(blower, place));
  const gatherWith = (changed: ReadingsEvidence, speed_rpm: number | null = blower.runSpeed_rpm ?? null) =>
    gatherEvidence(
      { ...blower, runSpeed_rpm: speed_rpm, evidence: blower.evidence.map((e, k) => (k === index ? changed : e)) },
      place,
    );
  return {
    with(changed) {
      if (checkReadings(changed, path).length > 0) return null;
      const found = estimateFan(gatherWith(changed).evidence, false);
      return found?.posterior.checks.length === estimate.posterior.checks.length ? found : null;
    },
    without(row) {
      const { evidence } = gathered();
      const other = (o: { path: string }) => o.path !== `${path}/rows/${row}`;
      const rest = { pressures: evidence.pressures.filter(other), powers: evidence.powers.filter(other) };
      return estimateFan({ ...evidence, ...rest }, false);
    },
    asPoints(rows) {
      const possible = rows.map((row) => checkReadings({ ...readings, rows: [row] }, path).length === 0);
      const tried = { ...readings, rows: [...readings.rows, ...rows.filter((_, k) => possible[k])] };
      // the run speed stands as it is, whatever the rows that are tried have been turned at
      const { pressures } = gatherWith(tried, gathered().speed_rpm).evidence;
      let next = readings.rows.length;
      return possible.map((can) => {
        if (!can) return null;
        const at = `${path}/rows/${next++}`;
        return pressures.find((o) => o.path === at) ?? null;
      });
    },
    foreseen: foreseenBy,
  };
}
