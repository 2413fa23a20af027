import { toStage, type PhotoPoint, type Size, type StagePoint, type View } from './view.ts';

/** The lens that travels with the finger: it stands off to where the fingertip does not hide it. */
export type Lens = { centre: StagePoint; radius: number; view: View; line: readonly [StagePoint, StagePoint] | null };

const RADIUS_PX = 52;
/** The photo appears this much larger in the lens than on the stage, but a photo pixel never outgrows two of the screen. */
const MAGNIFIES = 4;
const LEAST_SCALE = 0.6;
const MOST_SCALE = 2;
const AWAY_PX = 96;
const RING_PX = 20;

/** Places the lens for a corner: above and towards the middle, or beside it where there is no room above. */
export function lensFor(corner: PhotoPoint, view: View, stage: Size): Lens {
  const [x, y] = toStage(view, corner);
  const towards = x > stage.width / 2 ? -1 : 1;
  const room = y - AWAY_PX - RADIUS_PX > -RADIUS_PX * 0.3;
  const wanted: StagePoint = room ? [x + towards * 46, y - AWAY_PX] : [x + towards * (AWAY_PX + 24), y + 8];
  const centre: StagePoint = [
    between(RADIUS_PX + 4, stage.width - RADIUS_PX - 4, wanted[0]),
    Math.max(RADIUS_PX * 0.7, wanted[1]),
  ];
  const scale = between(LEAST_SCALE, MOST_SCALE, view.scale * MAGNIFIES);
  return {
    centre,
    radius: RADIUS_PX,
    view: { scale, x: centre[0] - corner[0] * scale, y: centre[1] - corner[1] * scale },
    line: connection([x, y], centre),
  };
}

const between = (low: number, high: number, value: number): number =>
  Math.min(Math.max(low, high), Math.max(low, value));

/** The leader from the ring round the corner to the rim of the lens; none where they touch. */
function connection(from: StagePoint, to: StagePoint): readonly [StagePoint, StagePoint] | null {
  const away = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (away <= RADIUS_PX + RING_PX) return null;
  const along = (distance: number): StagePoint => [
    from[0] + ((to[0] - from[0]) * distance) / away,
    from[1] + ((to[1] - from[1]) * distance) / away,
  ];
  return [along(RING_PX), along(away - RADIUS_PX)];
}
