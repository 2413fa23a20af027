import type { ReasonCode } from '../issues/reason-codes.ts';
import type { MotorAtSite } from './at-site.ts';

/** Something about a motor that can hurt someone, or burn it, whatever its load. */
export type MotorCaution = {
  code: ReasonCode;
  severity: 'stop' | 'caution' | 'note';
  text: string;
  values: Record<string, number>;
};

/**
 * What a person should know about this motor on this mains before it runs.
 * @param selfCooled the air it moves cools the motor (flow-through vacuum motors)
 * Cautions defer to local codes and licensed electricians. Source: see `singlePhaseFeed`, `siteDerating`; service notes on vacuum motors.
 */
export function motorCautions(at: MotorAtSite, selfCooled: boolean): MotorCaution[] {
  const cautions: MotorCaution[] = [];
  const add = (
    code: ReasonCode,
    severity: MotorCaution['severity'],
    text: string,
    values: Record<string, number> = {},
  ) => cautions.push({ code, severity, text, values });
  if (at.singlePhase) {
    const [low, high] = at.singlePhase.availableShare;
    add('single-phase-feed', 'caution', at.singlePhase.text, { low, high });
  }
  if (at.connection.kind === 'mismatch') add('voltage-mismatch', 'stop', at.connection.warnings[0]!.text);
  if (at.plate.kind === 'universal' || selfCooled) {
    add(
      'self-cooled-motor',
      'caution',
      'This motor is cooled by the air it moves. A plugged hose or full filter cooks it: fit a relief hole that opens when it is throttled, and never leave it running.',
    );
  }
  if (at.plate.kind === 'dc') {
    add(
      'dc-supply',
      'caution',
      `At ${Math.round(at.plate.voltage_V)} V this motor draws ${Math.round(at.plate.current_A)} A: it needs a supply and fuse for a third more than that, thick short wires, and its brushes wear.`,
      { volts_V: at.plate.voltage_V, current_A: at.plate.current_A },
    );
  }
  const lowest = at.lowestVoltage_V === null ? null : at.lowestVoltage_V / at.current.voltage_V;
  if (lowest !== null && at.current.kind === 'induction' && lowest < 0.9) {
    add(
      'weak-start',
      'caution',
      `At the lowest voltage the motor has ${Math.round(100 * lowest ** 2)} % of its torque for starting and runs hotter at the same load: do not start it then, and let an overload relay set to the plate's amps guard it.`,
      { share: lowest ** 2 },
    );
  }
  if (at.siteFactor < 0.995) {
    add(
      'hot-or-high',
      'note',
      `Thin or hot air cools the motor less here: count on ${Math.round(100 * at.siteFactor)} % of its plate.`,
      { share: at.siteFactor },
    );
  }
  if (at.unbalance && at.unbalance.unbalance > BALANCED) {
    const { unbalance, powerFactor, extraHeat, mustNotRun } = at.unbalance;
    const percent = (share: number) => `${Math.round(100 * share)} %`;
    add(
      'voltage-unbalance',
      'caution',
      `The three voltages are ${(100 * unbalance).toFixed(1)} % apart: the motor heats ${percent(extraHeat)} more; count on ${percent(powerFactor)} of its plate.${mustNotRun ? ' Above 5 % it must not run: have an electrician look for a lost phase or a loose wire.' : ''}`,
      { step: unbalance, share: powerFactor },
    );
  }
  return cautions;
}

/** Up to this unbalance nothing is lost [-]. Source: NEMA MG 1. */
const BALANCED = 0.01;
