import type { CurrentModel, MotorAtSite } from '../motor/index.ts';
import { withIdleShare } from '../motor/index.ts';

/**
 * A motor as its plate has it, and as it may be: what nobody knows of it, as standard normal deviates.
 * All readings taken on one motor share them, so that amps at two loads tell more than twice the amps at one.
 */
export type UncertainMotor = {
  at: MotorAtSite;
  /** names of the deviates that `current` takes, in its order */
  unknowns: readonly string[];
  /** the motor were it off by so many standard deviations each; the first deviate belongs to the first name */
  current(deviates: ArrayLike<number>): CurrentModel;
};

/**
 * Plate efficiency and power factor, idle losses and amps, and the plate's amps, each with its doubt.
 * @param name tells motors of one blower apart
 * Source: spreads of `MotorAtSite.plate.doubt` and `MotorAtSite.idle`; the share of losses stays inside 0..1 by its logit.
 */
export function uncertainMotor(at: MotorAtSite, name: string): UncertainMotor {
  const { current: model, plate, idle } = at;
  const unknowns = ['efficiency', 'power-factor', 'fixed-loss', 'idle-amps', 'plate-amps'].map((u) => `${name}/${u}`);
  const lines = model.phases === 3 ? Math.sqrt(3) : 1;
  const apparent_VA = Math.hypot(model.ratedPower_W + model.losses_W, model.reactive_var);
  return {
    at,
    unknowns,
    current(z) {
      const efficiency = Math.min(plate.efficiency * Math.exp(plate.doubt.efficiency * z[0]!), 0.99);
      const losses_W = plate.ratedPower_W * (1 / efficiency - 1);
      const cosPhi = Math.min(plate.powerFactor * Math.exp(plate.doubt.powerFactor * z[1]!), 0.999);
      const reactive_var = apparent_VA * Math.sqrt(1 - cosPhi * cosPhi);
      const rated_VA = Math.hypot(model.ratedPower_W + losses_W, reactive_var);
      const motor = {
        ...model,
        losses_W,
        reactive_var,
        fixedLossShare: spreadShare(idle.fixedLoss, idle.fixedLossSd, z[2]!),
        // at its rating it draws the plate's amps, whatever its efficiency and power factor are in truth
        plateScale: (model.ratedCurrent_A * Math.exp(plate.doubt.current * z[4]!) * lines * model.voltage_V) / rated_VA,
      };
      return withIdleShare(motor, idle.current * Math.exp(idle.currentLnSd * z[3]!));
    },
  };
}

/** A share of 0..1 moved by z standard deviations on the scale of its logit. */
function spreadShare(centre: number, sd: number, z: number): number {
  const logit = Math.log(centre / (1 - centre)) + (sd / (centre * (1 - centre))) * z;
  return 1 / (1 + Math.exp(-logit));
}
