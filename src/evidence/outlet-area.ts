import type { Blower, Ductwork } from '../job/types.ts';
import type { Warning } from '../issues/result.ts';

export type OutletArea = { area_m2: number | null; sd: number; warnings: Warning[] };

/** Doubt of a guessed outlet area, standard deviation in ln. Source: feasibility figures (30 % was too narrow). */
const GUESS_SD = 0.35;
/** Outlet area over inlet area of small centrifugal blowers. Estimated. */
const OUTLET_OVER_INLET = 0.9;
/** Inlet diameter over wheel diameter where only the wheel is known. Estimated. */
const INLET_OVER_WHEEL = 0.5;

/**
 * Outlet area: as given, else of the first piece of the discharge run, of an outlet-side test pipe, of the inlet, of the wheel.
 * @returns null area where nothing is known: static and total pressure are then taken as one.
 */
export function outletArea(blower: Blower, ductwork: Ductwork | null, path: string): OutletArea {
  if (blower.outletArea_m2 != null) return { area_m2: blower.outletArea_m2, sd: 0, warnings: [] };
  const guess = guessedDiameter(blower, ductwork);
  const warn = (how: string): Warning[] => [
    {
      code: 'outlet-area-unknown',
      text: `The blower's outlet was not measured: ${how}. Measure its opening, the doubt shrinks.`,
      path: `${path}/outletArea_m2`,
    },
  ];
  if (guess === null) return { area_m2: null, sd: 0, warnings: warn('static and total pressure are taken as equal') };
  return { area_m2: guess.areaFactor * (Math.PI / 4) * guess.diameter_m ** 2, sd: GUESS_SD, warnings: warn(guess.how) };
}

function guessedDiameter(
  blower: Blower,
  ductwork: Ductwork | null,
): { diameter_m: number; areaFactor: number; how: string } | null {
  const first = ductwork?.discharge?.find((e) => 'diameter_m' in e);
  if (first && 'diameter_m' in first)
    return { diameter_m: first.diameter_m, areaFactor: 1, how: 'the first piece of the way out stands in for it' };
  for (const e of blower.evidence)
    if (e.kind === 'readings' && e.rig.side === 'outlet' && e.rig.pipeDiameter_m != null)
      return { diameter_m: e.rig.pipeDiameter_m, areaFactor: 1, how: 'the test pipe on its outlet stands in for it' };
  if (blower.wheel.inletDiameter_m != null)
    return {
      diameter_m: blower.wheel.inletDiameter_m,
      areaFactor: OUTLET_OVER_INLET,
      how: 'it is guessed from the inlet',
    };
  if (blower.wheel.diameter_m != null)
    return {
      diameter_m: INLET_OVER_WHEEL * blower.wheel.diameter_m,
      areaFactor: OUTLET_OVER_INLET,
      how: 'it is guessed from the wheel',
    };
  return null;
}
