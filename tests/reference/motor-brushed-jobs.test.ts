import { describe, expect, it } from 'vitest';
import { answerTo, motorJob, paddleChart } from './motor-jobs.ts';

/** A small wheel at 4,000 rpm that takes 60 to 150 W. */
const smallChart = {
  ...paddleChart,
  speed_rpm: 4000,
  pressure: [
    [0, 900],
    [0.03, 850],
    [0.06, 650],
    [0.09, 300],
    [0.105, 0],
  ],
  shaftPower: [
    [0, 60],
    [0.03, 80],
    [0.06, 110],
    [0.09, 140],
    [0.105, 150],
  ],
};
const duct = { flow_m3_s: 0.06, pressure_Pa: 640 };
const blower = {
  wheel: { family: 'radial', diameter_m: 0.18 },
  runSpeed_rpm: 4000,
  evidence: [smallChart],
  outletArea_m2: 0.01,
};

describe('whole jobs: motors with brushes', () => {
  // Copper loss over both wires, definition: 2·0.0225 Ω·mm²/m·L/S·I (IEC 60364-5-52 annex G, recalled).
  it('a 12 V blower on thin wires: what it draws, what its supply must give, and which wire is enough', () => {
    const motor = {
      kind: 'dc',
      ratedPower_W: 160,
      ratedPowerMeaning: 'shaft',
      voltage_V: 12,
      current_A: 20,
      speed_rpm: 4000,
    };
    const run = (crossSection_m2: number) =>
      answerTo(
        motorJob({
          blower: { ...blower, motor, cable: { length_m: 4, crossSection_m2 } },
          supply: { voltage_V: 12, phases: 1, frequency_Hz: null },
          duct,
        }),
      );
    const thin = run(1.5e-6);
    expect(thin.reason('dc-supply')!.text).toBe(
      'At 12 V this motor draws 20 A: it needs a supply and fuse for a third more than that, thick short wires, and its brushes wear.',
    );
    const { cable, current_A } = thin.blower.worstDay;
    const lost_V = (2 * 0.0225 * 4 * current_A!) / 1.5;
    expect(Math.abs(cable!.drop_V / lost_V - 1)).toBeLessThan(0.01);
    expect(thin.reason('cable-drop')!.severity).toBe('caution');
    expect(run(cable!.enough_m2!).reason('cable-drop')).toBeUndefined();
  });

  // Service notes on vacuum motors, recalled: throttled they run hot, for the air they move cools them; plates print watts drawn.
  it('a vacuum cleaner’s motor: watts are input, throttling is dangerous, low volts slow it instead of heating it', () => {
    const motor = { kind: 'universal', ratedPower_W: 300, voltage_V: 230 };
    const {
      assessment,
      blower: result,
      reason,
    } = answerTo(
      motorJob({ blower: { ...blower, motor }, supply: { voltage_V: 230, phases: 1, lowestVoltage_V: 180 }, duct }),
    );
    expect(reason('self-cooled-motor')).toMatchObject({ severity: 'caution', subject: 'motor' });
    expect(reason('self-cooled-motor')!.text).toMatch(
      /cooled by the air it moves\. A plugged hose or full filter cooks it/,
    );
    // 0.5 to 0.7 of the watts drawn reach the shaft
    const { shaftPower_W, loadFraction } = assessment.cases[0]!.motor;
    expect(shaftPower_W! / loadFraction!).toBeGreaterThan(0.5 * 300);
    expect(shaftPower_W! / loadFraction!).toBeLessThan(0.7 * 300);
    expect(result.worstDay.lowest!.current_A).toBeLessThan(result.worstDay.current_A!);
    expect(reason('weak-start')).toBeUndefined();
    expect(result.worstDay.start).toBeNull();
  });
});
