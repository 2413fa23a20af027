import type { Reason, StateResult, Verdict } from '../assessment.ts';
import { FAMILY } from '../fan/families.ts';
import { tipSpeedCheck } from '../fan/tip-speed.ts';
import type { Warning } from '../issues/result.ts';
import { loadAt } from '../motor/index.ts';
import type { Candidate } from './candidate.ts';
import { criticalLoad } from './critical-load.ts';
import type { JudgedCase } from './judge-case.ts';
import { reason } from './reasons.ts';
import type { ShopFacts } from './shop-facts.ts';
import { verdictOf } from './verdict.ts';

/** A state with what it has to say. */
export type JudgedState = { result: StateResult; verdict: Verdict | null; reasons: Reason[] };

/**
 * Five states, because each asks another question: air with full filters, motor at its heaviest, suction at blocked inlet,
 * current at the lowest voltage, speed of the wheel's rim. A state whose data are missing stays open, warns and does not count.
 */
export function blowerStates(
  candidate: Candidate,
  cases: readonly JudgedCase[],
  heaviest: JudgedCase | null,
  facts: ShopFacts,
): { states: JudgedState[]; warnings: Warning[] } {
  const warnings: Warning[] = [];
  const states = [
    loadedFilters(cases, facts),
    highestMotorLoad(candidate, heaviest, facts),
    blockedInlet(candidate, facts, warnings),
    lowestVoltage(candidate, heaviest, facts, warnings),
    tipSpeed(candidate, warnings),
  ];
  return { states, warnings };
}

const open = (state: StateResult['state'], unit: string, value: number | null = null): JudgedState => ({
  result: { state, value, limit: null, unit, ok: null, probability: null, gatePlan: null },
  verdict: null,
  reasons: [],
});

/** The machine that comes nearest to too little, over the required plans in the worst filter state there is. */
function loadedFilters(cases: readonly JudgedCase[], { confidence }: ShopFacts): JudgedState {
  const required = cases.filter((c) => c.result.required);
  const loaded = required.filter((c) => c.result.filterState === 'loaded');
  const asked = (loaded.length > 0 ? loaded : required).flatMap((c) =>
    c.result.pickups.filter((p) => p.open && p.requiredFlow_m3_s).map((p) => ({ c, p })),
  );
  if (asked.length === 0) return open('loaded-filters', 'm3/s');
  const worst = asked.reduce((w, x) =>
    x.p.flow_m3_s / x.p.requiredFlow_m3_s! < w.p.flow_m3_s / w.p.requiredFlow_m3_s! ? x : w,
  );
  return {
    result: {
      state: 'loaded-filters',
      value: worst.p.flow_m3_s,
      limit: worst.p.requiredFlow_m3_s,
      unit: 'm3/s',
      ok: worst.p.ok,
      probability: worst.p.probability,
      gatePlan: worst.c.result.gatePlan,
    },
    verdict: verdictOf(worst.p.probability, confidence),
    reasons: [],
  };
}

function highestMotorLoad(
  { motor }: Candidate,
  heaviest: JudgedCase | null,
  { confidence, loadAtMost }: ShopFacts,
): JudgedState {
  const point = heaviest?.points?.heaviest;
  if (!heaviest || !point) return open('highest-motor-load', '1');
  const load = loadAt(motor, point.shaftPower_W).loadFraction;
  const feed = motor.singlePhase?.availableShare ?? null;
  const probability =
    feed && heaviest.chances ? shareOnOnePhase(heaviest.chances.load, loadAtMost, feed) : heaviest.keepsLoad;
  const limit = feed ? (loadAtMost * (feed[0] + feed[1])) / 2 : loadAtMost;
  const verdict = verdictOf(probability, confidence);
  const said = reason('motor-overload', 'motor', { load, limit, probability });
  return {
    result: {
      state: 'highest-motor-load',
      value: load,
      limit,
      unit: '1',
      ok: load <= limit,
      probability,
      gatePlan: heaviest.result.gatePlan,
    },
    verdict,
    reasons: verdict === 'yes' ? [] : [{ ...said, severity: verdict === 'no' ? 'stop' : 'caution' }],
  };
}

/**
 * Chance that a three-phase motor on one phase carries its load: what the capacitor leaves of its rating lies anywhere in its range.
 * Draws are paired with places in the range by the golden ratio, which spreads them evenly.
 */
function shareOnOnePhase(load: Float64Array, loadAtMost: number, [low, high]: readonly [number, number]): number {
  const left = (d: number) => low + (high - low) * (((d + 0.5) * GOLDEN) % 1);
  return load.reduce((n, x, d) => n + (x <= loadAtMost * left(d) ? 1 : 0), 0) / load.length;
}
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The highest suction the blower can make, with its inlet blocked: what drum and filter box must withstand. */
function blockedInlet(
  { estimate, draws, path }: Candidate,
  { suctionVessel }: ShopFacts,
  warnings: Warning[],
): JudgedState {
  if (!estimate || !draws) return open('blocked-inlet', 'Pa');
  const suction = draws.flows_m3_s.reduce((most, q) => Math.max(most, estimate.best.static_Pa(q)), 0);
  if (!suctionVessel) return open('blocked-inlet', 'Pa', suction);
  warnings.push({
    code: 'drum-strength-unknown',
    text: 'How much suction drum and filter box withstand is not worked out here: measure wall and lid, fit stiff rings and a relief flap.',
    path,
  });
  return {
    ...open('blocked-inlet', 'Pa', suction),
    reasons: [reason('drum-may-collapse', 'drum', { suction_Pa: suction })],
  };
}

function lowestVoltage(
  candidate: Candidate,
  heaviest: JudgedCase | null,
  { confidence }: ShopFacts,
  warnings: Warning[],
): JudgedState {
  const { motor, path } = candidate;
  const power = heaviest?.points?.heaviest?.shaftPower_W;
  const atLowest = (wheel_W: number) => loadAt(motor, wheel_W).currentRatioAtLowestVoltage;
  const ratio = power === undefined ? null : atLowest(power);
  if (ratio === null || power === undefined || !heaviest?.chances || motor.lowestVoltage_V === null) {
    if (motor.lowestVoltage_V === null)
      warnings.push({
        code: 'lowest-voltage-unknown',
        text: 'How low the voltage falls in the evening is not known: read a meter at the socket then.',
        path: '/supply/lowestVoltage_V',
      });
    else if (ratio === null)
      warnings.push({
        code: 'current-unknown',
        text: 'The amps at the lowest voltage cannot be worked out for this motor on this mains.',
        path: `${path}/motor`,
      });
    return open('lowest-voltage', '1');
  }
  const capacity = motor.ratedPower_W * motor.serviceFactor * motor.drive.value;
  const { currentAtLowestVoltage_A: current, mayStall } = loadAt(motor, power);
  const probability = mayStall ? 0 : shareBelow(heaviest.chances.load, criticalLoad(atLowest, capacity));
  const verdict = verdictOf(probability, confidence);
  const said = reason('low-voltage', 'motor', {
    current_A: current!,
    plate_A: current! / ratio,
    voltage_V: motor.lowestVoltage_V,
  });
  return {
    result: {
      state: 'lowest-voltage',
      value: ratio,
      limit: 1,
      unit: '1',
      ok: ratio <= 1 && !mayStall,
      probability,
      gatePlan: heaviest.result.gatePlan,
    },
    verdict,
    reasons: verdict === 'yes' ? [] : [{ ...said, severity: verdict === 'no' ? 'stop' : 'caution' }],
  };
}

const shareBelow = (values: Float64Array, limit: number): number =>
  values.reduce((n, v) => n + (v <= limit ? 1 : 0), 0) / values.length;

/** Speed of the wheel's rim against what its kind stands: sure below the range, in doubt inside, never above. */
function tipSpeed({ blower, speed_rpm, path }: Candidate, warnings: Warning[]): JudgedState {
  const { wheel } = blower;
  const check = tipSpeedCheck(wheel, speed_rpm);
  if (check.value === null || check.verdict === null) {
    const missing = wheel.diameter_m == null ? 'diameter' : 'speed';
    const text = `The ${missing} of the wheel is not known, so nobody can say whether its rim runs too fast. Measure it.`;
    warnings.push({ code: 'tip-speed-unknown', text, path: `${path}/wheel/diameter_m` });
    return open('tip-speed', 'm/s');
  }
  const { value, limit, ok, probability, verdict } = check;
  const [, high] = wheel.safeTipSpeed_m_s == null ? FAMILY[wheel.family].tipSpeedLimit_m_s : [0, limit];
  const said = reason('tip-speed', 'wheel', { speed_m_s: value, low_m_s: limit, high_m_s: high });
  return {
    result: { state: 'tip-speed', value, limit, unit: 'm/s', ok, probability, gatePlan: null },
    verdict,
    reasons: verdict === 'yes' ? [] : [{ ...said, severity: verdict === 'no' ? 'stop' : 'caution' }],
  };
}
