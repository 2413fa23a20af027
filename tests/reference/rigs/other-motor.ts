import type { Random } from './random.ts';
import { clamp, plateFor, rounded, type TrueMotor } from './true-motor.ts';

/**
 * A motor by other rules than the circle diagram of the program: it idles at so many of its amps, its reactive power grows along
 * x^1.5, rewinding has cost some of its efficiency, and a fan of its own eats power that the plate's efficiency counts as loss.
 *   input = P + L·(f + (1−f)·x^1.7), reactive from idle to rated along x^1.5, idle amps 0.3–0.6 of rated (three phases), 0.55–0.9 (one)
 * Source: idle amps as repair shops know them (practice values, recalled).
 */
export function otherMotor(wanted_W: number, speed_rpm: number, random: Random): TrueMotor {
  const { plate, synchronous_rpm, slip } = plateFor(wanted_W, speed_rpm, random);
  const rewound = random.chance(0.4) ? random.uniform(0.01, 0.05) : 0;
  const eta = clamp(plate.efficiency * (1 + 0.02 * random.normal()) - rewound, 0.35, 0.95);
  const cosPhi = clamp(plate.powerFactor * (1 + 0.03 * random.normal()), 0.5, 0.96);
  const fixed = random.uniform(0.25, 0.6);
  const lines = plate.phases === 3 ? Math.sqrt(3) : 1;
  const rated_VA = plate.ratedPower_W / eta / cosPhi;
  const plateAmps = random.chance(0.5) ? (plate.current_A * lines * plate.voltage_V) / rated_VA : 1;
  const scale = plateAmps * (1 + 0.015 * random.normal());
  const losses = plate.ratedPower_W * (1 / eta - 1);
  const rated_var = rated_VA * Math.sqrt(1 - cosPhi ** 2);
  const idle_VA = rated_VA * (plate.phases === 3 ? random.uniform(0.3, 0.6) : random.uniform(0.55, 0.9));
  const idle_var = Math.min(Math.sqrt(Math.max(idle_VA ** 2 - (fixed * losses) ** 2, 0)), rated_var);
  const voltage_V = plate.voltage_V * (1 + 0.03 * random.normal());
  const v = voltage_V / plate.voltage_V;
  const trueSlip = slip * Math.exp(0.2 * random.normal());
  const frequency = 1 + 0.002 * random.normal();
  const load = (p: number) => p / plate.ratedPower_W / v;
  const inputPower_W = (p: number) => p + losses * (fixed + (1 - fixed) * load(p) ** 1.7);
  const reactive_var = (p: number) => idle_var * v ** 2.5 + (rated_var - idle_var) * load(p) ** 1.5;
  return {
    plate: { ...plate, current_A: rounded(plate.current_A, 1) },
    voltage_V,
    speed_rpm: (p) => synchronous_rpm * frequency * (1 - (trueSlip * (p / plate.ratedPower_W)) / v ** 2),
    inputPower_W,
    current_A: (p) => (scale * Math.hypot(inputPower_W(p), reactive_var(p))) / lines / voltage_V,
  };
}
