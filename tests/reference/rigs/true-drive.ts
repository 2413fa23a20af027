import type { Random } from './random.ts';
import type { TrueAir } from './true-air.ts';
import { spinning, type TrueFan } from './true-fan.ts';
import { brushedMotor, rounded, trueMotor, type AnyMotor } from './true-motor.ts';
import type { TrueFamily } from './true-wheels.ts';

const TIP_SPEED_m_s: Record<TrueFamily, readonly [number, number]> = {
  radial: [38, 85],
  'radial-tip': [38, 85],
  'backward-inclined': [38, 80],
  'backward-curved': [38, 80],
  'forward-curved': [14, 34],
  axial: [22, 50],
  'through-flow-vacuum': [110, 170],
};

export type DriveMade = {
  motor: AnyMotor;
  drive: {
    kind: 'direct' | 'belt';
    told: { kind: 'direct' | 'belt'; motorPulleyDiameter_m?: number; wheelPulleyDiameter_m?: number };
    trueEfficiency: number;
    ratio: number;
  };
  speedFor(motorPower_W: number, ratio: number): number;
};

/** A motor of a usual size for this wheel, straight on its shaft or by belt. */
export function driven(
  family: TrueFamily,
  fan: TrueFan,
  air: TrueAir,
  random: Random,
  motorFor: typeof trueMotor = trueMotor,
): DriveMade {
  const [low, high] = TIP_SPEED_m_s[family];
  const wanted_rpm = (60 * random.uniform(low, high)) / (Math.PI * fan.diameter_m);
  const powerAt = (rpm: number) =>
    spinning(fan, rpm, air.density_kg_m3).shaftPower_W(0.8 * spinning(fan, rpm, 1.2).freeFlow_m3_s);
  const margin = random.uniform(0.7, 1.3);
  if (family === 'through-flow-vacuum') {
    const motor = brushedMotor(margin * powerAt(wanted_rpm), wanted_rpm, random);
    return {
      motor,
      drive: { kind: 'direct', told: { kind: 'direct' }, trueEfficiency: 1, ratio: 1 },
      speedFor: (_, ratio) => wanted_rpm * ratio,
    };
  }
  const synchronous = wanted_rpm > 2000 ? 3000 : 1500;
  if (random.chance(0.5)) {
    const motor = motorFor(margin * powerAt(0.96 * synchronous), synchronous, random);
    return {
      motor,
      drive: { kind: 'direct', told: { kind: 'direct' }, trueEfficiency: 1, ratio: 1 },
      speedFor: (power, ratio) => motor.speed_rpm(power) * ratio,
    };
  }
  const motorPulley = 0.1;
  const wheelPulley = rounded((motorPulley * 0.96 * synchronous) / wanted_rpm, 3);
  const ratio = motorPulley / wheelPulley;
  const motor = motorFor((margin * powerAt(0.96 * synchronous * ratio)) / 0.95, synchronous, random);
  const creep = random.uniform(0.99, 1);
  return {
    motor,
    drive: {
      kind: 'belt',
      told: { kind: 'belt', motorPulleyDiameter_m: motorPulley, wheelPulleyDiameter_m: wheelPulley },
      trueEfficiency: Math.min(0.95 + 0.02 * random.normal(), 0.995),
      ratio,
    },
    speedFor: (power, r) => motor.speed_rpm(power) * r * creep,
  };
}
