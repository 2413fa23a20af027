import type { Section } from '../job/types.ts';
import type { Found, Trial } from './settling.ts';
import type { Stand } from './stand.ts';

/** Up to so many gates all pairs are tried; beyond, the second gate is chosen for the first. */
const MOST_IN_ALL_PAIRS = 8;
/** More gates at once than this is another way of working, not a mend. */
const MOST_GATES = 3;

/**
 * The fewest gates to open (or to shut) after which dust settles nowhere; of equally many those that load the motor least.
 * Only gates whose air would come through every slow run are worth opening: any other takes air away from it.
 */
export function leastGates(trial: Trial, kind: 'open-gates' | 'shut-gates'): Found | null {
  const choices = kind === 'open-gates' ? gatesBehindSlowRuns(trial) : openGates(trial);
  if (choices.length === 0) return null;
  const most = Math.min(MOST_GATES, choices.length - (kind === 'shut-gates' ? 1 : 0));
  let tried: { gates: string[]; after: Stand }[] = [{ gates: [], after: trial.now }];
  for (let count = 1; count <= most; count++) {
    const from = count > 2 || (count === 2 && choices.length > MOST_IN_ALL_PAIRS) ? [closest(tried)] : tried;
    tried = combinations(from, choices).flatMap((gates) => {
      const after = trial.solve(trial.ductwork, turned(trial.open, gates, kind));
      return after === null ? [] : [{ gates, after }];
    });
    if (tried.length === 0) return null;
    const mended = tried.filter(({ after }) => after.slow.length === 0);
    if (mended.length > 0) {
      const best = mended.reduce((a, b) => (b.after.loadFraction < a.after.loadFraction ? b : a));
      return { kind, gates: best.gates, sizes: [], after: best.after, open: turned(trial.open, best.gates, kind) };
    }
  }
  return null;
}

const turned = (open: ReadonlySet<string>, gates: readonly string[], kind: Found['kind']): ReadonlySet<string> =>
  kind === 'open-gates' ? new Set([...open, ...gates]) : new Set([...open].filter((id) => !gates.includes(id)));

/** Each set with one more gate, each combination once. */
function combinations(from: readonly { gates: string[] }[], choices: readonly string[]): string[][] {
  const seen = new Set<string>();
  return from.flatMap(({ gates }) =>
    choices.flatMap((id) => {
      const more = [...gates, id].sort();
      const key = more.join('\n');
      if (gates.includes(id) || seen.has(key)) return [];
      seen.add(key);
      return [more];
    }),
  );
}

/** The try whose slowest run is nearest to its need. */
function closest<T extends { after: Stand }>(tried: readonly T[]): T {
  const nearness = ({ after }: T) => Math.min(...after.slow.map((run) => run.velocity_m_s / run.minimumVelocity_m_s));
  return tried.reduce((a, b) => (nearness(b) > nearness(a) ? b : a));
}

const gated = (section: Section): boolean => section.pickup != null && section.gate != null;

function openGates({ ductwork, open }: Trial): string[] {
  const ids = ductwork.sections.filter((section) => gated(section) && open.has(section.id)).map(({ id }) => id);
  const ungated = ductwork.sections.some(({ pickup, gate }) => pickup != null && gate == null);
  return ids.length + (ungated ? 1 : 0) > 1 ? ids : [];
}

/** Shut gates on whose way lies a slow run; none where some slow run has no shut gate behind it. */
function gatesBehindSlowRuns({ ductwork, open, now }: Trial): string[] {
  const into = new Map(ductwork.sections.map(({ id, into }) => [id, into]));
  const slow = new Set(now.slow.map(({ id }) => id).filter((id) => into.has(id)));
  const helped = new Set<string>();
  const gates = ductwork.sections.flatMap((section) => {
    if (!gated(section) || open.has(section.id)) return [];
    let helps = slow.size < now.slow.length;
    for (let at: string | undefined = section.into; at !== undefined; at = into.get(at)) {
      if (!slow.has(at)) continue;
      helped.add(at);
      helps = true;
    }
    return helps ? [section.id] : [];
  });
  return helped.size === slow.size ? gates : [];
}
