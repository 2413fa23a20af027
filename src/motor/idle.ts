import type { CurrentModel } from './current.ts';
import { drawnBy, IDLE_SHARES } from './current.ts';

/**
 * What a motor draws without load: share of its losses [-], and amps at its own volts over its rated amps [-], each with one standard
 * deviation, that of the amps in their logarithm.
 */
export type IdleShares = { fixedLoss: number; fixedLossSd: number; current: number; currentLnSd: number };

/**
 * Doubt of idle amps nobody measured, one standard deviation in ln [-]. Source: catalogues and repair shops have 0.3–0.6 of rated amps on three
 * phases and 0.5–0.9 on one, of which the plate's power factor explains a good half (recalled, practice values).
 */
const NOT_MEASURED = { 3: 0.15, 1: 0.14 } as const;
/**
 * A run capacitor hides the magnetising amps of a one-phase motor at its rating, not those without load. Source: workshop notes (such motors
 * heat up running light), recalled; practice value.
 */
const CAPACITOR = { least: 0.55, lnSd: 0.2 };
/** Doubt of idle amps from a clamp with the belt off: clamp 2 %, volts 1 % (with their square). Practice value. */
const MEASURED = 0.03;

/**
 * A motor with the idle amps that somebody measured, and what is then still in doubt.
 * @param idle_A amps with the belt off in the plate's connection, null if nobody looked [A]
 * @param voltage_V at the terminals while idling [V]
 * Source: `IDLE_SHARES` without idle amps; with them those amps.
 */
export function idleKnown(
  model: CurrentModel,
  idle_A: number | null,
  voltage_V: number,
): { model: CurrentModel; idle: IdleShares } {
  const { fixedLoss, fixedLossSd } = IDLE_SHARES[model.phases];
  const share = (of: CurrentModel) =>
    drawnBy(of, 0, of.voltage_V).current_A / drawnBy(of, of.ratedPower_W, of.voltage_V).current_A;
  const shares = (of: CurrentModel, currentLnSd: number) => ({
    model: of,
    idle: { fixedLoss, fixedLossSd, current: share(of), currentLnSd },
  });
  if (model.kind === 'brushed') return shares(model, 0);
  if (idle_A !== null) return shares(withIdleCurrent(model, idle_A, voltage_V), MEASURED);
  if (model.phases === 1 && share(model) < CAPACITOR.least)
    return shares(withIdleShare(model, CAPACITOR.least), CAPACITOR.lnSd);
  return shares(model, NOT_MEASURED[model.phases]);
}

/**
 * The same motor with the magnetising share that its idle amps show.
 * Source: circle diagram, idle amps less the part that covers fixed losses.
 */
export function withIdleCurrent(model: CurrentModel, idle_A: number, voltage_V: number): CurrentModel {
  if (model.kind === 'brushed' || model.reactive_var === 0) return model;
  const lines = model.phases === 3 ? Math.sqrt(3) : 1;
  const apparent_VA = (idle_A / model.plateScale) * lines * voltage_V;
  return withIdleApparent(model, apparent_VA * (model.voltage_V / voltage_V) ** 2);
}

/** The same motor idling at a share of its rated amps at its own volts [-]. Source: as `withIdleCurrent`. */
export function withIdleShare(model: CurrentModel, share: number): CurrentModel {
  if (model.kind === 'brushed' || model.reactive_var === 0) return model;
  return withIdleApparent(model, share * Math.hypot(model.ratedPower_W + model.losses_W, model.reactive_var));
}

/** Held within `REACTIVE`: outside, it is the meter or the plate that is wrong. */
function withIdleApparent(model: CurrentModel, apparent_VA: number): CurrentModel {
  const input_W = model.losses_W * model.fixedLossShare;
  const share = Math.sqrt(Math.max(apparent_VA ** 2 - input_W ** 2, 0)) / model.reactive_var;
  const [least, most] = REACTIVE[model.phases];
  return { ...model, idleReactiveShare: Math.min(Math.max(share, least), most) };
}

/**
 * Magnetising shares that motors have [-]. Load adds leakage to a three-phase motor's; a capacitor or the backward field of a
 * single-phase one may take some away. Source: circle diagram; double revolving field.
 */
const REACTIVE = { 3: [0.3, 1], 1: [0.3, 2] } as const;
