/** Straight round pipes: friction and surfaces. Shared by ducts and test rigs. */
export {
  blendEnd,
  blendedFriction,
  colebrookInverseRoot,
  colebrookReynoldsExponent,
  colebrookRoughnessExponent,
  darcyFrictionFactor,
  LAMINAR_END,
  straightPipeLoss,
  TURBULENT_START,
} from './friction.ts';
export type { BlendEnd, StraightPipe } from './friction.ts';
export { SURFACE_NAMES, SURFACES, UNKNOWN_SURFACE } from './surfaces.ts';
export type { Surface, SurfaceRecord } from './surfaces.ts';
export { familiesFor, familyOf, isSize, TRADE_SIZES } from './trade-sizes.ts';
export type { TradeFamily, TradeSize } from './trade-sizes.ts';
