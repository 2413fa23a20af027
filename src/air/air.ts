/** The air a blower or a duct works in. */
export type Air = {
  /** moist-air density [kg/m3] */
  density_kg_m3: number;
  /** dynamic viscosity [Pa s] */
  viscosity_Pa_s: number;
  /** absolute (barometric) pressure [Pa] */
  pressure_Pa: number;
};
