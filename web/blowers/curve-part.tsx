import type { Blower } from '../../src/job/types.ts';
import { FanPlot } from '../plot/fan-plot.tsx';
import { answered } from '../state/assessment.ts';
import { curveOfBlower, pointsOfBlower } from '../state/blower-curve.ts';
import { texts } from '../texts/index.ts';
import { blowerTitle } from './blower-words.ts';

/** The blower's curve as it would run in this shop's air, with all finds side by side on it. */
export function CurvePart({ blower }: { blower: Blower }) {
  const t = texts.value;
  const curve = curveOfBlower(blower.id);
  const points = pointsOfBlower(blower.id);
  if (!curve && points.length === 0)
    return <p class="second">{answered.value ? t.blowers.curveWaits : t.common.working}</p>;
  return (
    <figure class="curve-part">
      <FanPlot curve={curve} points={points} label={`${blowerTitle(blower, t)}: ${t.blowers.curve}`} />
      <figcaption class="second">
        {t.blowers.curve}. {t.blowers.curveHint}
      </figcaption>
    </figure>
  );
}
