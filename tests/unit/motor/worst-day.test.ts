import { describe, expect, it } from 'vitest';
import {
  loadAt,
  motorAtSite,
  motorCautions,
  shaftPowerFromAmps,
  shaftPowerFromSlip,
  startTime,
  terminalVoltage,
  wheelInertia,
  wholePlate,
} from '../../../src/motor/index.ts';
import type { MotorPlate, SupplyCable } from '../../../src/motor/index.ts';
import { criticalLoad } from '../../../src/operate/critical-load.ts';
import { speedLimit } from '../../../src/operate/pulley-limit.ts';
import type { Blower } from '../../../src/job/types.ts';

const motor: MotorPlate = {
  ratedPower_W: 2200,
  speed_rpm: 2850,
  voltage_V: 400,
  current_A: 4.6,
  powerFactor: 0.85,
  efficiency: 0.81,
  phases: 3,
  frequency_Hz: 50,
};
const supply = { voltage_V: 400, lowestVoltage_V: 350, frequency_Hz: 50, phases: 3 } as const;
const at = (change: Partial<MotorPlate> = {}, cable: SupplyCable | null = null, mains: object = supply) =>
  motorAtSite({ motor: { ...motor, ...change }, drive: { kind: 'direct' }, supply: mains, cable });

describe('behind a cable', () => {
  it('volts and amps are found together: what the cable takes is what these amps cost in it', () => {
    const long = at({}, { length_m: 100, crossSection_m2: 1.5e-6 });
    const load = loadAt(long, 2200);
    // √3·(0.0225·100/1.5·cos φ + 0.08e-3·100·sin φ)·I, cos φ a little under the plate's 0.85
    const expected = Math.sqrt(3) * (1.5 * 0.85 + 0.008 * 0.527) * load.current_A!;
    expect(Math.abs((400 - load.terminal_V) / expected - 1)).toBeLessThan(0.02);
    expect(load.current_A!).toBeGreaterThan(loadAt(at(), 2200).current_A!);
    expect(350 - load.lowestTerminal_V!).toBeGreaterThan(400 - load.terminal_V);
  });

  it('nothing is lost without one, with half a description of one, or where a capacitor feeds', () => {
    expect(terminalVoltage(at(), 400, 2200)).toBe(400);
    expect(at({}, { length_m: 100 }).cable).toBeNull();
    const fed = at({}, { length_m: 100, crossSection_m2: 1e-6 }, { voltage_V: 230, phases: 1, frequency_Hz: 50 });
    expect(terminalVoltage(fed, 230, 500)).toBe(230);
  });

  it('stays a number on a cable no current could pass', () => {
    const hopeless = loadAt(at({}, { length_m: 5000, crossSection_m2: 1e-7 }), 2200);
    expect(hopeless.terminal_V).toBeGreaterThanOrEqual(0.3 * 400);
    expect(Number.isFinite(hopeless.current_A!)).toBe(true);
    expect(hopeless.mayStall).toBe(true);
  });
});

describe('what people know of a motor besides its plate', () => {
  const amps = (change: Partial<MotorPlate>) => shaftPowerFromAmps({ at: at(change), current_A: 3 })!;

  it('idle amps lower or raise what amps tell, and take doubt away', () => {
    const plain = amps({});
    const [little, much] = [amps({ idleCurrent_A: 1.2 }), amps({ idleCurrent_A: 2.5 })];
    expect(little.shaftPower_W).toBeGreaterThan(plain.shaftPower_W);
    expect(much.shaftPower_W).toBeLessThan(plain.shaftPower_W);
    expect(little.sharedSd_W).toBeLessThan(plain.sharedSd_W);
  });

  it('a one-phase motor with a run capacitor still idles on half its amps or more, and is known less well', () => {
    const idling = (powerFactor: number) =>
      motorAtSite({
        motor: { ratedPower_W: 750, voltage_V: 230, powerFactor, efficiency: 0.68, phases: 1, frequency_Hz: 50 },
        drive: { kind: 'direct' },
        supply: { voltage_V: 230, phases: 1, frequency_Hz: 50 },
      }).idle;
    const [start, run] = [idling(0.75), idling(0.96)];
    expect(start.current).toBeGreaterThan(0.55);
    expect(start.current).toBeLessThan(0.75);
    expect(run.current).toBeCloseTo(0.55, 9);
    expect(run.currentLnSd).toBeGreaterThan(start.currentLnSd);
  });

  it('a rewound motor is believed less, its slip not at all, and a warning says so', () => {
    const [plain, again] = [amps({}), amps({ rewound: true })];
    expect(again.shaftPower_W).toBe(plain.shaftPower_W);
    expect(again.sharedSd_W).toBeGreaterThan(1.3 * plain.sharedSd_W);
    expect(shaftPowerFromSlip({ at: at({}), motorSpeed_rpm: 2900 })).not.toBeNull();
    expect(shaftPowerFromSlip({ at: at({ rewound: true }), motorSpeed_rpm: 2900 })).toBeNull();
    expect(at({ rewound: true }).ratedPowerDoubt).toBeCloseTo(0.1, 12);
    expect(at({ rewound: true }).warnings.map((w) => [w.code, w.path])).toContainEqual(['rewound', '/motor/rewound']);
  });

  it('an inverter makes three phases of one: delta at 230 V, amps known again', () => {
    const mains = { voltage_V: 230, frequency_Hz: 50, phases: 1 } as const;
    const inverter = at({ fedThrough: 'inverter' }, null, mains);
    expect(inverter.singlePhase).toBeNull();
    expect(inverter.connection.kind).toBe('star-delta');
    expect(loadAt(inverter, 1500).current_A).not.toBeNull();
    expect(at({ fedThrough: 'capacitor' }, null, mains).singlePhase!.availableShare).toEqual([0.4, 0.6]);
  });

  it('uneven mains cost power; above 5 % the motor must not run', () => {
    const uneven = at({}, null, { ...supply, voltageUnbalance: 0.055 });
    expect(uneven.usableShare).toBe(0.75);
    expect(motorCautions(uneven, false).find((c) => c.code === 'voltage-unbalance')!.text).toBe(
      'The three voltages are 5.5 % apart: the motor heats 61 % more; count on 75 % of its plate. Above 5 % it must not run: have an electrician look for a lost phase or a loose wire.',
    );
    expect(at({ phases: 1 }, null, { ...supply, voltageUnbalance: 0.05 }).unbalance).toBeNull();
  });
});

describe('starting', () => {
  it('knows a weighed wheel between a disc and a ring: J = 0.11–0.22·m·D²', () => {
    const { centre, range } = wheelInertia({ diameter_m: 0.5, mass_kg: 8 });
    expect(range[0]).toBeLessThan(centre);
    expect(range[0]).toBeGreaterThan(0.8 * ((8 * 0.5 ** 2) / 8));
    expect(range[1]).toBeLessThan((8 * 0.5 ** 2) / 4);
  });

  it('a start capacitor gets a wheel going sooner than a run capacitor', () => {
    const { plate } = wholePlate({ ratedPower_W: 750, speed_rpm: 1420, voltage_V: 230, phases: 1, frequency_Hz: 50 });
    const inertia = wheelInertia({ diameter_m: 0.4 });
    const time = (startsBy: 'start-capacitor' | 'run-capacitor' | null) =>
      startTime({ plate, inertia, wheelSpeed_rpm: 1420, ratio: 1, loadOfRating: 0.6, startsBy }).seconds!;
    expect(time('start-capacitor')).toBeLessThan(time(null));
    expect(time(null)).toBeLessThan(time('run-capacitor'));
  });
});

describe('how far the pulley may go', () => {
  const blower = {
    wheel: { family: 'radial', diameter_m: 0.4, safeTipSpeed_m_s: 80 },
    drive: { kind: 'belt', motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.1 },
  } as Blower;

  it('is bound by the motor’s cube or the wheel’s rim, whichever comes first', () => {
    // wheel: 80/(π·0.4)·60 = 3820 rpm; motor: 2850·∛(0.9/0.6) = 3262 rpm
    const motorFirst = speedLimit(blower, 2850, 0.6, 0.9)!;
    expect(motorFirst).toMatchObject({ bound: 'motor', now_rpm: 2850 });
    expect(motorFirst.highest_rpm).toBeCloseTo(2850 * Math.cbrt(1.5), 6);
    expect(motorFirst.beltSpeed_m_s).toBeCloseTo((Math.PI * 0.1 * 2850) / 60, 9);
    const wheelFirst = speedLimit(blower, 2850, 0.2, 0.9)!;
    expect(wheelFirst.bound).toBe('wheel');
    expect(wheelFirst.highest_rpm).toBeCloseTo((80 / (Math.PI * 0.4)) * 60, 6);
  });

  it('names pulleys as sold below it, never the ones on it now', () => {
    for (const load of [0.3, 0.6, 0.85, 1.4]) {
      const limit = speedLimit(blower, 2850, load, 0.9)!;
      for (const pair of limit.pairs) {
        expect(pair.wheelSpeed_rpm).toBeLessThanOrEqual(limit.highest_rpm);
        expect(pair.newPulleys).toBeGreaterThan(0);
      }
    }
    expect(speedLimit(blower, 2850, 0.6, 0.9)!.pairs.length).toBeGreaterThan(0);
    expect(speedLimit({ ...blower, drive: { kind: 'direct' } }, 2850, 0.6, 0.9)!.pairs).toEqual([]);
  });

  it('is open where neither load nor diameter is known', () => {
    expect(speedLimit({ ...blower, wheel: { family: 'radial' } }, 2850, null, 0.9)).toBeNull();
  });

  it('finds the load whose amps reach the plate at the lowest voltage', () => {
    const motor350 = at();
    const ratio = (wheel_W: number) => loadAt(motor350, wheel_W).currentRatioAtLowestVoltage;
    const load = criticalLoad(ratio, 2200);
    expect(ratio(load * 2200)).toBeCloseTo(1, 4);
    expect(criticalLoad(() => null, 2200)).toBe(Infinity);
    expect(criticalLoad(() => 1.2, 2200)).toBe(0);
  });
});
