import type { ChartReading } from '../api.ts';
import type { ChartEvidence, Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';
import { addEvidence } from './add-evidence.ts';
import { withoutPhoto } from './without-photo.ts';

export type UseCurves = { blowerId: string; photoId: string; reading: ChartReading; airDensity_kg_m3: number | null };

/**
 * Puts the traced curves into the blower as evidence, in place of what the same photo said before.
 * Each pressure curve is one chart; a power or efficiency curve goes with the pressure curve of its speed.
 */
export function useCurves(job: Job, data: UseCurves): Edited {
  const charts = chartsFrom(data);
  if (charts.length === 0) return { job, note: 'chart' };
  const cleared = withoutPhoto(job, data.blowerId, data.photoId, 'chart');
  return charts.reduce<Edited>(
    (edited, evidence) => ({ job: addEvidence(edited.job, { blowerId: data.blowerId, evidence }).job, note: 'chart' }),
    { job: cleared, note: 'chart' },
  );
}

/**
 * Two pressure curves of one kind that no speed tells apart, as of several blade angles or sizes: they are not all of this
 * blower, and together they would make a curve of none.
 */
export function areUntold({ curves }: ChartReading): boolean {
  const told = curves
    .filter(({ quantity }) => quantity.endsWith('_pressure'))
    .map((c) => `${c.quantity} ${c.speed_rpm}`);
  return new Set(told).size < told.length;
}

function chartsFrom({ photoId, reading, airDensity_kg_m3 }: UseCurves): ChartEvidence[] {
  const pressures = reading.curves.filter((curve) => curve.quantity.endsWith('_pressure'));
  const alone = pressures.length === 1;
  return pressures.map((curve) => {
    const partner = (quantity: string): [number, number][] | null =>
      reading.curves.find((c) => c.quantity === quantity && (alone || c.speed_rpm === curve.speed_rpm))?.points ?? null;
    return {
      kind: 'chart',
      speed_rpm: curve.speed_rpm,
      airDensity_kg_m3,
      pressureKind: curve.quantity === 'total_pressure' ? 'total' : 'static',
      pressure: curve.points,
      shaftPower: partner('shaft_power'),
      efficiency: partner('efficiency'),
      photoId,
    };
  });
}
