import { describe, expect, it } from 'vitest';
import { airViscosity, moistAir, moistAirDensity, siteAir, standardPressure } from '../../../src/air/index.ts';

const codes = (site: Parameters<typeof siteAir>[0]) => siteAir(site).warnings.map((w) => w.code);

describe('air at a site', () => {
  it('is the air of the contract’s school furniture shop', () => {
    const { air, warnings } = siteAir({ altitude_m: 1850, airTemperature_C: 24, relativeHumidity: 0.5 });
    expect(air.density_kg_m3).toBeCloseTo(0.943, 3);
    expect(air.viscosity_Pa_s).toBeCloseTo(1.83e-5, 7);
    expect(Math.round(air.pressure_Pa / 10) * 10).toBe(80_990);
    expect(warnings).toEqual([]);
  });

  it('believes a barometer before an altitude', () => {
    expect(siteAir({ altitude_m: 1850, barometricPressure_Pa: 81_500, airTemperature_C: 24 }).air.pressure_Pa).toBe(
      81_500,
    );
  });

  it('doubts a barometer reading that was reduced to sea level', () => {
    const { warnings } = siteAir({ altitude_m: 1850, barometricPressure_Pa: 101_500, airTemperature_C: 24 });
    expect(warnings).toEqual([
      {
        code: 'barometer-not-at-site',
        text: 'A barometer up here should show about 810 hPa. Weather reports give the pressure reduced to sea level: read it at the place itself.',
        path: '/site/barometricPressure_Pa',
      },
    ]);
    expect(codes({ altitude_m: 1850, barometricPressure_Pa: 82_500, airTemperature_C: 24 })).toEqual([]);
    expect(codes({ altitude_m: 100, barometricPressure_Pa: 99_000, airTemperature_C: 24 })).toEqual([]);
  });

  it('assumes sea level and 20 °C where nothing is known, and says so', () => {
    const { air, warnings } = siteAir({}, '/blowers/0/evidence/1/air');
    expect(air.pressure_Pa).toBe(101_325);
    expect(air.density_kg_m3).toBeCloseTo(1.1993, 4);
    expect(warnings.map((w) => [w.code, w.path])).toEqual([
      ['altitude-unknown', '/blowers/0/evidence/1/air/altitude_m'],
      ['temperature-unknown', '/blowers/0/evidence/1/air/airTemperature_C'],
    ]);
    expect(warnings[1]!.text).toBe('The air temperature is not known: 20 °C is assumed.');
  });

  it('does not let unknown humidity grow with heat', () => {
    const unknown = siteAir({ altitude_m: 0, airTemperature_C: 150 }).air.density_kg_m3;
    const dry = siteAir({ altitude_m: 0, airTemperature_C: 150, relativeHumidity: 0 }).air.density_kg_m3;
    expect(unknown / dry).toBeGreaterThan(0.99);
    expect(unknown / dry).toBeLessThan(1);
  });

  it('takes air that would have to boil as dry', () => {
    const { air, warnings } = siteAir({ altitude_m: 0, airTemperature_C: 150, relativeHumidity: 0.9 });
    expect(warnings).toEqual([
      {
        code: 'humidity-impossible',
        text: 'Air this hot cannot be this humid: it is taken as dry.',
        path: '/site/relativeHumidity',
      },
    ]);
    expect(air).toEqual(siteAir({ altitude_m: 0, airTemperature_C: 150, relativeHumidity: 0 }).air);
  });

  it('throws at a programmer’s mistake', () => {
    expect(() => standardPressure(20_000)).toThrow('altitude_m: expected -5000..11000, received 20000');
    expect(() => airViscosity(Number.NaN)).toThrow('temperature_C: expected -100..500, received NaN');
    expect(() => moistAir({ temperature_C: 20, pressure_Pa: 0, relativeHumidity: 0.5 })).toThrow(
      'pressure_Pa: expected 0..1e7, received 0',
    );
    expect(() => moistAirDensity({ temperature_C: 150, pressure_Pa: 1e5, relativeHumidity: 0.9 })).toThrow(
      'relativeHumidity: no such air',
    );
  });
});
