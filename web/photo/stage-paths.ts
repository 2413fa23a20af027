import type { Corners } from './corners.ts';
import { toStage, type PhotoPoint, type StagePoint, type View } from './view.ts';

/** Lines on the stage for what is known in the photo's pixels. */

const written = ([x, y]: StagePoint): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

export const linePath = (view: View, points: readonly PhotoPoint[]): string =>
  points.map((point, i) => `${i === 0 ? 'M' : 'L'}${written(toStage(view, point))}`).join('');

export const framePath = (view: View, corners: Corners): string => `${linePath(view, corners)}Z`;

/** The inked angle at a corner: two short legs along its sides. */
export function anglePath(view: View, corners: Corners, index: number, leg_px: number): string {
  const here = toStage(view, corners[index] ?? [0, 0]);
  const legTo = (other: PhotoPoint | undefined): StagePoint => {
    const [x, y] = toStage(view, other ?? [0, 0]);
    const away = Math.hypot(x - here[0], y - here[1]) || 1;
    const share = Math.min(0.4, leg_px / away);
    return [here[0] + (x - here[0]) * share, here[1] + (y - here[1]) * share];
  };
  return `M${written(legTo(corners[(index + 3) % 4]))}L${written(here)}L${written(legTo(corners[(index + 1) % 4]))}`;
}

/** How far lettering keeps from a corner, so that the ring round it stays free. */
const CLEAR_PX = 26;

/** A place just outside the frame, clear of the corner's ring: where an axis end is lettered. */
export function outside(view: View, corners: Corners, index: number, towards: 'below' | 'left' | 'right'): StagePoint {
  const [x, y] = toStage(view, corners[index] ?? [0, 0]);
  if (towards === 'below') return [x, y + CLEAR_PX + 6];
  return [towards === 'left' ? x - CLEAR_PX : x + CLEAR_PX, y];
}
