import type { BlowerResult, MotorResult, Reason, Verdict, WorstDay } from '../assessment.ts';
import { loadAt, motorCautions, type MotorAtSite } from '../motor/index.ts';
import type { Candidate } from './candidate.ts';
import { fasterThanTested } from './faster-than-tested.ts';
import type { JudgedCase } from './judge-case.ts';
import { reason } from './reasons.ts';
import { blowerStates, type JudgedState } from './states.ts';
import type { ShopFacts } from './shop-facts.ts';
import { worstVerdict } from './verdict.ts';
import { worstDay } from './worst-day.ts';
import type { Warning } from '../issues/result.ts';

/**
 * A blower's verdict: the worst of its required plans and of its states.
 * @param cases    its judged cases, all plans and filter states
 * @param motorOnly further cases that count for the motor alone (all gates open, where no plan has it)
 */
export function judgeBlower(
  candidate: Candidate,
  cases: readonly JudgedCase[],
  motorOnly: readonly JudgedCase[],
  facts: ShopFacts,
): { result: Omit<BlowerResult, 'rank'>; worstCase: MotorResult['worstCase']; warnings: Warning[] } {
  const heaviest = heaviestCase([...cases, ...motorOnly]);
  const { states, warnings } = blowerStates(candidate, cases, heaviest, facts);
  const day = worstDay(candidate, heaviest, cases, facts);
  const required = cases.filter((c) => c.result.required);
  const judged = required.length > 0 ? required : cases;
  const probability = Math.min(
    1,
    ...judged.map((c) => c.result.probability),
    ...states.map((s) => s.result.probability ?? 1),
  );
  const verdict = worstVerdict([
    ...judged.map((c) => c.result.verdict),
    ...states.flatMap((s) => (s.verdict === null ? [] : [s.verdict])),
  ]);
  return {
    result: {
      blowerId: candidate.blower.id,
      verdict,
      probability,
      reasons: blowerReasons(candidate, judged, states, facts, day),
      states: states.map((s) => s.result),
      filterLife_h: facts.filterLife_h,
      drumPressure_Pa: drumSuction(states, facts),
      worstDay: day,
      measureNext: [],
      remedies: [],
    },
    worstCase: worstOf(heaviest, candidate.motor),
    warnings,
  };
}

/** The case with the greatest shaft power at its heaviest stable point. */
function heaviestCase(cases: readonly JudgedCase[]): JudgedCase | null {
  const power = (c: JudgedCase) => c.points?.heaviest?.shaftPower_W ?? -1;
  return cases.reduce<JudgedCase | null>(
    (h, c) => (c.points?.heaviest && (h === null || power(c) > power(h)) ? c : h),
    null,
  );
}

function worstOf(heaviest: JudgedCase | null, motor: MotorAtSite): MotorResult['worstCase'] {
  const point = heaviest?.points?.heaviest;
  if (!heaviest || !point) return null;
  const { shaftPower_W, loadFraction } = loadAt(motor, point.shaftPower_W);
  const { gatePlan, filterState } = heaviest.result;
  return { gatePlan, filterState, shaftPower_W, loadFraction };
}

function drumSuction(states: readonly JudgedState[], facts: ShopFacts): number | null {
  return facts.suctionVessel ? (states.find((s) => s.result.state === 'blocked-inlet')?.result.value ?? null) : null;
}

/** Reasons of the worst required cases, each once, then those of the states and the shop. */
function blowerReasons(
  candidate: Candidate,
  judged: readonly JudgedCase[],
  states: readonly JudgedState[],
  facts: ShopFacts,
  day: WorstDay,
): Reason[] {
  const worst = [...judged].sort((a, b) => a.result.probability - b.result.probability);
  const seen = new Set<string>();
  const reasons: Reason[] = [];
  const add = (r: Reason) => {
    const key = `${r.code}/${r.subject}`;
    if (seen.has(key)) return;
    seen.add(key);
    reasons.push(r);
  };
  worst
    .flatMap((c) => c.result.reasons)
    .filter((r) => r.code !== 'enough')
    .forEach(add);
  states.flatMap((s) => s.reasons).forEach(add);
  shopReasons(candidate, facts, day).forEach(add);
  if (reasons.every((r) => r.severity === 'note'))
    (worst[0]?.result.reasons ?? []).filter((r) => r.code === 'enough').forEach(add);
  const order = { stop: 0, caution: 1, note: 2 };
  return reasons.sort((a, b) => order[a.severity] - order[b.severity]);
}

function shopReasons(candidate: Candidate, facts: ShopFacts, day: WorstDay): Reason[] {
  const { motor, blower } = candidate;
  const out: Reason[] = [];
  if (day.openLoad !== null && day.openLoad > 1)
    out.push(reason('motor-overload-open', 'motor', { load: day.openLoad }));
  const drawn = (share: number) => {
    const load = day.heaviest?.load ?? 0;
    return loadAt(motor, share * load * motor.ratedPower_W * motor.serviceFactor * motor.drive.value).current_A;
  };
  const faster = fasterThanTested(candidate, day.current_A, drawn);
  if (faster) out.push(faster);
  const selfCooled = blower.wheel.family === 'through-flow-vacuum';
  out.push(...motorCautions(motor, selfCooled).map((c) => ({ ...c, subject: 'motor' })));
  const { heaviest, usableShare, cable, start } = day;
  if (heaviest && !motor.singlePhase && heaviest.load > usableShare && usableShare < 1)
    out.push(reason('derated-overload', 'motor', { load: heaviest.load, share: usableShare }));
  if (cable && cable.dropFraction > MOST_CABLE_DROP)
    out.push(
      reason('cable-drop', 'motor', { lost_V: cable.drop_V, share: cable.dropFraction, limit: MOST_CABLE_DROP }),
    );
  if (start?.tooLong) out.push(reason('long-start', 'motor', { start_s: start.seconds }));
  if (facts.sparksWithDust) out.push(reason('sparks-with-dust', 'ducts'));
  if (facts.returnedAir) out.push(reason('returned-air', 'exhaust'));
  return out;
}

/** Share of the volts a cable may take, usual in wiring rules for motors [-]. Source: IEC 60364-5-52 annex G, recalled. */
const MOST_CABLE_DROP = 0.05;

/**
 * Best first: verdict, then chance, then price. Chances that cannot be told apart from the best of their group leave it to the
 * price; blowers that even their price does not tell apart share a rank.
 */
export function ranked(
  results: readonly Omit<BlowerResult, 'rank'>[],
  priceOf: (blowerId: string) => number | null,
): BlowerResult[] {
  const order: Record<Verdict, number> = { yes: 0, unsure: 1, no: 2 };
  const byChance = [...results].sort((a, b) => order[a.verdict] - order[b.verdict] || b.probability - a.probability);
  const groups: (typeof byChance)[] = [];
  for (const r of byChance) {
    const best = groups.at(-1)?.[0];
    if (best && best.verdict === r.verdict && best.probability - r.probability <= TIE) groups.at(-1)!.push(r);
    else groups.push([r]);
  }
  const price = (r: (typeof byChance)[number]) => priceOf(r.blowerId) ?? Infinity;
  const sorted = groups.flatMap((group) =>
    // two prices nobody knows are alike
    [...group].sort((a, b) => (price(a) === price(b) ? 0 : price(a) - price(b))).map((r) => ({ r, group })),
  );
  const rank = new Map<string, number>();
  sorted.forEach(({ r, group }, i) => {
    const before = sorted[i - 1];
    const tied = before !== undefined && before.group === group && price(before.r) === price(r);
    rank.set(r.blowerId, tied ? rank.get(before.r.blowerId)! : i + 1);
  });
  return results.map((r) => ({ ...r, rank: rank.get(r.blowerId)! }));
}

/** Chances closer than this are not told apart: the draws themselves are no better. */
const TIE = 0.01;
