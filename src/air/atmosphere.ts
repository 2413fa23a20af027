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
  const exponent = (9.80665 * 28.9644e-3) / (8.31432 * LAPSE_K_m);
  return SEA_LEVEL_PRESSURE_PA * (1 - (LAPSE_K_m * altitude_m) / SEA_LEVEL_TEMPERATURE_K) ** exponent;
}

/** Standard sea-level pressure [Pa]. Source: U.S. Standard Atmosphere 1976. */
export const SEA_LEVEL_PRESSURE_PA = 101_325;

const SEA_LEVEL_TEMPERATURE_K = 288.15;
const LAPSE_K_m = 0.0065;
