import { describe, expect, it } from 'vitest';
import circuits from '../../fixtures/reference/motor_circuits.json' with { type: 'json' };
import { currentModel, drawnBy, motorAtSite, withIdleShare, wholePlate } from '../../src/motor/index.ts';

type Circuit = (typeof circuits.rows)[number];
type Complex = { re: number; im: number };
const plus = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
const times = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
const over = (a: Complex, b: Complex): Complex => {
  const size = b.re * b.re + b.im * b.im;
  return times(a, { re: b.re / size, im: -b.im / size });
};

/** Watts, vars and line amps of a three-phase motor at a slip, from its equivalent circuit per phase. Source: textbook T circuit (definition). */
function circuitAt(c: Circuit, slip: number) {
  const phase_V = c.voltage_V / Math.sqrt(3);
  const rotor = { re: c.rotor_Ohm / slip, im: c.rotorLeakage_Ohm };
  const iron = { re: 0, im: c.magnetising_Ohm };
  const both = plus(rotor, iron);
  const current = over(
    { re: phase_V, im: 0 },
    plus({ re: c.stator_Ohm, im: c.statorLeakage_Ohm }, over(times(rotor, iron), both)),
  );
  const inRotor = over(times(current, iron), both);
  return {
    input_W: 3 * phase_V * current.re,
    reactive_var: -3 * phase_V * current.im,
    current_A: Math.hypot(current.re, current.im),
    turned_W: (3 * (inRotor.re ** 2 + inRotor.im ** 2) * c.rotor_Ohm * (1 - slip)) / slip,
  };
}

/** The slip at which it turns so many watts, on the near side of its greatest torque. */
function slipFor(c: Circuit, turned_W: number): number {
  let [low, high] = [1e-9, 0.08];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (circuitAt(c, middle).turned_W < turned_W) low = middle;
    else high = middle;
  }
  return high;
}

describe('idle amps of three-phase motors (fixtures/reference/motor_circuits.json: published equivalent circuits)', () => {
  const motors = circuits.rows.map((c) => {
    const rated = circuitAt(c, slipFor(c, c.power_W));
    const plate = {
      ratedPower_W: c.power_W,
      voltage_V: c.voltage_V,
      current_A: rated.current_A,
      powerFactor: rated.input_W / Math.hypot(rated.input_W, rated.reactive_var),
      efficiency: c.power_W / rated.input_W,
      phases: 3 as const,
      frequency_Hz: c.frequency_Hz,
    };
    const at = motorAtSite({
      motor: plate,
      drive: { kind: 'direct' },
      supply: { voltage_V: c.voltage_V, phases: 3, frequency_Hz: c.frequency_Hz },
    });
    return { name: c.name, plate, at, rated, idle: circuitAt(c, 1e-9), half: circuitAt(c, slipFor(c, c.power_W / 2)) };
  });

  it.each(motors)('$name: what its plate lets one expect is within two standard deviations', ({ at, rated, idle }) => {
    const off = Math.log(idle.current_A / rated.current_A / at.idle.current) / at.idle.currentLnSd;
    expect(Math.abs(off), `${idle.current_A / rated.current_A} against ${at.idle.current}`).toBeLessThan(2);
  });

  // The circle diagram of `drawnBy` with the idle amps it has: 4 % on amps at half load; the circuit's own stator drop is what is left.
  it.each(motors)('$name: half-load amps follow from idle and rated amps', ({ plate, rated, idle, half }) => {
    const model = withIdleShare(currentModel(wholePlate(plate).plate), idle.current_A / rated.current_A);
    const drawn = drawnBy(model, plate.ratedPower_W / 2, plate.voltage_V);
    expect(
      Math.abs(drawn.current_A / half.current_A - 1),
      `${drawn.current_A} A against ${half.current_A} A`,
    ).toBeLessThan(0.04);
  });
});
