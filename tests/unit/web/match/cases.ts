import type { BlowerResult, Case, StateResult, Verdict, WorstDay } from '../../../../src/assessment.ts';
import type { PlanView } from '../../../../web/match/plans.ts';

/** A judged case with the least in it, for sentences: each machine's chance decides. */
export function caseOf(open: string[], chance: number, more: Partial<Case> = {}): Case {
  return {
    blowerId: 'b1',
    gatePlan: open.join(' + '),
    required: true,
    filterState: 'loaded',
    operatingPoint: {
      flow_m3_s: 0.25,
      totalPressure_Pa: 2600,
      staticPressure_Pa: 2500,
      shaftPower_W: 1500,
      efficiency: 0.43,
      speed_rpm: 2850,
      stable: true,
      interval95: { flow_m3_s: [0.22, 0.3], totalPressure_Pa: [2400, 2800], shaftPower_W: [1400, 1600] },
    },
    otherOperatingPoints: [],
    fanCurve: {
      flow_m3_s: [0, 0.2, 0.4],
      totalPressure_Pa: [2900, 2800, 1800],
      low95_Pa: [2700, 2600, 1600],
      high95_Pa: [3100, 3000, 2000],
      shaftPower_W: [700, 1300, 1900],
      staticPressure_Pa: [2900, 2780, 1720],
      shaftPowerLow95_W: [650, 1200, 1800],
      shaftPowerHigh95_W: [750, 1400, 2000],
    },
    systemCurve: { flow_m3_s: [0, 0.125, 0.25, 0.35], totalPressure_Pa: [0, 650, 2600, 5096] },
    sections: [],
    discharge: { velocity_m_s: 12, minimumVelocity_m_s: null, ok: true },
    pickups: open.map((id) => ({
      id,
      open: true,
      flow_m3_s: 0.25,
      requiredFlow_m3_s: 0.25,
      ok: chance > 0.5,
      probability: chance,
      flow95_m3_s: [0.22, 0.3],
    })),
    motor: {
      shaftPower_W: 1580,
      loadFraction: 0.72,
      margin: 0.28,
      current_A: 3.4,
      currentAtLowestVoltage_A: 3.9,
      worstCase: null,
      probabilityWithinRating: 0.99,
    },
    budget: [],
    verdict: chance >= 0.95 ? 'yes' : chance < 0.05 ? 'no' : 'unsure',
    probability: chance,
    reasons: [],
    ...more,
  };
}

const CHANCE: Record<Verdict, number> = { yes: 0.98, unsure: 0.7, no: 0.01 };

export function planOf(open: string[], verdict: Verdict, more: Partial<PlanView> = {}): PlanView {
  const worst = caseOf(open, CHANCE[verdict]);
  return {
    name: open.join(' + '),
    open,
    required: open.length === 1,
    verdict,
    probability: worst.probability,
    clean: null,
    loaded: worst,
    worst,
    ...more,
  };
}

/** A motor nothing is known of. */
const quietDay: WorstDay = {
  heaviest: null,
  lightestLoad: null,
  openLoad: null,
  loadAtMost: 0.9,
  usableShare: 1,
  plate_A: 4.6,
  current_A: null,
  lowest: null,
  cable: null,
  start: null,
  speed: null,
  meters: [],
};

export const blowerOf = (states: Partial<StateResult>[] = []): BlowerResult => ({
  blowerId: 'b1',
  verdict: 'yes',
  probability: 0.98,
  rank: 1,
  reasons: [],
  states: states.map((state) => ({
    state: 'tip-speed',
    value: 1,
    limit: 1,
    unit: '1',
    ok: true,
    probability: 1,
    gatePlan: null,
    ...state,
  })),
  filterLife_h: null,
  drumPressure_Pa: null,
  worstDay: quietDay,
  measureNext: [],
  remedies: [],
});

export const plainNames = { machine: (id: string) => id, section: (id: string) => id };
