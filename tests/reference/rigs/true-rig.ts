import type { Random } from './random.ts';
import { circle_m2, friction_Pa, type TrueAir } from './true-air.ts';
import { METHODS, type RigMethod } from './true-methods.ts';
import { rounded } from './true-motor.ts';

/** What a wheel on its motor does at a flow in the air of the test, at the speed it then finds. */
export type Running = {
  speed_rpm: number;
  static_Pa: number;
  total_Pa: number;
  motorPower_W: number;
  wheelPower_W: number;
};

/** True sizes of instrument errors against what the program takes for granted [-]. */
export type ErrorSizes = { flow: number; manometer: number; workshop: number; electrical: number };

export type TestWish = {
  method: RigMethod;
  side: 'inlet' | 'outlet';
  tap: 'near' | 'far';
  inletDiameter_m: number;
  freeFlow_m3_s: number;
  /** shares of free delivery to read at, rising */
  shares: number[];
  shutOff: boolean;
  electrical: 'amps' | 'watts' | 'none';
  speeds: boolean;
  sizes: ErrorSizes;
};

export type TestedRow = { flow_m3_s: number; running: Running };
export type Tested = {
  rig: Record<string, unknown>;
  rows: Record<string, number | number[]>[];
  truth: TestedRow[];
};

/** Everything a method needs to turn a true state into readings. All errors are drawn once per rig or once per row. */
export type Bench = {
  air: TrueAir;
  side: 'inlet' | 'outlet';
  pipe: { diameter_m: number; area_m2: number };
  told: { pipeDiameter_m: number };
  /** true flow over what the method's formula gives [-] */
  flowFactor: number;
  friction_Pa(length_m: number, flow_m3_s: number): number;
  endToTap_m: number;
  tapToBlower_m: number;
  openEndLoss: number;
  manometer(pressure_Pa: number): number;
  random: Random;
  sizes: ErrorSizes;
};

/** Flow doubt of each method, shared by all rows, and one of the water tube. Source: the study's table of defaults (type B). */
const FLOW_SD: Record<RigMethod, number> = {
  'orifice-cap': 0.025,
  'conical-inlet': 0.025,
  'bell-mouth': 0.025,
  'orifice-in-pipe': 0.02,
  'pitot-traverse': 0.035,
  'vane-traverse': 0.05,
  'bag-fill': 0.05,
};
const STEPS_Pa = [1, 1, 5, 9.80665, 9.80665, 19.6133];

/** A test as somebody would make it: flows that come about, and what the instruments then show. */
export function trueTest(
  wish: TestWish,
  air: TrueAir,
  running: (flow_m3_s: number, air: TrueAir) => Running,
  volts: number,
  random: Random,
): Tested {
  const { sizes } = wish;
  const bench = benchFor(wish, air, running(0, air).static_Pa, random);
  const method = METHODS[wish.method];
  const flowsWanted = [...(wish.shutOff ? [0] : []), ...wish.shares.map((s) => s * wish.freeFlow_m3_s)];
  const rows: Tested['rows'] = [];
  const truth: TestedRow[] = [];
  const clamp = 1 + 0.015 * sizes.electrical * random.normal();
  const meter = 1 + 0.012 * sizes.electrical * random.normal();
  const voltScale = 1 + 0.01 * random.normal();
  const readsVolts = random.chance(0.5);
  for (const wanted of flowsWanted) {
    const made = method.take(bench, wanted, (q) => running(q, air), wish.tap);
    if (made === null) continue;
    const state = running(made.flow_m3_s, air);
    const row = { ...made.row };
    if (wish.speeds) row.speed_rpm = rounded(state.speed_rpm * (1 + 0.0025 * sizes.workshop * random.normal()), 0);
    if (wish.electrical === 'amps')
      row.current_A = rounded(amps(state) * clamp * (1 + 0.005 * sizes.electrical * random.normal()), 2);
    if (wish.electrical === 'watts')
      row.inputPower_W = rounded(watts(state) * meter * (1 + 0.012 * sizes.electrical * random.normal()), 0);
    if (readsVolts && wish.electrical !== 'none')
      row.voltage_V = rounded(volts * voltScale * (1 + 0.005 * random.normal()), 0);
    rows.push(row);
    truth.push({ flow_m3_s: made.flow_m3_s, running: state });
  }
  return { rig: { ...method.rig(bench, wish.tap), side: wish.side }, rows, truth };

  function amps(state: Running) {
    return (state as Running & { current_A: number }).current_A;
  }
  function watts(state: Running) {
    return (state as Running & { inputPower_W: number }).inputPower_W;
  }
}

function benchFor(wish: TestWish, air: TrueAir, shutOff_Pa: number, random: Random): Bench {
  const { sizes } = wish;
  const top = wish.freeFlow_m3_s * Math.max(...wish.shares, 0.5);
  // the pipe must not eat more than a third of the pressure as speed
  const widest = Math.sqrt(top / Math.sqrt((2 * 0.3 * shutOff_Pa) / air.density_kg_m3) / (Math.PI / 4));
  const told = rounded(Math.max(wish.inletDiameter_m * random.uniform(0.85, 1.1), widest), 3);
  const diameter = told * (1 + 0.005 * sizes.workshop * random.normal());
  const roughness_m = 0.00015;
  const frictionFactor = Math.max(0.2, 1 + 0.3 * sizes.workshop * random.normal());
  const near = wish.tap === 'near' && wish.method === 'orifice-cap' && wish.side === 'inlet';
  const scale = 1 + 0.008 * sizes.manometer * random.normal();
  const step = random.pick(STEPS_Pa);
  const trueAir = { ...air, density_kg_m3: air.density_kg_m3 };
  const flowSd = wish.method === 'orifice-cap' && wish.side === 'outlet' ? 0.045 : FLOW_SD[wish.method];
  return {
    air: trueAir,
    side: wish.side,
    pipe: { diameter_m: diameter, area_m2: circle_m2(diameter) },
    told: { pipeDiameter_m: told },
    flowFactor: Math.max(0.7, 1 + flowSd * sizes.flow * random.normal()),
    friction_Pa: (length_m, q) =>
      frictionFactor * friction_Pa({ length_m, diameter_m: diameter, roughness_m }, q, trueAir),
    endToTap_m: rounded((near ? 0.4 : random.uniform(6, 9)) * told, 2),
    tapToBlower_m: rounded((near ? random.uniform(6, 9) : random.uniform(1, 2)) * told, 2),
    openEndLoss: 0.93 + 0.12 * sizes.workshop * random.normal(),
    manometer: (p) => {
      const eye = 4 * sizes.manometer * random.normal();
      const seen = p * scale * (1 + 0.005 * sizes.manometer * random.normal()) + eye;
      return rounded(step * Math.round(seen / step), 2);
    },
    random,
    sizes,
  };
}
