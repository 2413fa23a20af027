import type { AxisId, AxisWork, PhotoWork } from '../photo/photo-work.ts';

/** Changes what is said about one axis of the chart; curves that were what it was become what it is. */
export const setAxis =
  (id: AxisId, change: Partial<AxisWork>) =>
  (work: PhotoWork): PhotoWork => {
    const before = work.axes.find((axis) => axis.id === id);
    const renamed = (seed: PhotoWork['seeds'][number]): boolean =>
      change.quantity !== undefined && seed.yAxis === id && seed.quantity === before?.quantity;
    return {
      ...work,
      axes: work.axes.map((axis) => (axis.id === id ? { ...axis, ...change, said: true } : axis)),
      seeds: work.seeds.map((seed) => (renamed(seed) ? { ...seed, quantity: change.quantity! } : seed)),
    };
  };

/** A second upright axis, for power or efficiency; taken away it takes its taps along. */
export const withSecondAxis = (work: PhotoWork): PhotoWork => ({
  ...work,
  axes: [
    ...work.axes.filter((axis) => axis.id !== 'y2'),
    { id: 'y2', quantity: 'shaft_power', unit: 'kW', minText: '0', maxText: '', scale: 'linear', said: true },
  ],
});

export const withoutSecondAxis = (work: PhotoWork): PhotoWork => ({
  ...work,
  axes: work.axes.filter((axis) => axis.id !== 'y2'),
  seeds: work.seeds.filter((seed) => seed.yAxis !== 'y2'),
});
