import type { Random } from './random.ts';

/**
 * A true induction motor: circle diagram with parameters nobody knows, of which the plate tells the makers' round figures.
 *   input = P + L·(f + (1−f)·x²), reactive = Q_r·(q·v² + (1−q)·x²), x = P/P_r/v, v = V/V_r; slip = slip_r·load/v²
 */
export type TrueMotor = {
  plate: {
    kind: 'induction';
    ratedPower_W: number;
    speed_rpm: number;
    voltage_V: number;
    current_A: number;
    powerFactor: number;
    efficiency: number;
    phases: 1 | 3;
    frequency_Hz: number;
  };
  voltage_V: number;
  speed_rpm(shaftPower_W: number): number;
  inputPower_W(shaftPower_W: number): number;
  current_A(shaftPower_W: number): number;
};

const SIZES_W = [120, 180, 250, 370, 550, 750, 1100, 1500, 2200, 3000, 4000, 5500, 7500, 11000, 15000, 18500, 22000];

/** Plate of the motor sold that a blower needing this much at the shaft would have been given, in makers' round figures. */
export function plateFor(wanted_W: number, speed_rpm: number, random: Random) {
  const rated = SIZES_W.find((p) => p >= wanted_W) ?? wanted_W;
  const phases = rated > 2500 || random.chance(0.6) ? 3 : 1;
  const poles = speed_rpm > 2000 ? 2 : 4;
  const synchronous = 6000 / poles;
  const size = Math.log(rated / 1000);
  const efficiency = Math.min(0.78 + 0.03 * size + random.uniform(-0.03, 0.03), 0.92) * (phases === 1 ? 0.92 : 1);
  const powerFactor = Math.min((poles === 2 ? 0.84 : 0.78) + 0.02 * size + random.uniform(-0.03, 0.03), 0.92);
  const slip = Math.min(Math.max(0.045 - 0.01 * size, 0.015), 0.07) * random.uniform(0.8, 1.2);
  const voltage = phases === 3 ? 400 : 230;
  const lines = phases === 3 ? Math.sqrt(3) : 1;
  const plate = {
    kind: 'induction' as const,
    ratedPower_W: rated,
    speed_rpm: 5 * Math.round((synchronous * (1 - slip)) / 5),
    voltage_V: voltage,
    current_A: rounded(rated / efficiency / powerFactor / voltage / lines, 2),
    powerFactor: rounded(powerFactor, 2),
    efficiency: rounded(efficiency, 3),
    phases: phases as 1 | 3,
    frequency_Hz: 50,
  };
  return { plate, synchronous_rpm: synchronous, slip };
}

/** A motor whose truth is somewhat off its plate. */
export function trueMotor(wanted_W: number, speed_rpm: number, random: Random): TrueMotor {
  const { plate, synchronous_rpm: synchronous, slip } = plateFor(wanted_W, speed_rpm, random);
  const { efficiency, powerFactor, phases, voltage_V: voltage, ratedPower_W: rated } = plate;
  const lines = phases === 3 ? Math.sqrt(3) : 1;
  const eta = Math.min(efficiency * (1 + 0.025 * random.normal()), 0.96);
  const cosPhi = Math.min(powerFactor * (1 + 0.025 * random.normal()), 0.97);
  const fixed = clamp((phases === 3 ? 0.45 : 0.5) + 0.12 * random.normal(), 0.1, 0.85);
  const idle = clamp((phases === 3 ? 0.75 : 0.88) + 0.08 * random.normal(), 0.4, 0.98);
  const trueSlip = slip * Math.exp(0.2 * random.normal());
  const frequency = 1 + 0.003 * random.normal();
  // some plates give the amps of this very motor, some those that follow from the maker's round figures
  const ownAmps = random.chance(0.5) ? (eta * cosPhi) / (efficiency * powerFactor) : 1;
  const plateAmps = ownAmps * (1 + 0.02 * random.normal());
  const voltage_V = voltage * (1 + 0.04 * random.normal());
  const losses = rated * (1 / eta - 1);
  const reactive = (rated / eta) * Math.tan(Math.acos(cosPhi));
  const v = voltage_V / voltage;
  const load = (p: number) => p / rated / v;
  const inputPower_W = (p: number) => p + losses * (fixed + (1 - fixed) * load(p) ** 2);
  const current_A = (p: number) =>
    (plateAmps * Math.hypot(inputPower_W(p), reactive * (idle * v * v + (1 - idle) * load(p) ** 2))) /
    lines /
    voltage_V;
  return {
    plate,
    voltage_V,
    speed_rpm: (p) => synchronous * frequency * (1 - (trueSlip * (p / rated)) / v ** 2),
    inputPower_W,
    current_A,
  };
}

export const clamp = (x: number, low: number, high: number) => Math.min(Math.max(x, low), high);
/** To so many digits after the point, as plates and notebooks have it. */
export const rounded = (x: number, digits: number) => Number(x.toFixed(digits));

/** A vacuum cleaner's motor: the plate gives the watts it draws. */
export function brushedMotor(shaft_W: number, speed_rpm: number, random: Random) {
  const efficiency = clamp(0.6 * (1 + 0.1 * random.normal()), 0.4, 0.75);
  const input = 50 * Math.max(2, Math.round(shaft_W / 0.6 / 50));
  return {
    plate: {
      kind: 'universal' as const,
      ratedPower_W: input,
      ratedPowerMeaning: 'input' as const,
      voltage_V: 230,
      phases: 1 as const,
      frequency_Hz: 50,
    },
    voltage_V: 230,
    speed_rpm: () => speed_rpm,
    inputPower_W: (p: number) => p / efficiency,
    current_A: (p: number) => p / efficiency / 230 / 0.95,
  };
}
export type AnyMotor = TrueMotor | ReturnType<typeof brushedMotor>;
