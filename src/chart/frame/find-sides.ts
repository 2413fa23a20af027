import type { Photo } from '../../picture/raster.ts';
import { isGentle } from './gentle-course.ts';
import { sampleWideBand, sideAxis, type Polarity, type SideAxis, type SideBand } from './side-band.ts';
import { findSideComb, isCrossed } from './side-comb.ts';
import { findSideEdge } from './side-edges.ts';
import { findSideLines, type SideLine } from './side-lines.ts';
import { runsOn } from './side-meeting.ts';
import type { SmoothLine } from '../trace/smooth-line.ts';
import type { Corners } from '../spaces.ts';

/**
 * One side of the plot frame as it runs in the photo: a printed line, the edge of a tinted panel, the common end of
 * the grid lines, or nothing that shows (an open side).
 */
export type FrameSide = {
  readonly axis: SideAxis;
  readonly kind: 'line' | 'edge' | 'comb' | 'open';
  /** distance across the strip at a distance along it, pixels; null where the side is open */
  readonly course: SmoothLine | null;
  /** a line much fainter than the other sides': it may be a grid line near an open side */
  readonly isFaint?: boolean;
};

export const SIDE_NAMES = ['bottom', 'right', 'top', 'left'] as const;
export type SideName = (typeof SIDE_NAMES)[number];

type CornerIndex = 0 | 1 | 2 | 3;
/** Which corners each side joins, in the order its strip is sampled. */
export const ENDS: Record<SideName, readonly [CornerIndex, CornerIndex]> = {
  bottom: [0, 1],
  right: [1, 2],
  top: [3, 2],
  left: [0, 3],
};
/** On which hand of the strip's direction the outside of the frame lies. */
const OUTSIDE: Record<SideName, 1 | -1> = { bottom: 1, right: 1, top: -1, left: -1 };

/** How far a finger's corner may be off: 25 px in each direction, and a little for the line's width. */
export const FINGER_REACH_PX = 38;
/** A bent page's side may leave the straight line between its corners by this share of its length. */
const BOW_SHARE = 0.035;
const LARGEST_BOW_PX = 90;

export type FoundSides = { readonly sides: Record<SideName, FrameSide>; readonly polarity: Polarity };

/**
 * What is printed along each of the four sides, and whether the chart's lines are darker or lighter than its paper.
 * @param reach_px how far the corners may be off, photo pixels
 */
export function findSides(photo: Photo, rough: Corners, reach_px: number = FINGER_REACH_PX): FoundSides {
  const bands = {} as Record<SideName, SideBand>;
  for (const name of SIDE_NAMES) {
    const axis = sideAxis(rough[ENDS[name][0]], rough[ENDS[name][1]]);
    const bow = Math.min(LARGEST_BOW_PX, BOW_SHARE * axis.length_px);
    bands[name] = sampleWideBand(photo, axis, reach_px + bow, reach_px + 6);
  }
  const dark = linesIn(photo, bands, 'dark', reach_px);
  if (SIDE_NAMES.every((name) => (dark.lines[name]?.clearness ?? 0) > 12) && dark.plain > 1.2)
    return sidesOf(photo, bands, dark, reach_px);
  const light = linesIn(photo, bands, 'light', reach_px);
  return sidesOf(photo, bands, dark.plain >= 0.8 * light.plain ? dark : light, reach_px);
}

type LinesFound = { polarity: Polarity; lines: Record<SideName, SideLine | null>; plain: number };

function linesIn(photo: Photo, bands: Record<SideName, SideBand>, polarity: Polarity, reach_px: number): LinesFound {
  const found = {} as Record<SideName, SideLine[]>;
  for (const name of SIDE_NAMES)
    found[name] = strongest(
      findSideLines(photo, bands[name], polarity, reach_px),
      OUTSIDE[name],
      bands[name].length_px,
      reach_px,
    );
  const lines = {} as Record<SideName, SideLine | null>;
  let plain = 0;
  for (const name of SIDE_NAMES) {
    lines[name] = ownLine(photo, bands, found, name, polarity);
    plain += lines[name] ? lines[name].seen * lines[name].contrast : 0;
  }
  return { polarity, lines, plain };
}

/** The lines about as strong as the strongest, the outermost first: grid lines next to the frame lie inside it, and are rarely darker. */
function strongest(lines: SideLine[], outside: 1 | -1, length_px: number, reach_px: number): SideLine[] {
  const real = lines.filter(
    (l) =>
      l.seen > 0.6 &&
      l.clearness > 4 &&
      l.line.residual < 1.2 &&
      inReach(l.line, length_px, reach_px) &&
      isGentle((t) => l.line.value(t), length_px),
  );
  const weight = (l: SideLine) => l.strength * l.seen * l.seen;
  const most = Math.max(...real.map(weight));
  return real.filter((l) => weight(l) >= 0.5 * most).sort((a, b) => outside * (b.middle_px - a.middle_px));
}

/** The sides that a side meets at its start and at its end. */
const MEETS: Record<SideName, readonly [SideName, SideName]> = {
  bottom: ['left', 'right'],
  right: ['bottom', 'top'],
  top: ['left', 'right'],
  left: ['bottom', 'top'],
};

/** The outermost line, or the next one where both sides that meet it stop there: what lies beyond belongs to something else. */
function ownLine(
  photo: Photo,
  bands: Record<SideName, SideBand>,
  found: Record<SideName, SideLine[]>,
  name: SideName,
  polarity: Polarity,
): SideLine | null {
  const axis = bands[name];
  const inwards = name === 'bottom' || name === 'left' ? 1 : -1;
  const place = ({ line }: SideLine, t: number): readonly [number, number] => [
    axis.start[0] + axis.along[0] * t + axis.across[0] * line.value(t),
    axis.start[1] + axis.along[1] * t + axis.across[1] * line.value(t),
  ];
  let [own = null, ...rest] = found[name];
  for (const next of rest) {
    const outer = own!;
    const on = MEETS[name].map((meeting, end) => {
      const line = found[meeting][0];
      const t = end ? axis.length_px : 0;
      return line
        ? runsOn(photo, { axis: bands[meeting], course: line.line }, place(next, t), place(outer, t), inwards, polarity)
        : null;
    });
    if (on.every((runs) => runs === false)) own = next;
  }
  return own;
}

const inReach = (course: SmoothLine, length_px: number, reach_px: number) =>
  Math.abs(course.value(0)) <= reach_px && Math.abs(course.value(length_px)) <= reach_px;

/** Sides without a frame line of their own: the edge of a panel, or where all grid lines end. */
function sidesOf(
  photo: Photo,
  bands: Record<SideName, SideBand>,
  { lines, polarity }: LinesFound,
  reach_px: number,
): FoundSides {
  const sides = {} as Record<SideName, FrameSide>;
  const strongest = Math.max(...SIDE_NAMES.map((name) => lines[name]?.contrast ?? 0));
  // a faint line may be the last grid line inside a panel or an open frame: then the side lies further out
  const isSure = (line: SideLine | null) => Boolean(line && line.contrast > 0.5 * strongest && line.contrast > 0.2);
  for (const name of SIDE_NAMES) {
    const axis = bands[name];
    const line = lines[name];
    const edge = isSure(line) ? null : findSideEdge(photo, bands[name], reach_px);
    if (edge && inReach(edge.line, axis.length_px, reach_px) && !(line && line.contrast > 2 * edge.contrast))
      sides[name] = { axis, kind: 'edge', course: edge.line };
    else if (line)
      sides[name] = { axis, kind: 'line', course: line.line, isFaint: line.contrast < FAINT_SHARE * strongest };
    else sides[name] = { axis, kind: 'open', course: null };
  }
  const isPanel = SIDE_NAMES.filter((name) => sides[name].kind === 'edge').length > 1;
  for (const name of SIDE_NAMES) {
    const { axis, kind, course } = sides[name];
    if (kind === 'edge' || isSure(lines[name])) continue;
    if (course && !isPanel && !isCrossed(photo, axis, course, OUTSIDE[name])) continue;
    const comb = findSideComb(photo, axis, OUTSIDE[name], reach_px);
    const held = comb && inReach(comb.line, axis.length_px, reach_px);
    sides[name] = held ? { axis, kind: 'comb', course: comb.line } : { axis, kind: 'open', course: null };
  }
  // a panel's grid is often lighter than the panel; what is drawn on it is not
  return { sides, polarity: isPanel ? 'dark' : polarity };
}

const FAINT_SHARE = 0.4;
