import type { Case } from '../assessment.ts';
import type { Transport } from '../duct/index.ts';
import type { Ductwork } from '../job/types.ts';
import { NO_POINT } from './case-reasons.ts';
import type { Plan } from './plans.ts';

/** A curve of no points: nothing is known that would give one. */
export const NO_CURVE: Case['fanCurve'] = {
  flow_m3_s: [],
  totalPressure_Pa: [],
  staticPressure_Pa: [],
  low95_Pa: [],
  high95_Pa: [],
  shaftPower_W: [],
  shaftPowerLow95_W: [],
  shaftPowerHigh95_W: [],
};

/** A case without a point to run at: nothing is invented, the reason says why. */
export function withoutPoint(
  frame: Pick<Case, 'blowerId' | 'gatePlan' | 'required' | 'filterState'>,
  ductwork: Ductwork,
  transport: Transport,
  plan: Plan,
  why: keyof typeof NO_POINT,
): Case {
  const { verdict, probability, reason } = NO_POINT[why];
  const open = (id: string) => plan.open.has(id);
  return {
    ...frame,
    operatingPoint: null,
    otherOperatingPoints: [],
    fanCurve: NO_CURVE,
    systemCurve: { flow_m3_s: [], totalPressure_Pa: [] },
    sections: ductwork.sections.map(({ id }, i) => {
      const run = transport.sections[i]!;
      return {
        id,
        flow_m3_s: 0,
        velocity_m_s: null,
        minimumVelocity_m_s: run.minimumVelocity_m_s,
        ok: !run.judged,
        pressureDrop_Pa: 0,
        judged: run.judged,
      };
    }),
    discharge: { velocity_m_s: null, minimumVelocity_m_s: null, ok: true },
    pickups: ductwork.sections.flatMap(({ id, pickup }) =>
      pickup
        ? [
            {
              id,
              open: open(id),
              flow_m3_s: 0,
              requiredFlow_m3_s: pickup.requiredFlow_m3_s ?? null,
              ok: !open(id),
              probability: open(id) ? probability : 1,
              flow95_m3_s: [0, 0] as [number, number],
            },
          ]
        : [],
    ),
    motor: {
      shaftPower_W: null,
      loadFraction: null,
      margin: null,
      current_A: null,
      currentAtLowestVoltage_A: null,
      worstCase: null,
      probabilityWithinRating: null,
    },
    budget: [],
    verdict,
    probability,
    reasons: reason,
  };
}
