import type { Warning } from '../issues/result.ts';
import { usualVoltage } from './connection.ts';
import type { WholePlate } from './whole-plate.ts';
import type { PlateField } from './plate-field.ts';
import { estimateWarning } from './plate-field.ts';
import type { MotorPlate, Supply } from './types.ts';

/** Brushed motors: no synchronous speed, no magnetising current; their plates usually print the watts drawn. Source: `BRUSHED`, practice values. */
export function brushedPlate(
  motor: MotorPlate,
  kind: 'universal' | 'dc',
  supply: Supply,
  path: string,
): { plate: WholePlate; warnings: Warning[] } {
  const estimated: PlateField[] = [];
  const guess = <T>(field: PlateField, value: T): T => {
    estimated.push(field);
    return value;
  };
  const voltage_V = motor.voltage_V ?? guess('voltage_V', kind === 'dc' ? lowVoltage(supply) : usualVoltage(1, supply));
  const powerFactor = kind === 'dc' ? 1 : (motor.powerFactor ?? BRUSHED.powerFactor);
  const efficiency = motor.efficiency ?? guess('efficiency', BRUSHED.efficiency);
  const drawn_W = motor.current_A == null ? null : voltage_V * motor.current_A * powerFactor;
  const meaning =
    motor.ratedPowerMeaning ??
    (drawn_W === null
      ? guess('ratedPowerMeaning', 'input' as const)
      : motor.ratedPower_W > drawn_W * Math.sqrt(efficiency)
        ? 'input'
        : 'shaft');
  const ratedPower_W = meaning === 'input' ? motor.ratedPower_W * efficiency : motor.ratedPower_W;
  const current_A = motor.current_A ?? guess('current_A', ratedPower_W / efficiency / (voltage_V * powerFactor));
  const efficiencyDoubt = estimated.includes('efficiency') ? BRUSHED.doubt : BRUSHED.plateDoubt;
  const plate: WholePlate = {
    kind,
    phases: 1,
    ratedPower_W,
    speed_rpm: motor.speed_rpm ?? null,
    poles: null,
    synchronousSpeed_rpm: null,
    frequency_Hz: motor.frequency_Hz ?? supply.frequency_Hz ?? 50,
    voltage_V,
    current_A,
    powerFactor,
    efficiency,
    serviceFactor: motor.serviceFactor ?? 1,
    rewound: motor.rewound ?? false,
    doubt: {
      efficiency: efficiencyDoubt,
      powerFactor: BRUSHED.plateDoubt,
      ratedPower: meaning === 'input' ? efficiencyDoubt : 0,
      current: 0.02,
    },
    estimated,
  };
  return { plate, warnings: estimateWarning(estimated, path) };
}

/** Car batteries, unless the supply is a low voltage of its own. */
const lowVoltage = (supply: Supply) => (supply.voltage_V != null && supply.voltage_V < 60 ? supply.voltage_V : 12);

/** Brushed motors of vacuum cleaners and car heaters: 0.5–0.7 of the watts drawn reach the shaft. Practice value. */
const BRUSHED = { efficiency: 0.6, doubt: 0.12, plateDoubt: 0.025, powerFactor: 0.95 };
