/** What decides the density of moist air. */
export type MoistAirState = {
  /** dry-bulb temperature [°C] */
  temperature_C: number;
  /** absolute pressure [Pa] */
  pressure_Pa: number;
  /** relative humidity over liquid water [-], 0..1 */
  relativeHumidity: number;
};

/**
 * Saturation vapour pressure of water over a liquid surface.
 * @param temperature_C temperature [°C], -60..200
 * @returns vapour pressure [Pa]; within 0.1 % of IAPWS-95 from 0 to 100 °C
 * Source: CIPM-2007 (Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149–155), eq. A1.1.
 * Throws RangeError outside the range.
 */
export function saturationVapourPressure(temperature_C: number): number {
  if (!(temperature_C >= -60 && temperature_C <= 200)) {
    throw new RangeError(`temperature_C: expected -60..200, received ${temperature_C}`);
  }
  const T = temperature_C + 273.15;
  return Math.exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);
}

/**
 * Share of water vapour in the air's molecules, with the enhancement factor of air.
 * @returns mole fraction [-]; 1 or more means that no such air exists: it would have to boil
 * Source: CIPM-2007, eq. A1.2 and A1.3.
 */
export function vapourMoleFraction({ temperature_C: t, pressure_Pa: p, relativeHumidity }: MoistAirState): number {
  const enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
  return (relativeHumidity * enhancement * saturationVapourPressure(t)) / p;
}

/**
 * Density of moist air with 400 ppm of carbon dioxide.
 * @returns density [kg/m3]; 2.2e-5 relative inside 600–1100 hPa and 15–27 °C, about 1e-3 beyond for what a workshop meets
 * Beyond -10..60 °C the compressibility is held at the nearest end, because its polynomial runs away there.
 * Source: CIPM-2007, eq. 1 and A1.4. Check: 20 °C, 101,325 Pa, RH 0.5 → 1.1993139.
 * Throws RangeError for a pressure that is not positive or a humidity that no air of this temperature and pressure can have.
 */
export function moistAirDensity(state: MoistAirState): number {
  const { temperature_C, pressure_Pa: p } = state;
  if (!(p > 0 && p < 1e7)) throw new RangeError(`pressure_Pa: expected 0..1e7, received ${p}`);
  const x = vapourMoleFraction(state);
  if (!(x >= 0 && x < 1)) throw new RangeError(`relativeHumidity: no such air (vapour share ${x})`);
  const t = Math.min(Math.max(temperature_C, -10), 60);
  const perKelvin = p / (t + 273.15);
  const firstOrder =
    1.58123e-6 -
    2.9331e-8 * t +
    1.1043e-10 * t * t +
    (5.707e-6 - 2.051e-8 * t) * x +
    (1.9898e-4 - 2.376e-6 * t) * x * x;
  const compressibility = 1 - perKelvin * firstOrder + perKelvin ** 2 * (1.83e-11 - 0.765e-8 * x * x);
  return (
    ((p * DRY_MOLAR_MASS_kg_mol) / (compressibility * GAS_CONSTANT * (temperature_C + 273.15))) *
    (1 - x * (1 - WATER_MOLAR_MASS_kg_mol / DRY_MOLAR_MASS_kg_mol))
  );
}

/** Molar mass of dry air with 400 ppm CO2 [kg/mol]. Source: CIPM-2007. */
const DRY_MOLAR_MASS_kg_mol = 28.96546e-3;
/** Molar mass of water [kg/mol]. Source: CIPM-2007. */
const WATER_MOLAR_MASS_kg_mol = 18.01528e-3;
/** Molar gas constant as CIPM-2007 uses it [J/(mol K)]. */
const GAS_CONSTANT = 8.314472;
