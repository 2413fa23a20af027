/**
 * Dynamic viscosity of air; humidity and pressure are neglected (below 1 % in a workshop).
 * @param temperature_C temperature [°C], -100..500
 * @returns dynamic viscosity [Pa s]
 * Source: Sutherland's law with the constants of the U.S. Standard Atmosphere 1976 (β 1.458e-6, S 110.4 K);
 * 0.3–0.6 % below Lemmon & Jacobsen (2004). Check: 24 °C → 1.83e-5.
 * Throws RangeError outside the range.
 */
export function airViscosity(temperature_C: number): number {
  if (!(temperature_C >= -100 && temperature_C <= 500)) {
    throw new RangeError(`temperature_C: expected -100..500, received ${temperature_C}`);
  }
  const T = temperature_C + 273.15;
  return (1.458e-6 * T ** 1.5) / (T + 110.4);
}
