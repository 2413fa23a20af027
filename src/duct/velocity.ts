import { circleArea_m2 } from './elements/element.ts';
import { elementKind, type Element } from './elements/index.ts';
import { MATERIALS, type Material } from './materials.ts';
import type { Network } from './network.ts';

/** What the speed of a run is judged by. Nothing in it depends on the flow: speed = flow / area. */
export type TransportRun = {
  /** widest pipe of the run that still carries dust, where the air is slowest [m2]; of all pipes where none does; null without pipe */
  area_m2: number | null;
  /** lowest speed that keeps the dust moving [m/s]; null where no dust comes */
  minimumVelocity_m_s: number | null;
  /** on the way of the dust from an open machine, in a pipe: its speed is judged */
  judged: boolean;
  /** dust is lifted here: some dusty pipe rises */
  rising: boolean;
};

/** What the speeds of a whole network are judged by. */
export type Transport = {
  /** by section, in the job's order */
  sections: TransportRun[];
  discharge: TransportRun;
  /** the way from some open machine has no cyclone or filter before the blower */
  dustThroughWheel: boolean;
};

type DustyRun = { dustyArea_m2: number; area_m2: number; rising: boolean; dustyAtEnd: boolean };

/** Follows the dust along the elements of one run. */
function followDust(elements: readonly Element[], dustyAtStart: boolean): DustyRun {
  const run = { dustyArea_m2: 0, area_m2: 0, rising: false, dustyAtEnd: dustyAtStart };
  for (const element of elements) {
    if (elementKind(element.kind).catchesDust === true) run.dustyAtEnd = false;
    if (element.kind !== 'pipe') continue;
    const area_m2 = circleArea_m2(element.diameter_m);
    run.area_m2 = Math.max(run.area_m2, area_m2);
    if (!run.dustyAtEnd) continue;
    run.dustyArea_m2 = Math.max(run.dustyArea_m2, area_m2);
    if ((element.rise_m ?? 0) > 0) run.rising = true;
  }
  return run;
}

/** Dust arriving at the start of a run: whether any, and the fastest air that any of it needs; from open machines and from all. */
type Arriving = { dusty: boolean; minimum_m_s: number; openDusty: boolean; openMinimum_m_s: number };
const nothing = (): Arriving => ({ dusty: false, minimum_m_s: 0, openDusty: false, openMinimum_m_s: 0 });

/**
 * Lowest speed and who is judged, for every section and the discharge, from where the dust starts and where it is caught.
 * The lowest speed of a machine's section is the machine's own, else the section's, else its material's (`pickup.material`,
 * else the job's). A trunk takes its own, else the highest of the materials that arrive from open machines.
 * A cyclone or filter catches all dust of its way: the pipes behind it are not judged.
 * @param material the job's material
 */
export function transportOf(network: Network, material: Material): Transport {
  const { sections, order, target, open } = network;
  const arriving = sections.map(nothing);
  const atBlower = nothing();
  const runs = new Map<number, TransportRun>();
  for (const i of order) {
    const { pickup, minimumVelocity_m_s, elements } = sections[i]!;
    const here = arriving[i]!;
    if (pickup != null) {
      here.dusty = true;
      here.openDusty = open[i] === 1;
      here.minimum_m_s = here.openMinimum_m_s = MATERIALS[pickup.material ?? material].minimumVelocity_m_s;
    }
    const own = pickup?.minimumVelocity_m_s ?? minimumVelocity_m_s;
    const run = followDust(elements, here.dusty);
    runs.set(i, judgedRun(run, here, own));
    if (run.dustyAtEnd) {
      const next = target[i]! < 0 ? atBlower : arriving[target[i]!]!;
      next.dusty = true;
      next.minimum_m_s = Math.max(next.minimum_m_s, here.minimum_m_s);
      if (here.openDusty) {
        next.openDusty = true;
        next.openMinimum_m_s = Math.max(next.openMinimum_m_s, here.openMinimum_m_s);
      }
    }
  }
  return {
    sections: sections.map((_, i) => runs.get(i)!),
    discharge: judgedRun(
      followDust(network.discharge, atBlower.openDusty),
      { ...atBlower, dusty: atBlower.openDusty },
      null,
    ),
    dustThroughWheel: atBlower.openDusty,
  };
}

function judgedRun(run: DustyRun, here: Arriving, own_m_s: number | null | undefined): TransportRun {
  const area_m2 = run.dustyArea_m2 > 0 ? run.dustyArea_m2 : run.area_m2;
  const material_m_s = here.openDusty ? here.openMinimum_m_s : here.minimum_m_s;
  return {
    area_m2: area_m2 > 0 ? area_m2 : null,
    minimumVelocity_m_s: here.dusty && run.dustyArea_m2 > 0 ? (own_m_s ?? material_m_s) : null,
    judged: here.openDusty && run.dustyArea_m2 > 0,
    rising: run.rising,
  };
}

/** Lowest speed in a run at a flow [m/s]; null where it has no pipe. */
export const lowestVelocity_m_s = (run: TransportRun, flow_m3_s: number): number | null =>
  run.area_m2 === null ? null : flow_m3_s / run.area_m2;
