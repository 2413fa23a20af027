import type { AxisId, AxisWork, PhotoWork } from '../photo/photo-work.ts';

/** Changes what is said about one axis of the chart. */
export const setAxis =
  (id: AxisId, change: Partial<AxisWork>) =>
  (work: PhotoWork): PhotoWork => ({
    ...work,
    axes: work.axes.map((axis) => (axis.id === id ? { ...axis, ...change } : axis)),
  });

/** A second upright axis, for power or efficiency; taken away it takes its taps along. */
export const withSecondAxis = (work: PhotoWork): PhotoWork => ({
  ...work,
  axes: [
    ...work.axes.filter((axis) => axis.id !== 'y2'),
    { id: 'y2', quantity: 'shaft_power', unit: 'kW', minText: '0', maxText: '', scale: 'linear' },
  ],
});

export const withoutSecondAxis = (work: PhotoWork): PhotoWork => ({
  ...work,
  axes: work.axes.filter((axis) => axis.id !== 'y2'),
  seeds: work.seeds.filter((seed) => seed.yAxis !== 'y2'),
});
