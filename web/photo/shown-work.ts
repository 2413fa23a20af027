import { unitByName } from '../../src/units/index.ts';
import type { ChartAxis, ChartCurve, ChartReading } from '../api.ts';
import type { Corners } from './corners.ts';
import { isSaid, UNIT_QUANTITY } from './hints.ts';
import type { AxisId, AxisQuantity, AxisWork, PhotoWork, SeedWork } from './photo-work.ts';

/**
 * The work as it stands on the page: what a finger or a keyboard has said, and for all else what the reader found. Nothing
 * of the reader's is kept: another photo of hints brings another reading.
 */
export function shownWork(work: PhotoWork, reading: ChartReading | null): PhotoWork {
  if (!reading) return work;
  const seeds = work.curvesSaid || work.seeds.length > 0 ? work.seeds : reading.curves.map(seedOf);
  return {
    ...work,
    corners: reading.frameCorners_px as unknown as Corners,
    placed: [true, true, true, true],
    axes: shownAxes(work, reading, seeds),
    seeds,
    airDensityText: work.airSaid ? work.airDensityText : airTextOf(work, reading),
  };
}

/** What was typed before readings said anything of the air; else what stands by the plot. */
const airTextOf = ({ airDensityText }: PhotoWork, { airDensity_kg_m3 }: ChartReading): string =>
  airDensityText || (airDensity_kg_m3 ? `${airDensity_kg_m3} kg/m³` : '');

/** The parts of a reading that are put right one by one; what a part says is taken over when it is touched. */
export const TAKEN_OVER = {
  corners: ({ corners, placed }: PhotoWork) => ({ corners, placed }),
  axes: ({ axes }: PhotoWork) => ({ axes }),
  curves: ({ seeds }: PhotoWork) => ({ seeds, curvesSaid: true }),
  air: () => ({ airSaid: true }),
} satisfies Record<string, (shown: PhotoWork) => Partial<PhotoWork>>;
export type Part = keyof typeof TAKEN_OVER;

/** The axes that were typed, the others that a curve is read on, and those still blank. */
function shownAxes({ axes }: PhotoWork, reading: ChartReading, seeds: readonly SeedWork[]): AxisWork[] {
  const said = axes.filter(isSaid);
  const isUsed = ({ id }: AxisWork): boolean => id === 'x' || id === 'y1' || seeds.some(({ yAxis }) => yAxis === id);
  const read = reading.axes.map(axisOf).filter((axis) => isUsed(axis) && !said.some(({ id }) => id === axis.id));
  const blank = axes.filter((axis) => ![...said, ...read].some(({ id }) => id === axis.id));
  return [...said, ...read, ...blank].sort((a, b) => a.id.localeCompare(b.id));
}

const axisOf = ({ id, quantity, unit, scale, min, max }: ChartAxis): AxisWork => ({
  id: id as AxisId,
  quantity: quantity as AxisQuantity,
  unit: unitByName(unit, UNIT_QUANTITY[quantity as AxisQuantity])?.unit ?? unit,
  minText: written(min),
  maxText: written(max),
  scale: scale === 'log' ? 'log' : 'linear',
  said: false,
});

/** A curve that was found, as a tap in its middle would have asked for it. */
const seedOf = (curve: ChartCurve, index: number): SeedWork => ({
  id: `t${index + 1}`,
  yAxis: curve.yAxis as AxisId,
  quantity: curve.quantity as AxisQuantity,
  speedText: curve.speed_rpm === null ? '' : written(curve.speed_rpm),
  at: curve.points_px[Math.floor(curve.points_px.length / 2)] ?? [0, 0],
});

const written = (value: number): string => String(Number(value.toPrecision(6)));
