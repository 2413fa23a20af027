import type { Assessment } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import type { JudgedBlower } from '../judge.ts';
import { CHANGE_KINDS, type Change } from './change.ts';
import { proposals } from './changes/index.ts';
import { NEVER_YES, weight, type Shortfall, type Yardstick } from './shortfall.ts';
import { situationOf } from './situation.ts';

/** A job after some changes, looked at roughly. */
export type Tried = { job: Job; changes: Change[]; judged: JudgedBlower; assessment: Assessment; lacking: Shortfall };

/** How a search looks at things; both count the work they do and answer null when there is none left. */
export type Looks = {
  /** a rough judgement after one more change */
  look(before: Tried, change: Change): Tried | null;
  /** the whole judgement: whether this is a yes that brings no new trouble */
  confirm(tried: Tried): boolean | null;
};

const MOST_REMEDIES = 4;
const MOST_COMBINED = 2;
const MOST_TOGETHER = 4;
/** Half-made combinations that are carried on. */
const BEAM = 3;
/** Chance in the few draws of a rough look that makes a thorough one worth its while; a yes takes more than this. */
const PROMISING = 0.93;
/** A kind of change that alone takes less than this share of what is missing away is left out of combinations. */
const LEAST_HELP = 0.02;
/** Thorough looks at changes of one kind that all looked promising. */
const MOST_TRIES = 3;
/** What is missing must shrink by this share from step to step, or no further step is tried. */
const PROGRESS = 0.05;

const isPromising = ({ lacking, assessment }: Tried): boolean =>
  lacking.other < NEVER_YES && assessment.blowers[0]!.probability >= PROMISING;

/**
 * Changes that make a blower a yes: single ones, cheapest kind first and the smallest of each kind; where none does it, two, three
 * and four together, carried on from what leaves least missing.
 * @param start the job as it is, looked at as roughly as everything else
 */
export function findChanges(start: Tried, index: number, by: Yardstick, looks: Looks): Change[][] {
  const motorCanGrow = (start.job.blowers[index]!.motor.kind ?? 'induction') === 'induction';
  const worth = (t: Tried) => weight(t.lacking, motorCanGrow);
  const singles = extended(start, index, by, looks, new Set());
  const found = confirmed(singles, looks, MOST_REMEDIES);
  if (found.length > 0) return found;
  let missing = worth(start);
  const idle = idleKinds(singles, (t) => missing - worth(t) > LEAST_HELP * missing);
  let beam = [...bestOf(singles, worth), ...bestCure(singles, start)];
  for (let together = 2; together <= MOST_TOGETHER && beam.length > 0; together++) {
    // the first of two may give as much as it takes: a slide spares the motor and slows the air
    if (together > 2 && worth(beam[0]!) > (1 - PROGRESS) * missing) return [];
    missing = worth(beam[0]!);
    const next = beam.flatMap((t) => extended(t, index, by, looks, idle));
    const combined = confirmed(cheapestFirst(inOrder(next, worth)), looks, MOST_COMBINED);
    if (combined.length > 0) return combined;
    beam = bestOf(next, worth);
  }
  return [];
}

/** A new belt is set out with the pulleys it needs. */
const INCLUDES: Partial<Record<Change['kind'], Change['kind'][]>> = { 'belt-drive': ['pulley'] };

/** A job with each further change that is worth a thought there. */
function extended(
  before: Tried,
  index: number,
  by: Yardstick,
  looks: Looks,
  idle: ReadonlySet<Change['kind']>,
): Tried[] {
  const used = new Set([...idle, ...before.changes.flatMap((c) => [c.kind, ...(INCLUDES[c.kind] ?? [])])]);
  const situation = situationOf(before.job, index, before.judged, before.assessment, by);
  return proposals(situation).flatMap((change) => {
    if (used.has(change.kind)) return [];
    const tried = looks.look(before, change);
    return tried === null ? [] : [tried];
  });
}

/** Kinds that were tried alone and did next to nothing; a larger motor does little until the wheel turns faster. */
function idleKinds(singles: readonly Tried[], helps: (t: Tried) => boolean): Set<Change['kind']> {
  const kind = (t: Tried) => t.changes[0]!.kind;
  const idle = new Set(singles.map(kind));
  idle.delete('motor');
  for (const t of singles) if (helps(t)) idle.delete(kind(t));
  return idle;
}

const kindsOf = ({ changes }: Tried): string =>
  changes
    .map((c) => c.kind)
    .sort()
    .join('+');

/** Those that stand a thorough look, one of every set of kinds, in the order given. */
function confirmed(tried: readonly Tried[], looks: Looks, most: number): Change[][] {
  const found = new Map<string, Change[]>();
  const tries = new Map<string, number>();
  for (const t of tried) {
    const kinds = kindsOf(t);
    if (found.size >= most) break;
    if (found.has(kinds) || !isPromising(t) || (tries.get(kinds) ?? 0) >= MOST_TRIES) continue;
    tries.set(kinds, (tries.get(kinds) ?? 0) + 1);
    if (looks.confirm(t)) found.set(kinds, t.changes);
  }
  return [...found.values()];
}

/** By what its kinds of changes cost; the order of those of the same kinds stays. */
const cheapestFirst = (tried: readonly Tried[]): Tried[] => {
  const cost = (t: Tried) => t.changes.reduce((sum, c) => sum + CHANGE_KINDS.indexOf(c.kind), 0);
  return [...tried].sort((a, b) => cost(a) - cost(b));
};

/** What leaves least missing first, so that thorough looks go where they are likeliest to end well. */
const inOrder = (tried: readonly Tried[], worth: (t: Tried) => number): Tried[] =>
  [...tried].sort((a, b) => worth(a) - worth(b));

/** What cures the worst trouble most, whatever it does to the rest: a second change may make that good. */
function bestCure(singles: readonly Tried[], { lacking }: Tried): Tried[] {
  const troubles = ['flow', 'speed', 'motor', 'other'] as const;
  const worst = troubles.reduce((a, b) => (lacking[b] > lacking[a] ? b : a));
  const [first, ...rest] = singles;
  return first ? [rest.reduce((a, b) => (b.lacking[worst] < a.lacking[worst] ? b : a), first)] : [];
}

/** The best of each set of kinds, as many as are carried on. */
function bestOf(tried: readonly Tried[], worth: (t: Tried) => number): Tried[] {
  const best = new Map<string, Tried>();
  for (const t of inOrder(tried, worth)) if (!best.has(kindsOf(t))) best.set(kindsOf(t), t);
  return [...best.values()].slice(0, BEAM);
}
