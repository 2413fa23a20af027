import type { WholePlate } from './whole-plate.ts';
import type { Warning } from '../issues/result.ts';
import { brushedPlate } from './brushed-plate.ts';
import type { PlateField } from './plate-field.ts';
import { estimateWarning } from './plate-field.ts';
import { usualVoltage } from './connection.ts';
import { plateFrequency, polesOf, synchronousSpeed } from './synchronous.ts';
import type { MotorPlate, Supply } from './types.ts';
import { typicalEfficiency, typicalPowerFactor } from './typical.ts';

/** Tolerance of IEC 60034-1 on efficiency and power factor, and rewinding, as one standard deviation. Source: feasibility figures. */
const PLATE_DOUBT = 0.025;
/** Spread of typical motors of one size: (efficiency, power factor) on three phases and on one. Practice values. */
const TYPICAL_DOUBT = {
  3: { efficiency: 0.05, powerFactor: 0.06 },
  1: { efficiency: 0.1, powerFactor: 0.12 },
} as const;

/**
 * Fills the gaps of a motor's plate: what follows from the rest is worked out, what does not is taken from typical motors of the
 * size (IEC 60034-30-1 at 50 Hz, US tables at 60 Hz) and named in a warning.
 * @param path JSON Pointer of the motor, for the warnings
 * The plate's amps are kept as the limit even where they contradict its watts; then a warning says so. A plate is a claim: many
 * scrap motors were rewound.
 * Source of the relation: P = √3·V·I·cos φ·η on three phases, V·I·cos φ·η on one (definition).
 */
export function wholePlate(
  motor: MotorPlate,
  supply: Supply = {},
  path = '/motor',
): { plate: WholePlate; warnings: Warning[] } {
  const kind = motor.kind ?? 'induction';
  const read = kind === 'induction' ? inductionPlate(motor, supply, path) : brushedPlate(motor, kind, supply, path);
  return motor.rewound ? asClaimed(read, path) : read;
}

/**
 * A rewound motor may have other turns, other wire and burnt iron: its plate is what it once was. Its watts may be off by a tenth.
 * Source: US DOE fact sheet on motor load (no slip method for rewound motors); the sizes of the doubts are practice values.
 */
function asClaimed({ plate, warnings }: ReturnType<typeof wholePlate>, path: string): ReturnType<typeof wholePlate> {
  const { efficiency, powerFactor, ratedPower, current } = plate.doubt;
  const doubt = {
    efficiency: Math.hypot(efficiency, REWOUND.efficiency),
    powerFactor: Math.hypot(powerFactor, REWOUND.powerFactor),
    ratedPower: Math.hypot(ratedPower, REWOUND.ratedPower),
    current: Math.hypot(current, REWOUND.current),
  };
  const text =
    'This motor was rewound: its plate is only a claim, so watts and amps are taken with more doubt. Feel and clamp it in its first hour: amps at work tell more.';
  return { plate: { ...plate, doubt }, warnings: [...warnings, { code: 'rewound', text, path: `${path}/rewound` }] };
}

/** What a rewinding may move, one relative standard deviation each [-]. Practice values. */
const REWOUND = { efficiency: 0.04, powerFactor: 0.05, ratedPower: 0.1, current: 0.06 };
/** Plate amps are a maker's round figure, one relative standard deviation [-]. Source: feasibility figures. */
const PLATE_AMPS = 0.02;

function inductionPlate(motor: MotorPlate, supply: Supply, path: string) {
  const estimated: PlateField[] = [];
  const warnings: Warning[] = [];
  const guess = <T>(field: PlateField, value: T): T => {
    estimated.push(field);
    return value;
  };

  const frequency_Hz =
    motor.frequency_Hz ?? guess('frequency_Hz', plateFrequency(motor.speed_rpm, supply.frequency_Hz));
  const phases = motor.phases ?? guess('phases', likelyPhases(motor, supply));
  const voltage_V = motor.voltage_V ?? guess('voltage_V', usualVoltage(phases, supply));
  const poles = motor.speed_rpm == null ? null : polesOf(motor.speed_rpm, frequency_Hz);
  const lines = phases === 3 ? Math.sqrt(3) : 1;
  const typicalPoles = poles ?? 2;

  const given = motor.ratedPower_W;
  const isInput = motor.ratedPowerMeaning === 'input';
  // Amps of a plate without power factor or efficiency still bound their product.
  const apparent_W = motor.current_A == null ? null : lines * voltage_V * motor.current_A;
  const worked =
    apparent_W === null || motor.powerFactor == null || isInput ? null : given / (apparent_W * motor.powerFactor);
  const typical = typicalEfficiency(given, typicalPoles, phases, frequency_Hz);
  const efficiency =
    motor.efficiency ?? (worked !== null && plausible(worked, typical) ? worked : guess('efficiency', typical));
  const ratedPower_W = isInput ? given * efficiency : given;
  const input_W = ratedPower_W / efficiency;

  const fromAmps = apparent_W === null ? null : input_W / apparent_W;
  const usual = motor.powerFactor ?? typicalPowerFactor(ratedPower_W, typicalPoles, phases);
  const agrees = fromAmps !== null && fromAmps <= 1 && fromAmps > 0.3 && Math.abs(Math.log(fromAmps / usual)) < 0.4;
  if (
    fromAmps !== null &&
    (!agrees || (motor.powerFactor != null && Math.abs(fromAmps / motor.powerFactor - 1) > 0.1))
  ) {
    warnings.push({
      code: 'plate-contradicts-itself',
      text: `The plate's ${whole(given)} W do not fit its ${voltage_V} V and ${motor.current_A} A. Look again: a motor often has two sets of volts and amps.`,
      path,
    });
  }
  const powerFactor = agrees ? fromAmps! : usual;
  const current_A = motor.current_A ?? guess('current_A', input_W / (lines * voltage_V * powerFactor));
  if (motor.powerFactor == null && !agrees) estimated.push('powerFactor');

  warnings.push(...estimateWarning(estimated, path));
  const spread = TYPICAL_DOUBT[phases];
  const efficiencyDoubt = estimated.includes('efficiency') ? spread.efficiency : PLATE_DOUBT;
  const plate: WholePlate = {
    kind: 'induction',
    phases,
    ratedPower_W,
    speed_rpm: motor.speed_rpm ?? null,
    poles,
    synchronousSpeed_rpm: poles === null ? null : synchronousSpeed(poles, frequency_Hz),
    frequency_Hz,
    voltage_V,
    current_A,
    powerFactor,
    efficiency,
    serviceFactor: motor.serviceFactor ?? 1,
    rewound: motor.rewound ?? false,
    doubt: {
      efficiency: efficiencyDoubt,
      powerFactor: estimated.includes('powerFactor') ? spread.powerFactor : PLATE_DOUBT,
      ratedPower: isInput ? efficiencyDoubt : 0,
      current: PLATE_AMPS,
    },
    estimated,
  };
  return { plate, warnings };
}

const plausible = (efficiency: number, typical: number) =>
  efficiency > 0.6 * typical && efficiency < Math.min(1.25 * typical, 0.97);
const whole = (value: number) => Math.round(value).toString();

/** Volt-amperes per watt tell one phase from three where volts and amps are printed: efficiency × power factor is 0.4–0.8. */
function likelyPhases(motor: MotorPlate, supply: Supply): 1 | 3 {
  if (motor.voltage_V != null && motor.current_A != null) {
    return motor.ratedPower_W / (motor.voltage_V * motor.current_A) < 0.82 ? 1 : 3;
  }
  if (motor.voltage_V != null && motor.voltage_V >= 340) return 3;
  return supply.phases ?? (motor.ratedPower_W > 2500 ? 3 : 1);
}
