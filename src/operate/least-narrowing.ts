import { dustyPipes, resizedRun, type Element } from '../duct/index.ts';
import type { Ductwork } from '../job/types.ts';
import { familyOf, type TradeSize } from '../pipe/index.ts';
import type { Found, Trial } from './settling.ts';
import { DISCHARGE, type Stand } from './stand.ts';

/** Every round narrows a pipe by a size at least, and no shop has this many sizes. */
const MOST_ROUNDS = 24;

type Pipe = ReturnType<typeof dustyPipes>[number];
/** New sizes by the inside diameter that is there now [m]. */
type Widths = Map<number, TradeSize>;
/** New sizes by run. */
type Plan = Map<string, Widths>;

/**
 * The widest sizes sold in which no run is too slow: every pipe that is too wide for the flow it has takes the widest size
 * that would carry the dust, and as narrower pipe lets less air through, this is repeated until nothing settles; then each is
 * tried a size wider. Null where even the narrowest pipe is not enough.
 */
export function leastNarrowing({ ductwork, open, now, solve }: Trial): Found | null {
  let plan: Plan = new Map();
  let after: Stand | null = now;
  for (let round = 0; after.slow.length > 0; round++) {
    if (round === MOST_ROUNDS) return null;
    for (const { id, minimumVelocity_m_s } of after.slow) {
      const flow_m3_s = id === DISCHARGE ? after.totalFlow_m3_s : after.flow_m3_s.get(id)!;
      const widest_m = Math.sqrt((4 * flow_m3_s) / (Math.PI * minimumVelocity_m_s));
      const narrower = narrowTo(widest_m, dustyPipes(elementsOf(ductwork, id)), plan.get(id));
      if (narrower === null) return null;
      plan.set(id, narrower);
    }
    after = solve(built(ductwork, plan), open);
    if (after === null) return null;
  }
  for (const [id, sizes] of plan) {
    for (const [from_m, size] of sizes) {
      const wider = nextWider(elementsOf(ductwork, id), from_m, size);
      if (wider === null) continue;
      const tried: Plan = new Map(plan).set(id, new Map(plan.get(id)!).set(from_m, wider));
      const relaxed = solve(built(ductwork, tried), open);
      if (relaxed?.slow.length === 0) [plan, after] = [tried, relaxed];
    }
  }
  const sizes = [...plan].flatMap(([id, widths]) =>
    [...widths].map(([from_m, { name, inside_m }]) => ({ id, size: name, from_m, to_m: inside_m })),
  );
  return { kind: 'smaller-pipe', gates: [], sizes, after, open };
}

const elementsOf = ({ sections, discharge }: Ductwork, id: string): readonly Element[] =>
  (id === DISCHARGE ? discharge : sections.find((section) => section.id === id)?.elements) ?? [];

/** Sizes in which none of these pipes is wider than `widest_m` [m]; null where nothing so narrow is sold. */
function narrowTo(widest_m: number, pipes: readonly Pipe[], before: Widths | undefined): Widths | null {
  const sizes = new Map(before);
  for (const { surface, diameter_m } of pipes) {
    if ((sizes.get(diameter_m)?.inside_m ?? diameter_m) <= widest_m) continue;
    const size = familyOf(surface, diameter_m).sizes.findLast(({ inside_m }) => inside_m <= widest_m);
    if (size === undefined) return null;
    sizes.set(diameter_m, size);
  }
  return sizes;
}

/** The next size up that is still narrower than what is there now. */
function nextWider(elements: readonly Element[], from_m: number, { inside_m: to_m }: TradeSize): TradeSize | null {
  const surface = dustyPipes(elements).find(({ diameter_m }) => diameter_m === from_m)?.surface;
  const next = familyOf(surface, from_m).sizes.find(({ inside_m }) => inside_m > to_m);
  return next && next.inside_m < from_m ? next : null;
}

function built(ductwork: Ductwork, plan: Plan): Ductwork {
  const run = (id: string, elements: readonly Element[]): Element[] => {
    const widths = [...plan.get(id)!].map(([from_m, { inside_m }]) => [from_m, inside_m] as const);
    return resizedRun(elements, new Map(widths));
  };
  const sections = ductwork.sections.map((section) =>
    plan.has(section.id) ? { ...section, elements: run(section.id, section.elements) } : section,
  );
  const discharge = plan.has(DISCHARGE) ? run(DISCHARGE, ductwork.discharge ?? []) : ductwork.discharge;
  return { ...ductwork, sections, discharge };
}
