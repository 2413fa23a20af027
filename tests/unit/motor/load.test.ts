import { describe, expect, it } from 'vitest';
import { loadAt, motorAtSite, motorCautions, motorLoad, ratedShaftPower } from '../../../src/motor/index.ts';
import type { Drive, MotorPlate, Supply } from '../../../src/motor/index.ts';

const motor: MotorPlate = {
  kind: 'induction',
  ratedPower_W: 2200,
  speed_rpm: 2850,
  voltage_V: 400,
  current_A: 4.6,
  powerFactor: 0.86,
  efficiency: 0.82,
  serviceFactor: 1,
  phases: 3,
  frequency_Hz: 50,
};
const belt: Drive = { kind: 'belt', motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.1 };
const supply: Supply = { voltage_V: 400, lowestVoltage_V: 350, frequency_Hz: 50, phases: 3 };

describe('load of a motor', () => {
  it('is that of the contract’s example, amps within 3 %', () => {
    const load = motorLoad({ wheelShaftPower_W: 1460, motor, drive: belt, supply, altitude_m: 1850, ambient_C: 24 });
    expect(Math.round(load.shaftPower_W)).toBe(1537);
    expect(load.loadFraction).toBeCloseTo(0.7, 2);
    expect(load.margin).toBeCloseTo(0.3, 2);
    expect(Math.abs(load.current_A! / 3.4 - 1)).toBeLessThan(0.03);
    expect(Math.abs(load.currentAtLowestVoltage_A! / 3.9 - 1)).toBeLessThan(0.03);
    expect(load.currentRatioAtLowestVoltage).toBeCloseTo(load.currentAtLowestVoltage_A! / 4.6, 12);
    expect(load.mayStall).toBe(false);
  });

  it('draws the plate’s amps at the plate’s load and voltage', () => {
    const load = motorLoad({ wheelShaftPower_W: 2200, motor, drive: { kind: 'direct' }, supply });
    expect(load.current_A).toBeCloseTo(4.6, 12);
    expect(load.loadFraction).toBe(1);
  });

  it('counts on a service factor below 1,000 m only, and never at the lowest voltage', () => {
    const strong = { ...motor, serviceFactor: 1.15 };
    const at = (altitude_m: number) =>
      motorLoad({ wheelShaftPower_W: 2200, motor: strong, drive: { kind: 'direct' }, supply, altitude_m });
    expect(at(1000).loadFraction).toBeCloseTo(1 / 1.15, 12);
    expect(at(1001).loadFraction).toBe(1);
    expect(at(0).currentRatioAtLowestVoltage).toBe(at(1850).currentRatioAtLowestVoltage);
    const weak = { ...motor, serviceFactor: 0.8 };
    expect(
      motorLoad({ wheelShaftPower_W: 1760, motor: weak, drive: { kind: 'direct' }, supply, altitude_m: 2000 })
        .loadFraction,
    ).toBe(1);
  });

  it('leaves the lowest voltage open where nobody knows it', () => {
    const load = motorLoad({
      wheelShaftPower_W: 1460,
      motor,
      drive: belt,
      supply: { ...supply, lowestVoltage_V: null },
    });
    expect(load.currentAtLowestVoltage_A).toBeNull();
    expect(load.currentRatioAtLowestVoltage).toBeNull();
  });

  it('sees a stall coming: at half the volts a quarter of the torque is left', () => {
    const load = motorLoad({
      wheelShaftPower_W: 2000,
      motor,
      drive: belt,
      supply: { ...supply, lowestVoltage_V: 200 },
    });
    expect(load.mayStall).toBe(true);
  });

  it('takes a draw of the belt’s efficiency', () => {
    const at = motorAtSite({ motor, drive: belt, supply });
    expect(loadAt(at, 1000, 0.9).shaftPower_W).toBeCloseTo(1111.11, 2);
  });

  it('keeps 60 Hz power on 60 Hz and takes a sixth off on 50 Hz; 50 Hz motors gain nothing on 60', () => {
    const us = { ...motor, speed_rpm: 3450, frequency_Hz: 60 };
    expect(ratedShaftPower(us, { frequency_Hz: 60 }).value_W).toBe(2200);
    expect(ratedShaftPower(us, { frequency_Hz: 50 }).value_W).toBeCloseTo(1833.33, 2);
    expect(ratedShaftPower(motor, { frequency_Hz: 60 }).value_W).toBe(2200);
  });

  it('warns when a 60 Hz plate meets the same volts at 50 Hz', () => {
    const at = motorAtSite({
      motor: { ...motor, speed_rpm: 3450, frequency_Hz: 60 },
      drive: belt,
      supply,
      path: '/blowers/2',
    });
    expect(at.warnings).toEqual([
      {
        code: 'other-frequency',
        text: 'A 60 Hz motor on 50 Hz loses 17 % of its speed and power.',
        path: '/blowers/2/motor/frequency_Hz',
      },
      {
        code: 'over-fluxed',
        text: 'On 50 Hz this motor should get about 333 V. At 400 V its iron saturates: it hums, idles on high amps and runs hot.',
        path: '/blowers/2/motor/voltage_V',
      },
    ]);
    const fitting = motorAtSite({
      motor: { ...motor, frequency_Hz: 60, voltage_V: 480, current_A: 3.8 },
      drive: belt,
      supply,
    });
    expect(fitting.warnings.map((w) => w.code)).toEqual(['other-frequency']);
  });

  it('reconnects star to delta when plate and mains differ by √3, and draws √3 more amps', () => {
    const delta: Supply = { voltage_V: 230, lowestVoltage_V: 201.25, frequency_Hz: 50, phases: 3 };
    const at = motorAtSite({ motor, drive: belt, supply: delta });
    expect(at.connection.kind).toBe('star-delta');
    expect(at.warnings[0]!.text).toBe(
      "The plate's 400 V and the mains' 230 V fit when the motor is connected in delta. Have an electrician check that its terminals allow it.",
    );
    const star = motorLoad({ wheelShaftPower_W: 1460, motor, drive: belt, supply });
    const load = loadAt(at, 1460);
    expect(load.current_A! / star.current_A!).toBeCloseTo(Math.sqrt(3), 1);
    expect(load.currentRatioAtLowestVoltage).toBeCloseTo(star.currentRatioAtLowestVoltage!, 1);
  });

  it('refuses to guess amps of a three-phase motor on one phase, and says what is left of it', () => {
    const single: Supply = { voltage_V: 230, lowestVoltage_V: 180, frequency_Hz: 50, phases: 1 };
    const at = motorAtSite({ motor, drive: belt, supply: single });
    expect(at.singlePhase).toMatchObject({ availableShare: [0.4, 0.6], mayNotStart: true });
    expect(loadAt(at, 1000)).toMatchObject({
      current_A: null,
      currentAtLowestVoltage_A: null,
      loadFraction: 1000 / 0.95 / 2200,
    });
    const caution = motorCautions(at, false).find((c) => c.code === 'single-phase-feed')!;
    expect(caution.text).toBe(
      'A three-phase motor on one phase gives 40–60 % of its plate. A two-pole motor like this one starts badly that way, or not at all. An inverter (one phase in, three out) made for the motor avoids both.',
    );
    expect(
      motorAtSite({ motor: { ...motor, ratedPower_W: 550, speed_rpm: 1400 }, drive: belt, supply: single }).singlePhase,
    ).toMatchObject({
      availableShare: [0.6, 0.7],
      mayNotStart: false,
    });
  });

  it('does not connect a motor to a voltage that fits in no way', () => {
    const at = motorAtSite({
      motor: { ...motor, voltage_V: 110, phases: 1 },
      drive: belt,
      supply: { voltage_V: 230, phases: 1, frequency_Hz: 50 },
    });
    expect(at.connection.kind).toBe('mismatch');
    expect(motorCautions(at, false)[0]).toEqual({
      code: 'voltage-mismatch',
      severity: 'stop',
      text: 'The motor is made for 110 V, the mains has 230 V: do not connect it as it is.',
      values: {},
    });
  });

  it('hangs a 230 V motor between line and neutral of 400 V', () => {
    const small = { ...motor, phases: 1 as const, voltage_V: 230, current_A: 13.5, powerFactor: 0.9, efficiency: 0.78 };
    const at = motorAtSite({ motor: small, drive: { kind: 'direct' }, supply });
    expect(at.connection.kind).toBe('line-to-neutral');
    expect(at.voltage_V).toBeCloseTo(230.9, 1);
    expect(at.lowestVoltage_V).toBeCloseTo(202.1, 1);
    expect(loadAt(at, 2200).current_A).toBeCloseTo(13.5, 0);
  });

  it('lets brushed motors sag with the voltage instead of drawing more', () => {
    const vacuum: MotorPlate = {
      kind: 'universal',
      ratedPower_W: 1200,
      ratedPowerMeaning: 'input',
      voltage_V: 230,
      current_A: 5.4,
    };
    const at = motorAtSite({
      motor: vacuum,
      drive: { kind: 'direct' },
      supply: { voltage_V: 230, lowestVoltage_V: 190, phases: 1 },
    });
    expect(at.ratedPower_W).toBeCloseTo(720, 9);
    const load = loadAt(at, 600);
    expect(load.current_A).toBeCloseTo((5.4 * 600) / 720, 9);
    expect(load.currentAtLowestVoltage_A).toBeLessThan(load.current_A!);
    expect(motorCautions(at, true).map((c) => c.code)).toEqual(['self-cooled-motor']);
  });

  it('derates in heat, not in cool mountain air', () => {
    const at = (altitude_m: number, ambient_C: number) =>
      motorAtSite({ motor, drive: belt, supply, altitude_m, ambient_C });
    expect(at(1850, 24).siteFactor).toBe(1);
    expect(at(1850, 40).siteFactor).toBeCloseTo(0.946, 3);
    expect(motorCautions(at(1850, 40), false).at(-1)).toEqual({
      code: 'hot-or-high',
      severity: 'note',
      text: 'Thin or hot air cools the motor less here: count on 95 % of its plate.',
      values: { share: at(1850, 40).siteFactor },
    });
  });

  it('warns of a weak evening mains and of what a car blower needs', () => {
    const codes = motorCautions(motorAtSite({ motor, drive: belt, supply }), false);
    expect(codes).toEqual([
      {
        code: 'weak-start',
        severity: 'caution',
        text: "At the lowest voltage the motor has 77 % of its torque for starting and runs hotter at the same load: do not start it then, and let an overload relay set to the plate's amps guard it.",
        values: { share: (350 / 400) ** 2 },
      },
    ]);
    const car = motorAtSite({
      motor: { kind: 'dc', ratedPower_W: 240, voltage_V: 12, current_A: 20 },
      drive: { kind: 'direct' },
      supply: {},
    });
    expect(motorCautions(car, false)[0]!.text).toBe(
      'At 12 V this motor draws 20 A: it needs a supply and fuse for a third more than that, thick short wires, and its brushes wear.',
    );
  });
});
