import type { Warning } from '../issues/result.ts';
import type { Air } from './air.ts';
import { SEA_LEVEL_PRESSURE_PA, standardPressure } from './atmosphere.ts';
import { moistAirDensity, saturationVapourPressure, vapourMoleFraction } from './density.ts';
import type { MoistAirState } from './density.ts';
import { airViscosity } from './viscosity.ts';

/** Where the air is, as far as somebody told; null or left out is unknown. */
export type SiteConditions = {
  /** geopotential height above sea level [m] */
  altitude_m?: number | null;
  /** [°C] */
  airTemperature_C?: number | null;
  /** [-], 0..1 */
  relativeHumidity?: number | null;
  /** absolute pressure at the place itself [Pa]; wins over the altitude */
  barometricPressure_Pa?: number | null;
};

/**
 * Moist air from its temperature, pressure and humidity: density by CIPM-2007, viscosity by Sutherland (sources there).
 * Throws RangeError where no such air exists (see `moistAirDensity`); `siteAir` guards against that.
 */
export function moistAir(state: MoistAirState): Air {
  return {
    density_kg_m3: moistAirDensity(state),
    viscosity_Pa_s: airViscosity(state.temperature_C),
    pressure_Pa: state.pressure_Pa,
  };
}

/**
 * The air at a site. What is unknown is assumed and said in a warning: sea level, 20 °C, and half-saturated air, above 30 °C
 * no moister than half-saturated air of 30 °C (heated air brings no water with it).
 * @param path JSON Pointer of the site in what was sent, for the warnings
 * Humidity that the temperature and pressure rule out (it would have to boil) is taken as dry air, with a warning.
 * Source of the assumptions: definition.
 */
export function siteAir(site: SiteConditions, path = '/site'): { air: Air; warnings: Warning[] } {
  const warnings: Warning[] = [];
  const warn = (code: string, field: string, text: string) => warnings.push({ code, text, path: `${path}/${field}` });

  const pressure_Pa = site.barometricPressure_Pa ?? standardPressure(site.altitude_m ?? 0);
  if (site.barometricPressure_Pa == null && site.altitude_m == null) {
    warn(
      'altitude-unknown',
      'altitude_m',
      'The altitude is not known: sea level is assumed. At 1,800 m a blower gives a fifth less pressure.',
    );
  }
  if (site.barometricPressure_Pa != null && site.altitude_m != null && looksReduced(pressure_Pa, site.altitude_m)) {
    warn(
      'barometer-not-at-site',
      'barometricPressure_Pa',
      `A barometer up here should show about ${Math.round(standardPressure(site.altitude_m) / 100)} hPa. Weather reports give the pressure reduced to sea level: read it at the place itself.`,
    );
  }

  const temperature_C = site.airTemperature_C ?? 20;
  if (site.airTemperature_C == null)
    warn('temperature-unknown', 'airTemperature_C', 'The air temperature is not known: 20 °C is assumed.');

  const state = { temperature_C, pressure_Pa, relativeHumidity: site.relativeHumidity ?? usualHumidity(temperature_C) };
  if (vapourMoleFraction(state) >= 1) {
    warn('humidity-impossible', 'relativeHumidity', 'Air this hot cannot be this humid: it is taken as dry.');
    state.relativeHumidity = 0;
  }
  return { air: moistAir(state), warnings };
}

function usualHumidity(temperature_C: number): number {
  if (temperature_C <= 30) return 0.5;
  return (0.5 * saturationVapourPressure(30)) / saturationVapourPressure(temperature_C);
}

/** Weather moves a barometer by about 3 %; more, and nearer to sea level than to the site, is a reduced reading. */
function looksReduced(pressure_Pa: number, altitude_m: number): boolean {
  const expected = standardPressure(altitude_m);
  const off = Math.abs(pressure_Pa - expected);
  return off > 0.04 * expected && off > Math.abs(pressure_Pa - SEA_LEVEL_PRESSURE_PA);
}
