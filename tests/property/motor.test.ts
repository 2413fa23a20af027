import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  drawnBy,
  loadAt,
  motorAtSite,
  motorCautions,
  runSpeed,
  shaftPowerFromAmps,
  shaftPowerFromSlip,
  shaftPowerFromWatts,
} from '../../src/motor/index.ts';

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const motor = fc.record({
  kind: maybe(fc.constantFrom('induction' as const, 'universal' as const, 'dc' as const)),
  ratedPower_W: number(1, 100_000),
  ratedPowerMeaning: maybe(fc.constantFrom('shaft' as const, 'input' as const)),
  speed_rpm: maybe(number(1, 200_000)),
  voltage_V: maybe(number(1, 1000)),
  current_A: maybe(number(0.01, 1000)),
  powerFactor: maybe(number(0.01, 1)),
  efficiency: maybe(number(0.01, 1)),
  serviceFactor: maybe(number(0.5, 2)),
  phases: maybe(fc.constantFrom(1 as const, 3 as const)),
  frequency_Hz: maybe(number(10, 400)),
});
const supply = fc.record({
  voltage_V: maybe(number(1, 1000)),
  lowestVoltage_V: maybe(number(1, 1000)),
  frequency_Hz: maybe(number(10, 400)),
  phases: maybe(fc.constantFrom(1 as const, 3 as const)),
});
const drive = fc.record({
  kind: fc.constantFrom('belt' as const, 'direct' as const),
  motorPulleyDiameter_m: maybe(number(0.02, 1)),
  wheelPulleyDiameter_m: maybe(number(0.02, 1)),
  efficiency: maybe(number(0.1, 1)),
});
const situation = fc.record({
  motor,
  supply,
  drive,
  altitude_m: maybe(number(-450, 9000)),
  ambient_C: maybe(number(-60, 200)),
});

const finite = (value: unknown): void => {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  else if (value && typeof value === 'object') Object.values(value).forEach(finite);
};

describe('laws of motors', () => {
  it('no plate, mains or site makes a number that is none', () => {
    fc.assert(
      fc.property(situation, number(0, 1e5), number(0.01, 500), number(1, 50_000), (given, power, amps, watts) => {
        const at = motorAtSite(given);
        finite(at);
        finite(loadAt(at, power));
        finite(motorCautions(at, true));
        finite(runSpeed(given));
        finite(shaftPowerFromAmps({ at, current_A: amps }));
        finite(shaftPowerFromWatts({ at, inputPower_W: watts }));
        finite(shaftPowerFromSlip({ at, motorSpeed_rpm: 1000 }));
      }),
      { numRuns: 400 },
    );
  });

  const ordinary = fc.record({
    motor: fc.record({
      ratedPower_W: number(200, 15_000),
      speed_rpm: fc.constantFrom(2850, 1420, 940),
      voltage_V: fc.constant(400),
      phases: fc.constant(3 as const),
      frequency_Hz: fc.constant(50),
    }),
    supply: fc.constant({ voltage_V: 400, frequency_Hz: 50, phases: 3 as const }),
    drive: fc.constant({ kind: 'direct' as const }),
  });

  it('amps, watts and load rise with shaft power', () => {
    fc.assert(
      fc.property(ordinary, number(0, 1.5), number(0.01, 0.5), (given, load, more) => {
        const at = motorAtSite(given);
        const [a, b] = [load, load + more].map((l) => drawnBy(at.current, l * at.ratedPower_W, 400));
        expect(b!.current_A).toBeGreaterThan(a!.current_A);
        expect(b!.input_W).toBeGreaterThan(a!.input_W);
        expect(loadAt(at, (load + more) * at.ratedPower_W).loadFraction).toBeGreaterThan(
          loadAt(at, load * at.ratedPower_W).loadFraction,
        );
      }),
    );
  });

  it('amps of a loaded motor rise as the voltage falls', () => {
    fc.assert(
      fc.property(ordinary, number(0.7, 1.2), number(280, 395), (given, load, volts) => {
        const { current, ratedPower_W } = motorAtSite(given);
        expect(drawnBy(current, load * ratedPower_W, volts).current_A).toBeGreaterThan(
          drawnBy(current, load * ratedPower_W, volts + 5).current_A,
        );
      }),
    );
  });

  it('a worse meter never narrows the answer', () => {
    fc.assert(
      fc.property(ordinary, number(0.2, 1.2), number(0.005, 0.05), number(0.001, 0.05), (given, load, sd, more) => {
        const at = motorAtSite(given);
        const drawn = drawnBy(at.current, load * at.ratedPower_W, 400);
        const amps = (relativeSd: number) =>
          shaftPowerFromAmps({ at, current_A: drawn.current_A, relativeSd })!.ownSd_W;
        const watts = (relativeSd: number) =>
          shaftPowerFromWatts({ at, inputPower_W: drawn.input_W, relativeSd }).ownSd_W;
        expect(amps(sd + more)).toBeGreaterThanOrEqual(amps(sd));
        expect(watts(sd + more)).toBeGreaterThanOrEqual(watts(sd));
      }),
    );
  });
});
