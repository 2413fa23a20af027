import type { WholePlate } from './whole-plate.ts';

/**
 * Electrical side of a motor at one frequency. `ratedPower_W`, `voltage_V` are those at which its windings carry `ratedCurrent_A`.
 */
export type CurrentModel = {
  kind: 'induction' | 'brushed';
  phases: 1 | 3;
  ratedPower_W: number;
  voltage_V: number;
  ratedCurrent_A: number;
  /** losses at rated power [W] */
  losses_W: number;
  /** reactive power at rated power [var] */
  reactive_var: number;
  /** share of the losses that does not depend on load [-] */
  fixedLossShare: number;
  /** share of the reactive power that magnetises and flows without load too [-] */
  idleReactiveShare: number;
  /** plate amps over the amps that the plate's own watts, volts, power factor and efficiency give [-]; 1 unless it contradicts itself */
  plateScale: number;
};

/**
 * Shares of losses and reactive power that flow without load [-], and one standard deviation of the first.
 * Source: circle diagram of ordinary motors: fixed losses 0.45 ± 0.12, magnetising 0.75 ± 0.10 (feasibility figures); published circuits of
 * three-phase motors have 0.81–0.94 for the second (tests/reference/motor-idle), half-load power factors of catalogues, recalled, 0.77–0.92;
 * one phase: practice value; a textbook's split-phase motor of a quarter horsepower has 0.62 and 1.0 (tests/reference/motor-one-phase).
 */
export const IDLE_SHARES = {
  3: { fixedLoss: 0.45, fixedLossSd: 0.12, reactive: 0.78 },
  1: { fixedLoss: 0.5, fixedLossSd: 0.15, reactive: 0.95 },
} as const;

/**
 * Circle-diagram model of a motor, set so that at rated power and voltage it draws the plate's amps.
 * @param frequencyRatio mains over plate frequency [-]: windings hold their flux at volts in proportion, and their torque
 * Source: definition of the rated point; shares of `IDLE_SHARES`.
 */
export function currentModel(plate: WholePlate, frequencyRatio = 1): CurrentModel {
  const lines = plate.phases === 3 ? Math.sqrt(3) : 1;
  const input_W = plate.ratedPower_W / plate.efficiency;
  const apparent_VA = input_W / plate.powerFactor;
  const idle = IDLE_SHARES[plate.phases];
  return {
    kind: plate.kind === 'induction' ? 'induction' : 'brushed',
    phases: plate.phases,
    ratedPower_W: plate.ratedPower_W * frequencyRatio,
    voltage_V: plate.voltage_V * frequencyRatio,
    ratedCurrent_A: plate.current_A,
    losses_W: input_W - plate.ratedPower_W,
    reactive_var: Math.sqrt(Math.max(apparent_VA ** 2 - input_W ** 2, 0)) * frequencyRatio,
    fixedLossShare: idle.fixedLoss,
    idleReactiveShare: idle.reactive,
    plateScale: plate.current_A / (apparent_VA / (lines * plate.voltage_V)),
  };
}

/** What a motor draws: watts, reactive volt-amperes, line amps, power factor and efficiency [-]. */
export type Drawn = {
  input_W: number;
  reactive_var: number;
  current_A: number;
  powerFactor: number;
  efficiency: number;
};

/**
 * What a motor draws at a load and voltage.
 * @param shaftPower_W at the motor's shaft [W], ≥ 0
 * @param voltage_V at its terminals [V], > 0
 * Induction: input = P + L·(f + (1−f)·x²), reactive = Q_r·(q·v² + (1−q)·x²), x = P/P_r/v, v = V/V_r: rotor current grows as the voltage
 * falls. The load is held; a fan sheds up to 3 % of it as slip grows, which is left out on the safe side. Near stall the model
 * understates. Brushed: efficiency and power factor as on the plate.
 * Source: circle diagram of the induction machine (Heyland). Check: at 90 % volts and rated load +10.7 % (NEMA table +11 %).
 * Throws RangeError for a negative load or a voltage that is not positive.
 */
export function drawnBy(model: CurrentModel, shaftPower_W: number, voltage_V: number): Drawn {
  if (!(shaftPower_W >= 0 && Number.isFinite(shaftPower_W)))
    throw new RangeError(`shaftPower_W: expected 0 or more, received ${shaftPower_W}`);
  if (!(voltage_V > 0 && Number.isFinite(voltage_V)))
    throw new RangeError(`voltage_V: expected a positive number, received ${voltage_V}`);
  const lines = model.phases === 3 ? Math.sqrt(3) : 1;
  const v = voltage_V / model.voltage_V;
  const x = shaftPower_W / model.ratedPower_W / (model.kind === 'induction' ? v : 1);
  const f = model.fixedLossShare;
  const q = model.idleReactiveShare;
  const input_W =
    model.kind === 'induction'
      ? shaftPower_W + model.losses_W * (f + (1 - f) * x * x)
      : shaftPower_W * (1 + model.losses_W / model.ratedPower_W);
  const reactive_var =
    model.kind === 'induction' ? model.reactive_var * (q * v * v + (1 - q) * x * x) : model.reactive_var * x;
  const apparent_VA = Math.hypot(input_W, reactive_var);
  return {
    input_W,
    reactive_var,
    current_A: (model.plateScale * apparent_VA) / (lines * voltage_V),
    powerFactor: apparent_VA > 0 ? input_W / apparent_VA : 0,
    efficiency: input_W > 0 ? shaftPower_W / input_W : 0,
  };
}

/**
 * Line amps [A] when the mains sinks from `usual_V` to `lowest_V` under a fan that takes `shaftPower_W` at the usual voltage.
 * Induction motors keep their speed and draw more. Brushed motors slow down with the voltage, and a fan's load with the cube of
 * speed, so they draw less: amps at least in proportion to √V (source: series motor, torque ~ I² ~ n², n ~ V/I).
 */
export function currentAtLowVoltage(
  model: CurrentModel,
  shaftPower_W: number,
  usual_V: number,
  lowest_V: number,
): number {
  if (model.kind === 'induction') return drawnBy(model, shaftPower_W, lowest_V).current_A;
  return drawnBy(model, shaftPower_W, usual_V).current_A * Math.sqrt(lowest_V / usual_V);
}

/** Watts drawn [W] = √3·V·I·cos φ on three phases, V·I·cos φ on one. Source: definition (US DOE motor fact sheet). */
export function inputPower(phases: 1 | 3, voltage_V: number, current_A: number, powerFactor: number): number {
  return (phases === 3 ? Math.sqrt(3) : 1) * voltage_V * current_A * powerFactor;
}
