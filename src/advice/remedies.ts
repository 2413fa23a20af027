import jsonPatch, { type Operation } from 'fast-json-patch';
import type { Assessment, ChangeValues, PatchOperation, Remedy } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import { candidateOf } from '../blower-curve.ts';
import { judge, placeOf, type Judgement } from '../judge.ts';
import type { Candidate } from '../operate/candidate.ts';
import { formatNumber, formatQuantity } from '../units/format.ts';
import type { Change, ChangeSituation } from './change.ts';
import { proposals } from './changes/index.ts';

/**
 * The smallest practical changes that turn a blower's no or not-sure into a yes. Every one is judged by the program itself on
 * the changed job; none that passes trades one failure for another. Cheapest kind first; where no single change does it, two
 * and then three together.
 */

/** Draws for a first look; what looks promising is judged with all of them. */
const LOOK_DRAWS = 192;
const PROMISING = 0.9;
/** A blower that gives less than this share of what a machine needs is beyond any of these changes. Estimated. */
const HOPELESS = 0.45;
const MOST_REMEDIES = 4;
const BEST_SINGLES = 10;
/** A shop of more sections would take longer than anybody waits. */
const MOST_SECTIONS = 60;

type Outcome = { probability: number; verdict: string; assessment: Assessment };

/**
 * Work one search may do, in looks at one case of a shop of twenty sections: a few seconds on a small machine. Counted, not
 * timed, so that the same job gives the same answer everywhere.
 */
const WORK = 5000;
const CONFIRMING_COSTS_LOOKS = 5;

/** How many looks each of so many blowers in doubt may cost in this shop. */
const looksAllowed = (job: Job, judgement: Judgement, blowersInDoubt: number): number => {
  const cases = judgement.assessment.cases.length / job.blowers.length;
  return Math.floor(WORK / (cases * ((job.ductwork.sections.length + 20) / 20)) / blowersInDoubt);
};

/** @param index place of the blower in the job */
export function remediesFor(job: Job, judgement: Judgement, index: number): Remedy[] {
  const situation = situationOf(job, judgement, index);
  if (situation === null || job.ductwork.sections.length > MOST_SECTIONS) return [];
  const inDoubt = judgement.assessment.blowers.filter((b) => b.verdict !== 'yes').length;
  let looks = looksAllowed(job, judgement, inDoubt);
  const unchanged = unchangedCandidate(job, judgement, index);
  const look = (changes: readonly Change[], draws?: number) => {
    looks -= draws === undefined ? CONFIRMING_COSTS_LOOKS : 1;
    return looks < 0 ? null : outcome(job, index, changes, unchanged, draws);
  };
  const found: { changes: Change[]; remedy: Remedy }[] = [];
  const confirm = (changes: Change[]): boolean => {
    const sure = look(changes);
    if (sure?.verdict !== 'yes') return false;
    found.push({ changes, remedy: remedyOf(judgement, job, index, changes, sure) });
    return true;
  };

  const singles: { change: Change; probability: number }[] = [];
  const settled = new Set<string>();
  for (const change of proposals(situation)) {
    if (settled.has(change.kind)) continue;
    const seen = look([change], LOOK_DRAWS);
    if (seen === null) continue;
    singles.push({ change, probability: seen.probability });
    if (seen.probability >= PROMISING && confirm([change])) settled.add(change.kind);
    if (found.length >= MOST_REMEDIES) break;
  }
  if (found.length === 0) combine(singles, judgement.assessment.blowers[index]!.probability, look, confirm);
  return found.map((f) => f.remedy);
}

/** Two, then three changes of different kinds that each help. */
function combine(
  singles: readonly { change: Change; probability: number }[],
  before: number,
  look: (changes: readonly Change[], draws?: number) => Outcome | null,
  confirm: (changes: Change[]) => boolean,
) {
  const best = promisingParts(singles, before);
  const pairs = best.flatMap((a, i) =>
    best
      .slice(i + 1)
      .filter((b) => b.kind !== a.kind)
      .map((b) => [a, b]),
  );
  const seen = pairs
    .map((changes) => ({ changes, probability: look(changes, LOOK_DRAWS)?.probability ?? 0 }))
    .sort((a, b) => b.probability - a.probability);
  let confirmed = 0;
  for (const { changes, probability } of seen) {
    if (probability < PROMISING || confirmed >= 2) break;
    if (confirm(changes)) confirmed++;
  }
  if (confirmed > 0 || seen.length === 0) return;
  const pair = seen[0]!.changes;
  for (const third of best) {
    if (pair.some((c) => c.kind === third.kind)) continue;
    const three = [...pair, third];
    if ((look(three, LOOK_DRAWS)?.probability ?? 0) >= PROMISING && confirm(three)) return;
  }
}

/**
 * Of each kind the single change that helps most, and the boldest: a fast pulley may fail alone for the motor it overloads.
 */
function promisingParts(singles: readonly { change: Change; probability: number }[], before: number): Change[] {
  const kinds = [...new Set(singles.map((s) => s.change.kind))];
  const chosen = kinds.flatMap((kind) => {
    const own = singles.filter((s) => s.change.kind === kind);
    const best = own.reduce((a, b) => (b.probability > a.probability ? b : a));
    const boldest = own[own.length - 1]!;
    return best === boldest ? [best] : [best, boldest];
  });
  const bold = new Set<string>(['pulley', 'motor', 'belt-drive']);
  return chosen
    .filter((s) => s.probability >= before - 0.02 || bold.has(s.change.kind))
    .sort((a, b) => b.probability - a.probability)
    .slice(0, BEST_SINGLES)
    .map((s) => s.change);
}

/** What falls short, and where; null where nothing known could help. */
function situationOf(job: Job, judgement: Judgement, index: number): ChangeSituation | null {
  const judged = judgement.blowers[index]!;
  const required = judged.cases.filter((c) => c.result.required);
  const failing = required.filter((c) => c.result.verdict !== 'yes');
  const states = judgement.assessment.blowers[index]!.states;
  const load = states.find((s) => s.state === 'highest-motor-load');
  const current = states.find((s) => s.state === 'lowest-voltage');
  const enough = 1 - judgement.facts.confidence;
  const overloaded = (load?.probability ?? 1) < 1 - enough || (current?.probability ?? 1) < 1 - enough;
  if (required.some((c) => c.result.operatingPoint === null)) return null;
  const share = Math.min(
    ...failing.flatMap((c) =>
      c.result.pickups.filter((p) => p.open && p.requiredFlow_m3_s).map((p) => p.flow_m3_s / p.requiredFlow_m3_s!),
    ),
    1,
  );
  if (share < HOPELESS) return null;

  const place = new Map(job.ductwork.sections.map((s, i) => [s.id, i]));
  const short = new Set<number>();
  const slow = new Set<number>();
  for (const { result } of failing) {
    for (const p of result.pickups) {
      if (!p.open) continue;
      for (let i = place.get(p.id); i !== undefined; i = place.get(job.ductwork.sections[i]!.into)) short.add(i);
    }
    for (const r of result.reasons)
      if (r.code === 'velocity-low' && place.has(r.subject)) slow.add(place.get(r.subject)!);
  }
  return { job, index, judged, short, slow, motorOverloaded: overloaded };
}

/** The changed job's judgement of this one blower; its curve is worked out again only where blower or outlet are touched. */
function outcome(
  job: Job,
  index: number,
  changes: readonly Change[],
  unchanged: (draws?: number) => Candidate,
  draws?: number,
): Outcome | null {
  const patch = changes.flatMap((c) => c.patch);
  const changed = patched(job, patch);
  if (changed === null) return null;
  const curveStays = patch.every(({ path }) => !CURVE_HANGS_ON.test(path));
  const blower = changed.blowers[index]!;
  const known = new Map(curveStays ? [[blower.id, unchanged(draws)]] : []);
  const { assessment } = judge({ ...changed, blowers: [blower] }, draws, known);
  const { probability, verdict } = assessment.blowers[0]!;
  return { probability, verdict, assessment };
}

/** The outlet of a blower nobody measured is guessed from the run behind it. */
const CURVE_HANGS_ON = /^\/(blowers|ductwork\/discharge)\//;

/** The blower as it is, with so many draws: made once. */
function unchangedCandidate(job: Job, judgement: Judgement, index: number): (draws?: number) => Candidate {
  const { candidate } = judgement.blowers[index]!;
  let few: Candidate | null = null;
  return (draws) =>
    draws === undefined
      ? candidate
      : (few ??= candidateOf(job.blowers[index]!, placeOf(job, judgement.assessment.air, index), draws));
}

/** The job with a patch applied; null where two changes get in each other's way. */
function patched(job: Job, patch: readonly PatchOperation[]): Job | null {
  const paths = patch.map((p) => p.path);
  if (new Set(paths).size < paths.length) return null;
  const copy = structuredCopy(job);
  return jsonPatch.applyPatch(copy, structuredCopy(patch) as Operation[], false, true).newDocument;
}

const structuredCopy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

function remedyOf(
  judgement: Judgement,
  job: Job,
  index: number,
  changes: readonly Change[],
  { assessment, probability }: Outcome,
): Remedy {
  const what = changes.map((c, i) => (i === 0 ? c.what : c.what[0]!.toLowerCase() + c.what.slice(1))).join('; and ');
  const outcome = outcomeOf(judgement, job, index, assessment);
  return {
    kind: changes.map((c) => c.kind).join('+'),
    text: `${what}. ${thenWords(outcome, job.blowers[index]!.id)}`,
    parts: changes.map(({ kind, values }) => ({ kind, values })),
    outcome,
    change: changes.flatMap((c) => c.patch),
    verdictAfter: 'yes',
    probabilityAfter: probability,
  };
}

/** The changed shop in its tightest numbers, and the same now: a machine's air, the motor's load. */
function outcomeOf(judgement: Judgement, job: Job, index: number, after: Assessment): ChangeValues {
  const blower = job.blowers[index]!.id;
  const worst = after.cases
    .filter((c) => c.required)
    .flatMap((c) => c.pickups.filter((p) => p.open && p.requiredFlow_m3_s).map((pickup) => ({ case: c, pickup })))
    .sort((a, b) => share(a.pickup) - share(b.pickup))[0];
  const now = judgement.assessment.cases
    .find((c) => c.blowerId === blower && worst && sameCase(c, worst.case))
    ?.pickups.find((p) => p.id === worst!.pickup.id);
  const load = (a: Assessment) =>
    a.blowers.find((b) => b.blowerId === blower)?.states.find((s) => s.state === 'highest-motor-load')?.value;
  const [loadThen, loadNow] = [load(after), load(judgement.assessment)];
  return {
    ...(worst && {
      machine: machineName(job, worst.pickup.id),
      flow_m3_s: worst.pickup.flow_m3_s,
      required_m3_s: worst.pickup.requiredFlow_m3_s!,
    }),
    ...(now && { flowNow_m3_s: now.flow_m3_s }),
    ...(loadThen != null && { load: loadThen }),
    ...(loadNow != null && { loadNow }),
  };
}

/** The same in a sentence. */
function thenWords(outcome: ChangeValues, blower: string): string {
  const number = (name: string) => outcome[name] as number;
  const flow = (name: string) => formatQuantity(number(name), 'm³/h');
  const percent = (name: string) => `${formatNumber(100 * number(name), 0)} %`;
  const now = (name: string, said: (name: string) => string) => (name in outcome ? ` (now ${said(name)})` : '');
  const words = [
    ...('machine' in outcome
      ? [
          `The ${outcome['machine']} then gets ${flow('flow_m3_s')}${now('flowNow_m3_s', flow)} and needs ${flow('required_m3_s')}`,
        ]
      : []),
    ...('load' in outcome ? [`the motor carries ${percent('load')} at most${now('loadNow', percent)}`] : []),
  ].join('; ');
  return words === '' ? `Then blower ${blower} suits.` : `${words[0]!.toUpperCase()}${words.slice(1)}.`;
}

type Pickup = Assessment['cases'][number]['pickups'][number];
const share = (p: Pickup): number => p.flow_m3_s / p.requiredFlow_m3_s!;
const sameCase = (a: Assessment['cases'][number], b: Assessment['cases'][number]): boolean =>
  a.gatePlan === b.gatePlan && a.filterState === b.filterState;
const machineName = (job: Job, id: string): string =>
  job.ductwork.sections.find((s) => s.id === id)?.pickup?.machine ?? id;
