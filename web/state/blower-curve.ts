import type { FanCurve } from '../../src/assessment.ts';
import type { PlotPoint } from '../plot/fan-plot-geometry.ts';
import { answered } from './assessment.ts';

/** The curve of a blower out of all its evidence, at run speed and site air; null until it is worked out. */
export const curveOfBlower = (blowerId: string): FanCurve | null => {
  const found = answered.value?.assessment.cases.find((c) => c.blowerId === blowerId);
  return found && found.fanCurve.flow_m3_s.length > 1 ? found.fanCurve : null;
};

export const pointsOfBlower = (_blowerId: string): PlotPoint[] => [];
