import type { Family } from '../fan/families.ts';
import type { Blower, Ductwork } from '../job/types.ts';
import type { Warning } from '../issues/result.ts';

export type OutletArea = { area_m2: number | null; sd: number; warnings: Warning[] };

/**
 * Standard deviations in ln of an outlet area guessed from what hangs on it, from the inlet, from a test pipe that was made to fit
 * the inlet, or from the wheel alone. Source: feasibility figures (30 % was too narrow); the last two estimated.
 */
const SD = { hangsOnIt: 0.35, inlet: 0.35, testPipe: 0.4, wheel: 0.5 };

/**
 * Openings of blowers by family: inlet diameter over wheel diameter, and outlet area over inlet area [-].
 * Squirrel cages breathe through nearly their whole face and blow through a scroll as wide as the wheel; the air of a propeller
 * leaves where it came in. Estimated from drawings in fan handbooks.
 */
const OPENINGS: Readonly<Record<Family, { inletOverWheel: number; outletOverInlet: number }>> = {
  radial: { inletOverWheel: 0.5, outletOverInlet: 0.9 },
  'radial-tip': { inletOverWheel: 0.6, outletOverInlet: 0.9 },
  'backward-inclined': { inletOverWheel: 0.62, outletOverInlet: 0.9 },
  'backward-curved': { inletOverWheel: 0.62, outletOverInlet: 0.9 },
  'forward-curved': { inletOverWheel: 0.85, outletOverInlet: 1.2 },
  axial: { inletOverWheel: 1, outletOverInlet: 1 },
  'through-flow-vacuum': { inletOverWheel: 0.3, outletOverInlet: 1 },
  unknown: { inletOverWheel: 0.6, outletOverInlet: 0.9 },
};

/**
 * Outlet area: as given, else of the first piece of the discharge run, of an outlet-side test pipe, of the inlet, of a test pipe
 * on the inlet, of the wheel.
 * @returns null area where nothing is known: static and total pressure are then taken as one.
 */
export function outletArea(blower: Blower, ductwork: Ductwork | null, path: string): OutletArea {
  if (blower.outletArea_m2 != null) return { area_m2: blower.outletArea_m2, sd: 0, warnings: [] };
  const guess = guessedArea(blower, ductwork);
  const warn = (how: string): Warning[] => [
    {
      code: 'outlet-area-unknown',
      text: `The blower's outlet was not measured: ${how}. Measure its opening, the doubt shrinks.`,
      path: `${path}/outletArea_m2`,
    },
  ];
  if (guess === null) return { area_m2: null, sd: 0, warnings: warn('static and total pressure are taken as equal') };
  return { area_m2: guess.area_m2, sd: guess.sd, warnings: warn(guess.how) };
}

const circle_m2 = (diameter_m: number) => (Math.PI / 4) * diameter_m ** 2;

function guessedArea(blower: Blower, ductwork: Ductwork | null): { area_m2: number; sd: number; how: string } | null {
  const { inletOverWheel, outletOverInlet } = OPENINGS[blower.wheel.family];
  const first = ductwork?.discharge?.find((e) => 'diameter_m' in e);
  if (first && 'diameter_m' in first)
    return {
      area_m2: circle_m2(first.diameter_m),
      sd: SD.hangsOnIt,
      how: 'the first piece of the way out stands in for it',
    };
  const testPipe = (side: 'inlet' | 'outlet') =>
    blower.evidence.flatMap((e) =>
      e.kind === 'readings' && (e.rig.side ?? 'inlet') === side && e.rig.pipeDiameter_m != null
        ? [e.rig.pipeDiameter_m]
        : [],
    )[0];
  const behind = testPipe('outlet');
  if (behind !== undefined)
    return { area_m2: circle_m2(behind), sd: SD.hangsOnIt, how: 'the test pipe on its outlet stands in for it' };
  const fromInlet = (diameter_m: number) => outletOverInlet * circle_m2(diameter_m);
  const { inletDiameter_m: inlet, diameter_m: wheel } = blower.wheel;
  if (inlet != null) return { area_m2: fromInlet(inlet), sd: SD.inlet, how: 'it is guessed from the inlet' };
  const before = testPipe('inlet');
  if (before !== undefined)
    return { area_m2: fromInlet(before), sd: SD.testPipe, how: 'it is guessed from the test pipe on the inlet' };
  if (wheel != null)
    return { area_m2: fromInlet(inletOverWheel * wheel), sd: SD.wheel, how: 'it is guessed from the wheel' };
  return null;
}
