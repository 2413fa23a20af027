import type { Warning } from '../issues/result.ts';
import type { WholePlate } from './whole-plate.ts';
import type { MotorPlate, Supply } from './types.ts';

/**
 * How the mains reaches a motor. Voltages and amps of the mains are brought to the connection that the plate speaks of:
 * motor volts = mains volts × `voltageFactor`, line amps = plate-connection amps × `currentFactor`.
 */
export type Connection = {
  kind: 'as-plate' | 'star-delta' | 'line-to-neutral' | 'single-phase-feed' | 'mismatch';
  voltageFactor: number;
  currentFactor: number;
  warnings: Warning[];
};

const ROOT_3 = Math.sqrt(3);
/** Mains and plate within this of each other need no word: 380, 400 and 415 V are one supply. */
const SAME_VOLTAGE = 0.12;

/**
 * Finds how a motor must be connected from the volts of plate and mains.
 * A three-phase motor whose plate and mains differ by √3 is reconnected between star and delta; a single-phase motor on a
 * three-phase mains hangs between one line and neutral; a three-phase motor on one phase is fed through a capacitor.
 * @param frequencyRatio mains over plate frequency [-]
 * @param path JSON Pointer of the blower, for the warnings
 * @param fedThrough an inverter makes three phases of the mains' volts out of one: then nothing is lost
 * Source: star and delta voltages and currents differ by √3 (definition).
 */
export function connectionOf(
  plate: WholePlate,
  supply: Supply,
  frequencyRatio = 1,
  path = '',
  fedThrough: MotorPlate['fedThrough'] = null,
): Connection {
  const ratio = supply.voltage_V == null ? 1 : supply.voltage_V / plate.voltage_V;
  // At another frequency both the printed volts and those in proportion are a usual way to run it.
  const near = (target: number) => [1, frequencyRatio].some((f) => Math.abs(ratio / (target * f) - 1) <= SAME_VOLTAGE);
  const feed = plate.kind === 'induction' && plate.phases === 3 && supply.phases === 1 && fedThrough !== 'inverter';
  const factor = (f: number) => ({ voltageFactor: f, currentFactor: f });

  if (feed) {
    const f = near(1 / ROOT_3) ? ROOT_3 : near(ROOT_3) ? 1 / ROOT_3 : 1;
    return { kind: 'single-phase-feed', ...factor(f), warnings: [] };
  }
  if (near(1)) return { kind: 'as-plate', ...factor(1), warnings: [] };
  const say = (code: string, text: string): Warning[] => [{ code, text, path: `${path}/motor/voltage_V` }];
  const [plateVolts, mainsVolts] = [Math.round(plate.voltage_V), Math.round(supply.voltage_V ?? plate.voltage_V)];
  if (plate.phases === 3 && (near(ROOT_3) || near(1 / ROOT_3))) {
    const connect = ratio < 1 ? 'delta' : 'star';
    return {
      kind: 'star-delta',
      ...factor(ratio < 1 ? ROOT_3 : 1 / ROOT_3),
      warnings: say(
        'star-delta',
        `The plate's ${plateVolts} V and the mains' ${mainsVolts} V fit when the motor is connected in ${connect}. Have an electrician check that its terminals allow it.`,
      ),
    };
  }
  if (plate.phases === 1 && supply.phases === 3 && near(ROOT_3)) {
    return { kind: 'line-to-neutral', voltageFactor: 1 / ROOT_3, currentFactor: 1, warnings: [] };
  }
  return {
    kind: 'mismatch',
    ...factor(1),
    warnings: say(
      'voltage-mismatch',
      `The motor is made for ${plateVolts} V, the mains has ${mainsVolts} V: do not connect it as it is.`,
    ),
  };
}

/**
 * Voltage [V] a motor of so many phases finds on a mains, for a plate that does not say: a single-phase motor on a three-phase mains sits between line
 * and neutral. Without a voltage 400 V on three phases, 230 V on one. Source: IEC 60038 standard voltages.
 */
export function usualVoltage(phases: 1 | 3, supply: Supply): number {
  const { voltage_V, phases: lines } = supply;
  if (voltage_V == null) return phases === 3 ? 400 : 230;
  if (phases === 1 && lines === 3) return voltage_V > 300 ? voltage_V / ROOT_3 : voltage_V;
  if (phases === 3 && lines === 1) return voltage_V * ROOT_3;
  return voltage_V;
}
