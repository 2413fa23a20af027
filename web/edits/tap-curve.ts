import type { AxisId, PhotoWork } from '../photo/photo-work.ts';
import type { PhotoPoint } from '../photo/view.ts';

/** A tap on a curve. A second curve of another axis is most often of the same speed as the first, so it starts with that. */
export const tapCurve =
  (at: PhotoPoint, yAxis: AxisId) =>
  (work: PhotoWork): PhotoWork => {
    const last = work.seeds.at(-1);
    const speedText = last && last.yAxis !== yAxis ? last.speedText : '';
    return { ...work, seeds: [...work.seeds, { id: freeId(work), yAxis, speedText, at }] };
  };

/** The curve of a tap is followed from another place of it; what was said about it stays. */
export const moveTap =
  (id: string, at: PhotoPoint) =>
  (work: PhotoWork): PhotoWork => ({
    ...work,
    seeds: work.seeds.map((seed) => (seed.id === id ? { ...seed, at } : seed)),
  });

export const removeTap =
  (id: string) =>
  (work: PhotoWork): PhotoWork => ({ ...work, seeds: work.seeds.filter((seed) => seed.id !== id) });

export const setTapSpeed =
  (id: string, speedText: string) =>
  (work: PhotoWork): PhotoWork => ({
    ...work,
    seeds: work.seeds.map((seed) => (seed.id === id ? { ...seed, speedText } : seed)),
  });

function freeId(work: PhotoWork): string {
  let n = work.seeds.length + 1;
  while (work.seeds.some((seed) => seed.id === `t${n}`)) n += 1;
  return `t${n}`;
}
