import type { CurrentModel } from './current.ts';
import { IDLE_SHARES } from './current.ts';

/** Shares of losses and reactive power that flow without load, with one standard deviation each [-]. */
export type IdleShares = { fixedLoss: number; fixedLossSd: number; reactive: number; reactiveSd: number };

/**
 * A motor with the magnetising share that its idle amps show, if somebody measured them, and what is then still in doubt.
 * @param idle_A amps with the belt off in the plate's connection, null if nobody looked [A]
 * @param voltage_V at the terminals while idling [V]
 * Source: `IDLE_SHARES` without idle amps; with them the share within `MEASURED_SD` (clamp 2 %, and the plate's power factor).
 */
export function idleKnown(
  model: CurrentModel,
  idle_A: number | null,
  voltage_V: number,
): { model: CurrentModel; idle: IdleShares } {
  const usual = IDLE_SHARES[model.phases];
  if (idle_A === null || model.kind === 'brushed') return { model, idle: usual };
  const known = withIdleCurrent(model, idle_A, voltage_V);
  return { model: known, idle: { ...usual, reactive: known.idleReactiveShare, reactiveSd: MEASURED_SD } };
}

/** One standard deviation of a magnetising share from measured idle amps [-]. Practice value. */
const MEASURED_SD = 0.05;

/**
 * The same motor with the magnetising share that its idle amps show.
 * Source: circle diagram, idle amps less the part that covers fixed losses. Held within 0.3..0.98.
 */
export function withIdleCurrent(model: CurrentModel, idle_A: number, voltage_V: number): CurrentModel {
  if (model.kind === 'brushed' || model.reactive_var === 0) return model;
  const lines = model.phases === 3 ? Math.sqrt(3) : 1;
  const apparent_VA = (idle_A / model.plateScale) * lines * voltage_V;
  const input_W = model.losses_W * model.fixedLossShare;
  const reactive_var = Math.sqrt(Math.max(apparent_VA ** 2 - input_W ** 2, 0));
  const share = reactive_var / (model.reactive_var * (voltage_V / model.voltage_V) ** 2);
  return { ...model, idleReactiveShare: Math.min(Math.max(share, 0.3), 0.98) };
}
