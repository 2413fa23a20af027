import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pressureAltitude, siteAir, standardPressure } from '../../src/air/index.ts';

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('laws of air', () => {
  it('any site the schema admits has finite, positive air', () => {
    const site = fc.record({
      altitude_m: maybe(number(-450, 9000)),
      airTemperature_C: maybe(number(-60, 200)),
      relativeHumidity: maybe(number(0, 1)),
      barometricPressure_Pa: maybe(number(20_000, 120_000)),
    });
    fc.assert(
      fc.property(site, (s) => {
        const { air } = siteAir(s);
        for (const value of Object.values(air)) expect(Number.isFinite(value) && value > 0).toBe(true);
        expect(air.density_kg_m3).toBeGreaterThan(0.1);
        expect(air.density_kg_m3).toBeLessThan(2.1);
      }),
    );
  });

  it('height to pressure and back is the same height', () => {
    fc.assert(
      fc.property(number(-450, 9000), (z) => {
        expect(pressureAltitude(standardPressure(z))).toBeCloseTo(z, 6);
      }),
    );
  });

  it('pressure falls with height, density with heat and with water', () => {
    fc.assert(
      fc.property(number(-450, 8900), number(1, 100), (z, dz) => {
        expect(standardPressure(z + dz)).toBeLessThan(standardPressure(z));
      }),
    );
    fc.assert(
      fc.property(number(-20, 49), number(0.1, 1), number(0, 0.9), number(0.01, 0.1), (t, dt, rh, drh) => {
        const density = (airTemperature_C: number, relativeHumidity: number) =>
          siteAir({ altitude_m: 1000, airTemperature_C, relativeHumidity }).air.density_kg_m3;
        expect(density(t + dt, rh)).toBeLessThan(density(t, rh));
        expect(density(t, rh + drh)).toBeLessThan(density(t, rh));
      }),
    );
  });
});
