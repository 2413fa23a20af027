import type { Job } from '../../../src/index.ts';
import { SURFACES } from '../../../src/pipe/index.ts';
import { circle_m2, friction_Pa, type TrueAir } from '../rigs/true-air.ts';

/**
 * True losses of ducts as they stand after somebody rebuilt them: every piece keeps what it was off by, a new one is off by nothing.
 * Halving instead of anything clever; one level of branches into one main, as the invented shops have.
 */
export type TrueDucts = {
  loss_Pa(open: readonly string[], flow_m3_s: number): number;
  drawn_m3_s(open: readonly string[], flow_m3_s: number): Record<string, number>;
  /** slowest air in a section's pipes [m/s] */
  slowest_m_s(section: string, flow_m3_s: number): number;
};

/** Loss of a plain pipe end. Source: Idelchik diagram 3-1. */
const OPEN_END = 0.93;

type Element = Job['ductwork']['sections'][number]['elements'][number];

function loss_Pa(element: Element, off: number, q: number, air: TrueAir): number {
  const dynamic = (d: number) => (air.density_kg_m3 / 2) * (q / circle_m2(d)) ** 2;
  switch (element.kind) {
    case 'pipe':
      return friction_Pa(
        { ...element, roughness_m: off * (element.roughness_m ?? SURFACES[element.surface!].roughness_m) },
        q,
        air,
      );
    case 'filters':
      return (
        off *
        element.each.cleanPressure_Pa *
        (q / element.count / element.each.cleanFlow_m3_s) ** element.each.exponent!
      );
    case 'fixed-resistance':
      return off * element.pressure_Pa * (q / element.flow_m3_s) ** element.exponent!;
    case 'cyclone':
      return off * element.k! * dynamic(element.inletDiameter_m!);
    case 'reducer':
      throw new Error('the invented shops have no reducer');
    default:
      return off * (element.k ?? OPEN_END) * (element.count ?? 1) * dynamic(element.diameter_m!);
  }
}

/** @param off by section id, and `discharge`: see `TrueShop` */
export function trueDucts(
  { sections, discharge }: Job['ductwork'],
  off: Record<string, number[]>,
  air: TrueAir,
  outletArea_m2: number,
): TrueDucts {
  const run = (id: string, elements: readonly Element[]) => (q: number) =>
    elements.reduce((sum, e, i) => sum + loss_Pa(e, off[id]?.[i] ?? 1, q, air), 0);
  const into = (target: string) => sections.filter((s) => s.into === target);
  const main = into('blower')[0]!;
  const mainRun = run(main.id, main.elements);
  const leaves = new Map(into(main.id).map((s) => [s.id, run(s.id, s.elements)]));
  const halved = (low: number, high: number, tooLow: (x: number) => boolean) => {
    for (let i = 0; i < 26; i++) {
      const middle = (low + high) / 2;
      if (tooLow(middle)) low = middle;
      else high = middle;
    }
    return low;
  };
  const drawnAt = (suction: number, id: string, most: number) => halved(0, most, (q) => leaves.get(id)!(q) < suction);
  const suctionFor = (open: readonly string[], flow: number) =>
    open.length === 1
      ? leaves.get(open[0]!)!(flow)
      : halved(
          0,
          leaves.get(open[0]!)!(flow),
          (suction) => open.reduce((sum, id) => sum + drawnAt(suction, id, flow), 0) < flow,
        );
  const wayOut = discharge ?? [];
  const outRun = run('discharge', wayOut);
  return {
    loss_Pa: (open, q) =>
      suctionFor(open, q) +
      mainRun(q) +
      outRun(q) +
      (wayOut.some((e) => e.kind === 'exit') ? 0 : (air.density_kg_m3 / 2) * (q / outletArea_m2) ** 2),
    drawn_m3_s(open, q) {
      const suction = suctionFor(open, q);
      return Object.fromEntries(open.map((id) => [id, open.length === 1 ? q : drawnAt(suction, id, q)]));
    },
    slowest_m_s(id, q) {
      const widest = sections
        .find((s) => s.id === id)!
        .elements.reduce((d, e) => (e.kind === 'pipe' ? Math.max(d, e.diameter_m) : d), 0);
      return q / circle_m2(widest);
    },
  };
}
