import type { Photo } from './raster.ts';
import { findSideLines, type SideLine } from './side-lines.ts';
import { sampleWideBand, sideAxis, type Polarity, type SideAxis, type SideBand } from './side-band.ts';
import { photoPoint, type Corners, type PhotoPoint } from './spaces.ts';

/** One side of the plot frame as it runs in the photo. */
export type FrameSide = {
  readonly axis: SideAxis;
  /** the printed line, or null where the frame is open on this side */
  readonly line: SideLine | null;
};

export const SIDE_NAMES = ['bottom', 'right', 'top', 'left'] as const;
export type SideName = (typeof SIDE_NAMES)[number];

/** The plot frame in the photo: four sides, four corners, and whether lines are darker or lighter than the paper. */
export type SnappedFrame = {
  readonly sides: Record<SideName, FrameSide>;
  readonly corners: Corners;
  readonly polarity: Polarity;
};

/** Which corners each side joins, in the order the strip is sampled. */
type CornerIndex = 0 | 1 | 2 | 3;
const ENDS: Record<SideName, readonly [CornerIndex, CornerIndex]> = {
  bottom: [0, 1],
  right: [1, 2],
  top: [3, 2],
  left: [0, 3],
};
/** On which hand of the strip's direction the outside of the frame lies. */
const OUTSIDE: Record<SideName, 1 | -1> = { bottom: 1, right: 1, top: -1, left: -1 };

/** How far a finger's corner may be off: 25 px in each direction, and a little for the line's width. */
export const FINGER_REACH_PX = 38;

/**
 * Moves four roughly placed corners onto the printed plot frame.
 * Each side is the outermost strong line within reach of its two corners; a side without one is open and stays straight.
 */
export function snapFrame(photo: Photo, rough: Corners): SnappedFrame {
  const { sides, polarity } = findSides(photo, rough);
  return { sides, polarity, corners: cornersOf(sides, rough) };
}

/** Takes the corners as they are; the printed sides only tell how the page bends between them. */
export function exactFrame(photo: Photo, corners: Corners): SnappedFrame {
  return { ...findSides(photo, corners), corners };
}

function findSides(photo: Photo, rough: Corners): Pick<SnappedFrame, 'sides' | 'polarity'> {
  const bands = {} as Record<SideName, SideBand>;
  for (const name of SIDE_NAMES) {
    const [a, b] = ENDS[name];
    const length = Math.hypot(rough[b][0] - rough[a][0], rough[b][1] - rough[a][1]);
    const bow = Math.min(90, 0.035 * length);
    bands[name] = sampleWideBand(photo, sideAxis(rough[a], rough[b]), FINGER_REACH_PX + bow, FINGER_REACH_PX + 6);
  }
  const look = (polarity: Polarity) => {
    const sides = {} as Record<SideName, FrameSide>;
    let plain = 0;
    for (const name of SIDE_NAMES) {
      const line = outermost(
        findSideLines(photo, bands[name], polarity, FINGER_REACH_PX),
        OUTSIDE[name],
        bands[name].length_px,
      );
      sides[name] = { axis: bands[name], line };
      if (line) plain += line.seen * line.contrast;
    }
    return { polarity, sides, plain };
  };
  const dark = look('dark');
  if (SIDE_NAMES.every((name) => (dark.sides[name].line?.clearness ?? 0) > 12 && dark.plain > 1.2)) return dark;
  const light = look('light');
  return dark.plain >= 0.8 * light.plain ? dark : light;
}

/** Grid lines next to the frame lie inside it, and are rarely darker: of the lines about as strong as the strongest, the outermost. */
function outermost(lines: SideLine[], outside: 1 | -1, length_px: number): SideLine | null {
  const inReach = ({ line }: SideLine) =>
    Math.abs(line.value(0)) <= FINGER_REACH_PX && Math.abs(line.value(length_px)) <= FINGER_REACH_PX;
  const real = lines.filter((l) => l.seen > 0.6 && l.clearness > 4 && l.line.residual < 1.2 && inReach(l));
  if (!real.length) return null;
  const weight = (l: SideLine) => l.strength * l.seen * l.seen;
  const most = Math.max(...real.map(weight));
  let pick: SideLine | null = null;
  for (const l of real) {
    if (weight(l) < 0.5 * most) continue;
    if (!pick || outside * (middleOf(l) - middleOf(pick)) > 0) pick = l;
  }
  return pick;
}

const middleOf = (l: SideLine): number => l.middle_px;

/** Corners where the sides' lines meet; an open side is a straight line through the rough corners moved with its neighbours. */
function cornersOf(sides: Record<SideName, FrameSide>, rough: Corners): Corners {
  const meet = (a: SideName, b: SideName, k: number): PhotoPoint => crossing(sides[a], sides[b], rough[k]!);
  return [meet('bottom', 'left', 0), meet('bottom', 'right', 1), meet('top', 'right', 2), meet('top', 'left', 3)];
}

function crossing(a: FrameSide, b: FrameSide, near: PhotoPoint): PhotoPoint {
  let [x, y] = near as readonly [number, number];
  for (let i = 0; i < 12; i++) {
    // move onto side a, then b, by solving for the point where both lines' offsets vanish
    const fa = offsetFrom(a, x, y);
    const fb = offsetFrom(b, x, y);
    const det = fa.nx * fb.ny - fa.ny * fb.nx;
    if (Math.abs(det) < 1e-6) break;
    x -= (fa.d * fb.ny - fa.ny * fb.d) / det;
    y -= (fa.nx * fb.d - fa.d * fb.nx) / det;
  }
  return photoPoint(x, y);
}

/** Signed distance of a point from a side's line, and the direction in which it grows. */
function offsetFrom({ axis, line }: FrameSide, x: number, y: number): { d: number; nx: number; ny: number } {
  const dx = x - axis.start[0];
  const dy = y - axis.start[1];
  const t = dx * axis.along[0] + dy * axis.along[1];
  const s = dx * axis.across[0] + dy * axis.across[1];
  const value = line ? line.line.value(t) : 0;
  const slope = line ? line.line.slope(t) : 0;
  return { d: s - value, nx: axis.across[0] - slope * axis.along[0], ny: axis.across[1] - slope * axis.along[1] };
}
