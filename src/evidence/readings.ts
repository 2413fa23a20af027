import type { Air } from '../air/air.ts';
import type { PowerObservation, PressureObservation } from '../fan/observation.ts';
import type { Warning } from '../issues/result.ts';
import type { Blower, ReadingsEvidence, Supply } from '../job/types.ts';
import type { MotorAtSite } from '../motor/index.ts';
import type { RunState } from './run-state.ts';

export type ReadingsSituation = { blower: Blower; supply: Supply; run: RunState; siteAir: Air; motor: MotorAtSite; path: string };

export function readingObservations(
  _readings: ReadingsEvidence,
  _situation: ReadingsSituation,
): { pressures: PressureObservation[]; powers: PowerObservation[]; warnings: Warning[] } {
  return { pressures: [], powers: [], warnings: [] };
}
