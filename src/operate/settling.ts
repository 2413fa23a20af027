import type { Mend, Settling } from '../assessment.ts';
import type { FilterState, Material } from '../duct/index.ts';
import type { Ductwork } from '../job/types.ts';
import type { Candidate } from './candidate.ts';
import { leastGates } from './least-gates.ts';
import { leastNarrowing } from './least-narrowing.ts';
import { mendSentence, settlingSentence } from './settling-words.ts';
import { standOf, type Stand } from './stand.ts';

/** One case in which something may be tried out, and how much trying is left. */
export type Trial = {
  ductwork: Ductwork;
  open: ReadonlySet<string>;
  /** how the case stands now */
  now: Stand;
  /** solves another ductwork or other gates; null without a stable point, or when the work is used up */
  solve(ductwork: Ductwork, open: ReadonlySet<string>): Stand | null;
};

/** A change that was found, still without words: what to do, and how the case then stands. */
export type Found = Pick<Mend, 'kind' | 'gates' | 'sizes'> & { after: Stand; open: ReadonlySet<string> };

/** Work left for trying things out, in solves of a shop of twenty sections; counted, so that a job always gets one answer. */
export type Work = { left: number };

/**
 * Where dust settles in one case, and the least that would mend it: gates to open, a pipe of a smaller size sold, gates to
 * shut. Each mend is solved, leaves dust nowhere, and says what it costs elsewhere. Null where nothing settles.
 */
export function settlingOf(
  shop: { ductwork: Ductwork; material: Material },
  candidate: Candidate,
  gates: { open: ReadonlySet<string>; filterState: FilterState },
  work: Work,
): Settling | null {
  const { ductwork, material } = shop;
  const solve: Trial['solve'] = (tried, open) => {
    work.left -= (tried.sections.length + 20) / 40;
    return work.left < 0 ? null : standOf(candidate, tried, material, open, gates.filterState);
  };
  const now = solve(ductwork, gates.open);
  if (now === null || now.slow.length === 0) return null;
  const trial: Trial = { ductwork, open: gates.open, now, solve };
  const found = [leastGates(trial, 'open-gates'), leastGates(trial, 'shut-gates'), leastNarrowing(trial)];
  const mends = found
    .filter((one) => one !== null)
    .map((one) => mendOf(trial, one))
    .sort((a, b) => trouble(a) - trouble(b));
  return {
    runs: now.slow,
    mends,
    text: settlingSentence(ductwork, now.slow, mends.length > 0),
  };
}

/** What each kind of mend costs a workshop: a gate is a pull, one machine less is a wait, a pipe is a day. Common practice, no source. */
const TROUBLE: Record<Mend['kind'], number> = { 'open-gates': 1, 'shut-gates': 2, 'smaller-pipe': 3 };
/** A mend that starves a machine or overloads the motor comes after all that do not. */
const HARM = 1000;

function trouble({ kind, gates, sizes, short, loadFraction }: Mend): number {
  const places = kind === 'smaller-pipe' ? new Set(sizes.map(({ id }) => id)).size : gates.length;
  return TROUBLE[kind] * places + (short.length > 0 || (loadFraction ?? 0) > 1 ? HARM : 0);
}

/** Machines that have too little air in a state. */
function shortIn({ sections }: Ductwork, open: ReadonlySet<string>, { flow_m3_s }: Stand): Mend['short'] {
  return sections.flatMap(({ id, gate, pickup }) => {
    const required = pickup?.requiredFlow_m3_s;
    if (!required || (gate && !open.has(id)) || flow_m3_s.get(id)! >= required) return [];
    return [{ id, flow_m3_s: flow_m3_s.get(id)!, requiredFlow_m3_s: required }];
  });
}

function mendOf({ ductwork, now, open }: Trial, { after, open: opened, ...found }: Found): Mend {
  const before = new Set(shortIn(ductwork, open, now).map(({ id }) => id));
  const mend = {
    ...found,
    runs: now.slow.flatMap(({ id }) => after.runs.get(id) ?? []),
    short: shortIn(ductwork, opened, after).filter(({ id }) => !before.has(id)),
    loadFraction: after.loadFraction,
  };
  return { ...mend, text: mendSentence(ductwork, mend) };
}
