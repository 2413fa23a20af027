import type { MeasurementMaker } from '../measurement.ts';
import { ductParts } from './duct-parts.ts';
import { holedCap } from './holed-cap.ts';
import { shaftPower } from './shaft-power.ts';
import { speedAndOutlet } from './sizes.ts';
import { wholeDuct } from './whole-duct.ts';

/** Every kind of measurement the advice knows. */
export const MEASUREMENT_MAKERS: readonly MeasurementMaker[] = [
  holedCap,
  shaftPower,
  speedAndOutlet,
  ductParts,
  wholeDuct,
];
