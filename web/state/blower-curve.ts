import type { FanCurve } from '../../src/assessment.ts';
import type { PlotPoint } from '../plot/fan-plot-geometry.ts';
import { answered } from './assessment.ts';

/** The curve of a blower out of all its evidence, at run speed and site air; null until it is worked out. */
export const curveOfBlower = (blowerId: string): FanCurve | null => {
  const found = answered.value?.assessment.cases.find((c) => c.blowerId === blowerId);
  return found && found.fanCurve.flow_m3_s.length > 1 ? found.fanCurve : null;
};

/** Its finds as points of that plot; keys are `evidence/row`, so that a doubted row can be marked. */
export const pointsOfBlower = (blowerId: string): PlotPoint[] =>
  (answered.value?.points[blowerId] ?? []).flatMap(({ kind, evidence, row, flow_m3_s, totalPressure_Pa }, i) =>
    kind === 'wheel' ? [] : [{ kind, evidence, key: `${evidence}/${row ?? `p${i}`}`, flow_m3_s, totalPressure_Pa }],
  );
