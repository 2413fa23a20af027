/**
 * Density of pure water at atmospheric pressure.
 * @param temperature_C 0..100 [°C]; held at the nearest end beyond
 * @returns density [kg/m3]
 * Source: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97–105. Check: 20 °C → 998.20.
 */
export function waterDensity(temperature_C: number): number {
  const t = Math.min(100, Math.max(0, temperature_C));
  const above =
    999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))));
  return above / (1 + 16.87985e-3 * t);
}

/** Standard gravity [m/s2]. Source: CGPM 1901; at a place it is within 0.3 %. */
const GRAVITY = 9.80665;

/** A tube of liquid, upright or leaning, open legs or one leg in a wide pot. */
export type Tube = {
  /** angle of the tube above the level [°]; 90 is upright */
  angle_deg?: number;
  /** density of the liquid [kg/m3]; left out, water at 20 °C */
  liquidDensity_kg_m3?: number;
  /** area of the tube over that of the pot [-]; 0 where both legs are read or the pot is wide */
  tubeOverPot?: number;
};

/**
 * Pressure that a tube shows.
 * @param reading_m difference of both legs, or travel along a leaning tube from its zero [m]
 * @returns pressure [Pa], ρ·g·L·(sin α + a/A)
 * Source: hydrostatics (definition). Throws RangeError for an angle outside 0..90.
 */
export function tubePressure(reading_m: number, tube: Tube = {}): number {
  const { angle_deg = 90, liquidDensity_kg_m3 = waterDensity(20), tubeOverPot = 0 } = tube;
  if (!(angle_deg >= 0 && angle_deg <= 90))
    throw new RangeError(`tubePressure: expected an angle of 0..90, received ${angle_deg}`);
  return liquidDensity_kg_m3 * GRAVITY * reading_m * (Math.sin((angle_deg * Math.PI) / 180) + tubeOverPot);
}
