export type { Air } from './air.ts';
export { pressureAltitude, SEA_LEVEL_PRESSURE_PA, standardPressure } from './atmosphere.ts';
export { moistAirDensity, saturationVapourPressure } from './density.ts';
export type { MoistAirState } from './density.ts';
export { moistAir, siteAir } from './site.ts';
export type { SiteConditions } from './site.ts';
export { airViscosity } from './viscosity.ts';
