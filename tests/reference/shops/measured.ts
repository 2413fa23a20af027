import type { MeasureNext } from '../../../src/assessment.ts';
import type { Job } from '../../../src/job/types.ts';
import type { Random } from '../rigs/random.ts';
import { rounded } from '../rigs/true-motor.ts';
import { trueTest } from '../rigs/true-rig.ts';
import type { InventedShop } from './invent-shop.ts';

/** Doubt left in a piece of duct that was measured with two water tubes and a known flow. */
const TWO_TUBES = 0.06;

/** The shop's job after somebody did as advised, with readings as they would truly come out. */
export function measuredIn(shop: InventedShop, job: Job, advice: MeasureNext, random: Random): Job {
  const { find } = shop;
  const blower = job.blowers[0]!;
  const there = find.truePoint(['m1'])?.flow_m3_s ?? 0.5 * find.free_m3_s;
  switch (advice.measurement) {
    case 'orifice-cap': {
      const hole = (advice.detail['row'] as { orificeDiameter_m: number }).orificeDiameter_m;
      return withReadings(hole === 0 ? 0 : flowOf(shop, hole, advice), 'amps');
    }
    case 'energy-meter':
      return withReadings(there, 'watts');
    case 'speed':
      blower.runSpeed_rpm = rounded(find.runningWith(1)(there, find.air).speed_rpm * (1 + 0.0025 * random.normal()), 0);
      return job;
    case 'outlet-area':
      blower.outletArea_m2 = rounded(find.fan.outletArea_m2 * (1 + 0.03 * random.normal()), 5);
      return job;
    case 'duct-pressure':
      return withParts(() => true);
    case 'filter-pressure':
      return withParts((kind) => kind === 'filters');
    case 'cyclone-pressure':
      return withParts((kind) => kind === 'cyclone');
    case 'hose-pressure':
      return withParts((_, surface) => surface === 'flexible-hose');
    default:
      throw new Error(`nobody knows how to measure ${advice.measurement}`);
  }

  /** A short test of its own with a holed cap, all errors drawn anew. */
  function withReadings(flow_m3_s: number, electrical: 'amps' | 'watts'): Job {
    const sizes = { flow: 1, manometer: 1, workshop: 1, electrical: 1 };
    const made = trueTest(
      {
        method: 'orifice-cap',
        side: 'inlet',
        tap: 'far',
        inletDiameter_m: find.fan.inletDiameter_m,
        freeFlow_m3_s: find.free_m3_s,
        shares: flow_m3_s === 0 ? [] : [flow_m3_s / find.free_m3_s],
        shutOff: flow_m3_s === 0,
        electrical: find.family === 'through-flow-vacuum' ? 'watts' : electrical,
        speeds: true,
        sizes,
      },
      find.air,
      find.runningWith(1),
      find.voltage_V,
      random,
    );
    if (made.rows.length > 0) blower.evidence.push({ kind: 'readings', rig: made.rig, rows: made.rows } as never);
    return job;
  }

  function withParts(measured: (kind: string, surface?: string | null) => boolean): Job {
    const runs = [
      ...job.ductwork.sections.map((s) => [s.id, s.elements] as const),
      ['discharge', job.ductwork.discharge ?? []] as const,
    ];
    for (const [id, elements] of runs)
      elements.forEach((e, i) => {
        const off = find.shop.off[id]![i]! * (1 + TWO_TUBES * random.normal());
        if (!measured(e.kind, e.kind === 'pipe' ? e.surface : null)) return;
        e.doubt = TWO_TUBES;
        if (e.kind === 'pipe') e.roughness_m = e.roughness_m! * off;
        else if (e.kind === 'filters') {
          e.each.cleanPressure_Pa *= off;
          e.each.loadedPressure_Pa! *= off;
        } else if (e.kind === 'fixed-resistance') e.pressure_Pa *= off;
        else e.k = e.k! * off;
      });
    return job;
  }
}

/** Flow that this hole in the cap lets through, by halving: the hole's loss against what the blower gives. */
function flowOf({ find }: InventedShop, hole_m: number, advice: MeasureNext): number {
  const value = advice.detail['value'] as { rig: { pipeDiameter_m: number } } | undefined;
  const pipe_m = value?.rig.pipeDiameter_m ?? pipeOf(find);
  const [hole, pipe] = [hole_m, pipe_m].map((d) => (Math.PI / 4) * d ** 2) as [number, number];
  const loss = (q: number) => (find.air.density_kg_m3 / 2) * (q / (0.6 * hole) - q / pipe) ** 2;
  const running = find.runningWith(1);
  let [low, high] = [0, find.free_m3_s];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (running(middle, find.air).static_Pa > loss(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** The test pipe already there. */
function pipeOf({ job }: InventedShop['find']): number {
  const evidence = job.blowers[0]!.evidence as { kind: string; rig?: { pipeDiameter_m: number } }[];
  return evidence.find((e) => e.kind === 'readings')!.rig!.pipeDiameter_m;
}
