import { describe, expect, it } from 'vitest';
import { motorAtSite } from '../../src/motor/index.ts';

type Complex = { re: number; im: number };
const plus = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
const over = (a: Complex, b: Complex): Complex => {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
};
const times = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });

/**
 * A quarter-horsepower split-phase motor by the double revolving field: 110 V, 60 Hz, 4 poles, R1 2.02, X1 2.79, R2 4.12,
 * X2 2.12, Xm 66.8 Ω, core 24 W and friction 13 W counted at the shaft. Source: Fitzgerald, Kingsley, Umans, Electric Machinery, the chapter on
 * single-phase motors, example; recalled (grade memory). Its printed answers at slip 0.05: 3.59 A, power factor 0.62, 244 W drawn, 147 W at the shaft.
 */
function quarterHorse(slip: number) {
  const field = (s: number): Complex => {
    const rotor = { re: 4.12 / s, im: 2.12 };
    const magnetising = { re: 0, im: 66.8 };
    const both = over(times(rotor, magnetising), plus(rotor, magnetising));
    return { re: both.re / 2, im: both.im / 2 };
  };
  const [forward, backward] = [field(slip), field(2 - slip)];
  const current = over({ re: 110, im: 0 }, plus({ re: 2.02, im: 2.79 }, plus(forward, backward)));
  const amps = Math.hypot(current.re, current.im);
  const electric_W = 110 * current.re;
  const turned_W = (1 - slip) * amps * amps * (forward.re - backward.re);
  return { amps, var: -110 * current.im, input_W: electric_W, shaft_W: turned_W - 37 };
}

describe('one-phase motors', () => {
  it('the textbook’s answers come out: 3.59 A, 147 W', () => {
    const { amps, shaft_W, input_W } = quarterHorse(0.05);
    expect(amps).toBeCloseTo(3.59, 1);
    expect(Math.abs(shaft_W / 147 - 1)).toBeLessThan(0.02);
    expect(Math.abs(input_W / 244 - 1)).toBeLessThan(0.01);
  });

  it('its idle losses and idle amps lie inside one and a half standard deviations of what is taken', () => {
    let slip = 0.05;
    while (quarterHorse(slip).shaft_W < 186.4) slip += 0.0005;
    const rated = quarterHorse(slip);
    let free = 0.02;
    while (quarterHorse(free).shaft_W > 0) free -= 0.0001;
    const idle = quarterHorse(free);
    expect(idle.amps / rated.amps).toBeGreaterThan(0.6);
    const fixedLoss = idle.input_W / (rated.input_W - rated.shaft_W);
    const { idle: usual } = motorAtSite({
      motor: {
        ratedPower_W: rated.shaft_W,
        voltage_V: 110,
        current_A: rated.amps,
        powerFactor: rated.input_W / (110 * rated.amps),
        efficiency: rated.shaft_W / rated.input_W,
        phases: 1,
        frequency_Hz: 60,
      },
      drive: { kind: 'direct' },
      supply: { voltage_V: 110, phases: 1, frequency_Hz: 60 },
    });
    expect(Math.abs(fixedLoss - usual.fixedLoss), `${fixedLoss}`).toBeLessThan(1.5 * usual.fixedLossSd);
    const off = Math.log(idle.amps / rated.amps / usual.current) / usual.currentLnSd;
    expect(Math.abs(off), `${idle.amps / rated.amps} against ${usual.current}`).toBeLessThan(1.5);
  });
});
