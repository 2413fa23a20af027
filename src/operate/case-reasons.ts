import type { Case, Reason, Verdict } from '../assessment.ts';
import type { Point } from './operating-points.ts';
import { reason } from './reasons.ts';
import { verdictOf } from './verdict.ts';

/** Why a case has no operating point, and what then follows. Without a curve nothing is known: as likely as not. */
export const NO_POINT: Record<
  'outside-evidence' | 'no-operating-point' | 'unstable',
  { verdict: Verdict; probability: number; reason: Reason[] }
> = {
  'outside-evidence': {
    verdict: 'unsure',
    probability: 0.5,
    reason: [reason('outside-evidence', 'curve', { flow_m3_s: null })],
  },
  'no-operating-point': { verdict: 'no', probability: 0, reason: [reason('no-operating-point', 'curve')] },
  unstable: {
    verdict: 'no',
    probability: 0,
    reason: [reason('no-operating-point', 'curve'), reason('unstable', 'curve')],
  },
};

export type CaseFacts = {
  result: Case;
  /** name of the machine at each pick-up section, by id */
  machines: ReadonlyMap<string, string>;
  /** chance that a section's air is fast enough, by index */
  sectionChance(index: number): number;
  dischargeChance: number;
  keepsLoad: number;
  confidence: number;
  loadAtMost: number;
  points: readonly Point[];
  outside: boolean;
  powerUnknown: boolean;
  outletAreaUnknown: boolean;
  dustThroughWheel: boolean;
  /** fan total pressure over the air's own pressure */
  pressureShare: number;
};

/** Above this share of the air's own pressure the air can no longer be taken as incompressible. Source: the job document's definition. */
export const COMPRESSIBLE = 0.05;

/** Everything that speaks for or against a case: what falls short first, then doubts and dangers, then what is enough. */
export function caseReasons(facts: CaseFacts): Reason[] {
  const { result, confidence } = facts;
  const graded = (chance: number, r: Reason): Reason[] => {
    const verdict = verdictOf(chance, confidence);
    if (verdict === 'yes') return [];
    return [{ ...r, severity: verdict === 'no' ? 'stop' : 'caution' }];
  };
  const machine = (id: string) => facts.machines.get(id) ?? id;
  const asked = result.pickups.filter((p) => p.open && p.requiredFlow_m3_s !== null);

  const short = [
    ...asked.flatMap((p) =>
      graded(
        p.probability,
        reason('flow-short', p.id, {
          machine: machine(p.id),
          flow_m3_s: p.flow_m3_s,
          required_m3_s: p.requiredFlow_m3_s!,
          probability: p.probability,
        }),
      ),
    ),
    ...result.sections.flatMap((s, i) => {
      if (!s.judged || s.velocity_m_s === null || s.minimumVelocity_m_s === null) return [];
      const chance = facts.sectionChance(i);
      return graded(
        chance,
        reason('velocity-low', s.id, {
          section: s.id,
          velocity_m_s: s.velocity_m_s,
          minimum_m_s: s.minimumVelocity_m_s,
          probability: chance,
        }),
      );
    }),
    ...(result.discharge.minimumVelocity_m_s !== null && result.discharge.velocity_m_s !== null
      ? graded(
          facts.dischargeChance,
          reason('velocity-low', 'discharge', {
            section: 'the run behind the blower',
            velocity_m_s: result.discharge.velocity_m_s,
            minimum_m_s: result.discharge.minimumVelocity_m_s,
            probability: facts.dischargeChance,
          }),
        )
      : []),
    ...(result.motor.loadFraction !== null
      ? graded(
          facts.keepsLoad,
          reason('motor-overload', 'motor', {
            load: result.motor.loadFraction,
            limit: facts.loadAtMost,
            probability: facts.keepsLoad,
          }),
        )
      : []),
  ];
  const flows = facts.points.map((p) => p.flow_m3_s);
  const doubts = [
    ...(facts.points.length > 1
      ? [
          reason('several-points', 'curve', {
            count: flows.length,
            least_m3_s: flows[0]!,
            most_m3_s: flows[flows.length - 1]!,
          }),
        ]
      : []),
    ...(facts.outside ? [reason('outside-evidence', 'curve', { flow_m3_s: result.operatingPoint!.flow_m3_s })] : []),
    ...(facts.powerUnknown ? [reason('power-unknown', 'motor')] : []),
    ...(facts.outletAreaUnknown ? [reason('outlet-area-unknown', 'outlet')] : []),
    ...(facts.dustThroughWheel ? [reason('dust-through-wheel', 'wheel')] : []),
    ...(facts.pressureShare > COMPRESSIBLE ? [reason('compressible', 'air', { share: facts.pressureShare })] : []),
  ];
  const enough = asked
    .filter((p) => verdictOf(p.probability, confidence) === 'yes')
    .map((p) =>
      reason('enough', p.id, { machine: machine(p.id), flow_m3_s: p.flow_m3_s, required_m3_s: p.requiredFlow_m3_s! }),
    );
  return [...short, ...doubts, ...enough];
}
