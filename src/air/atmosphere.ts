/**
 * Standard-atmosphere pressure at a height.
 * @param altitude_m geopotential height above mean sea level [m], -5000..11000
 * @returns absolute pressure [Pa]
 * The height is read as geopotential, not geometric: maps and phones are off by more than the difference
 * (0.5 m at 1,850 m, 20 Pa at 4,000 m). Weather moves the true pressure by about ±2 %, which a barometer reading mends.
 * Source: U.S. Standard Atmosphere 1976 (= ISO 2533:1975 below 32 km), troposphere: 288.15 K, 101,325 Pa,
 * 6.5 K/km, g0 9.80665 m/s2, R* 8.31432 J/(mol K), M0 28.9644 g/mol.
 * Throws RangeError outside the troposphere.
 */
export function standardPressure(altitude_m: number): number {
  if (!(altitude_m >= -5000 && altitude_m <= 11_000)) {
    throw new RangeError(`altitude_m: expected -5000..11000, received ${altitude_m}`);
  }
  return SEA_LEVEL_PRESSURE_PA * (1 - (LAPSE_K_m * altitude_m) / SEA_LEVEL_TEMPERATURE_K) ** PRESSURE_EXPONENT;
}

/**
 * Height at which the standard atmosphere has a pressure: how thin the air is, said as an altitude.
 * @param pressure_Pa absolute pressure [Pa], 20,000..178,000
 * @returns geopotential height [m]; the inverse of `standardPressure`
 * Source: U.S. Standard Atmosphere 1976. Throws RangeError outside the troposphere.
 */
export function pressureAltitude(pressure_Pa: number): number {
  if (!(pressure_Pa >= 20_000 && pressure_Pa <= 178_000)) {
    throw new RangeError(`pressure_Pa: expected 20000..178000, received ${pressure_Pa}`);
  }
  return (SEA_LEVEL_TEMPERATURE_K / LAPSE_K_m) * (1 - (pressure_Pa / SEA_LEVEL_PRESSURE_PA) ** (1 / PRESSURE_EXPONENT));
}

/** Standard sea-level pressure [Pa]. Source: U.S. Standard Atmosphere 1976. */
export const SEA_LEVEL_PRESSURE_PA = 101_325;

const SEA_LEVEL_TEMPERATURE_K = 288.15;
const LAPSE_K_m = 0.0065;
/** g0·M0/(R*·lapse) [-]. */
const PRESSURE_EXPONENT = (9.80665 * 28.9644e-3) / (8.31432 * LAPSE_K_m);
