import { isWithin } from '../picture/quad.ts';
import type { FoundChart } from './find-chart.ts';
import type { AxisHint, ChartHints, SeedHint } from './hints.ts';
import type { FoundAxis } from './labels/name-axes.ts';
import type { Labels } from './labels/read-labels.ts';
import type { PlotWord } from './labels/plot-words.ts';

/** One of the plots that share a flow axis: where it is, what is read along it, what is written in it. */
export type Panel = {
  readonly frameCorners_px: Labels['frame']['corners'];
  /** the shared flow axis first */
  readonly axes: readonly AxisHint[];
  /** its value axes as they were found */
  readonly found: readonly FoundAxis[];
  readonly words: readonly PlotWord[];
};

/**
 * The panels stacked with a plot that show power or efficiency. Their axes are named on from those of the plot, so that
 * a name once given is understood when it comes back as a hint.
 */
export function panelsOf({ axes: main, panels, labels: plot }: FoundChart, { axes, seeds }: ChartHints): Panel[] {
  let next = main.length;
  const told = axes ?? [];
  const flow = [...told, ...main.map(plainAxis)].filter(({ quantity }) => quantity === 'flow').slice(0, 1);
  const isOfPlot = (id: string): boolean =>
    seeds?.some((seed) => seed.yAxis === id && isWithin(plot.frame.corners, seed.point_px)) ?? false;
  return panels.flatMap((labels) => {
    const found = labels.axes
      .filter(({ quantity }) => quantity === 'shaft_power' || quantity === 'efficiency')
      .map((axis) => ({ ...axis, id: `y${next++}` }));
    const toldOf = ({ id, quantity }: FoundAxis) =>
      told.find((one) => one.id === id && one.quantity === quantity && !isOfPlot(id));
    const own = [...flow, ...found.map((axis) => toldOf(axis) ?? plainAxis(axis))];
    return found.length ? [{ frameCorners_px: labels.frame.corners, axes: own, found, words: labels.words }] : [];
  });
}

/** An axis as a hint tells it. */
export const plainAxis = ({ id, quantity, unit, scale, min, max }: FoundAxis): AxisHint => ({
  id,
  quantity,
  unit,
  scale,
  min,
  max,
});

/** A tap, and which of all taps it is. */
export type PlacedSeed = { readonly seed: SeedHint; readonly at: number };

/** The taps that lie in a panel and name one of its axes. */
export const seedsIn = ({ frameCorners_px, axes }: Panel, seeds: readonly PlacedSeed[]): PlacedSeed[] =>
  seeds.filter(
    ({ seed }) => axes.slice(1).some(({ id }) => id === seed.yAxis) && isWithin(frameCorners_px, seed.point_px),
  );
