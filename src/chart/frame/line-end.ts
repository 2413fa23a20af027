import { greyAt, type Photo } from '../../picture/raster.ts';
import type { FrameSide } from './find-sides.ts';
import type { Polarity } from './side-band.ts';
import { photoPoint, type PhotoPoint } from '../spaces.ts';

/**
 * Where the printed line of one side stops near a corner whose other side has no line: an axis usually ends there.
 * @param atEnd true for the corner at the end of the side's strip, false for its start
 * @returns null where the line has no clear end within reach
 */
export function lineEnd(
  photo: Photo,
  { axis, course }: FrameSide,
  polarity: Polarity,
  atEnd: boolean,
  reach_px: number,
): PhotoPoint | null {
  if (!course) return null;
  const corner = atEnd ? axis.length_px : 0;
  const outwards = atEnd ? 1 : -1;
  const sign = polarity === 'dark' ? 1 : -1;
  const look = reach_px + 16;
  const depths: number[] = [];
  for (let k = -look; k <= look; k++) {
    const t = corner + outwards * k;
    const s = course.value(t);
    const at = (d: number) =>
      greyAt(
        photo.grey,
        axis.start[0] + axis.along[0] * t + axis.across[0] * (s + d),
        axis.start[1] + axis.along[1] * t + axis.across[1] * (s + d),
      );
    const middle = (at(-1) + 2 * at(0) + at(1)) / 4;
    const before = (at(-6) + at(-7)) / 2;
    const after = (at(6) + at(7)) / 2;
    depths.push(Math.max(0, sign * ((sign > 0 ? Math.min(before, after) : Math.max(before, after)) - middle)));
  }
  const sums = [0];
  for (const d of depths) sums.push(sums.at(-1)! + d);
  const mean = (from: number, to: number) => (sums[to]! - sums[from]!) / (to - from);
  let best = { fall: 0, at: 0 };
  for (let i = 14; i < depths.length - 14; i++) {
    const fall = mean(Math.max(0, i - 30), i) - mean(i, i + 14);
    if (fall > best.fall) best = { fall, at: i };
  }
  const usual = mean(0, 20);
  if (!(usual > 4) || best.fall < 0.6 * usual) return null;
  const t = corner + outwards * (best.at - look - 0.5);
  const s = course.value(t);
  return photoPoint(
    axis.start[0] + axis.along[0] * t + axis.across[0] * s,
    axis.start[1] + axis.along[1] * t + axis.across[1] * s,
  );
}
