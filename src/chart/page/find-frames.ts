import type { Photo } from '../../picture/raster.ts';
import { photoPoint, type Corners } from '../spaces.ts';
import { candidateFrames, type CandidateFrame } from './candidate-frames.ts';
import { inPhoto, type PageView } from '../../picture/lines/page-view.ts';
import { areStacked } from './stacked-panels.ts';
import { areaOf, isAlike, overlap, sidesOf, type WebFrame } from './web-frames.ts';

/** A plot frame found on a photo. */
export type FoundFrame = {
  /** bottom-left, bottom-right, top-right, top-left as the photo is seen, whichever side is truly up; photo pixels */
  readonly corners: Corners;
  /** whether its lines are darker or lighter than the paper */
  readonly polarity: 'dark' | 'light';
  /** 0..1: how likely this is a plot frame, and the right one of those that overlap it */
  readonly confidence: number;
  /** four printed sides; some sides told by where the grid ends; or by the ends of the axes alone */
  readonly kind: 'boxed' | 'grid' | 'open';
  /** frames over or under it, or beside it on a turned photo, that share an axis with it */
  readonly panels?: readonly Corners[];
};

const MOST_FRAMES = 12;
/** Another reading of the same place is worth this much less than the best one. */
const SECOND_READING = 0.6;
/** Panels count together when both are this likely. */
const PANEL_LIKENESS = 0.3;
const PRINTED_SHARE = 0.55;

/**
 * The plot frames on a photo, likeliest first, to within a few pixels of the printed corners (see `snapFrame` for the
 * rest). Other readings of the same place follow the best one. Empty where nothing on the photo looks like a plot.
 */
export function findFrames(photo: Photo): FoundFrame[] {
  const { view, candidates: all } = candidateFrames(photo);
  const candidates = withoutStacks(all);
  const charts: CandidateFrame[] = [];
  const seconds: CandidateFrame[] = [];
  for (const c of candidates) {
    if (charts.some((k) => isAlike(k.frame, c.frame)) || seconds.some((k) => isAlike(k.frame, c.frame))) continue;
    if (charts.some((k) => overlap(k.frame.corners, c.frame.corners) > 0.3)) seconds.push(c);
    else charts.push(c);
  }
  const found = charts.map((c) => {
    const beside = charts.filter(
      (o) =>
        o !== c && Math.min(o.likeness, c.likeness) > PANEL_LIKENESS && areStacked(o.frame.corners, c.frame.corners),
    );
    const confidence = Math.max(c.likeness, ...beside.map((o) => o.likeness));
    return asFound(view, c, confidence, beside);
  });
  const others = seconds.map((c) => asFound(view, c, SECOND_READING * c.likeness, []));
  const rank = (f: FoundFrame) =>
    f.confidence * (f.panels?.length ? 1 + (0.1 * Math.sqrt(areaOf(f.corners))) / longEdgeOf(photo) : 1);
  return [...found, ...others].sort((a, b) => rank(b) - rank(a)).slice(0, MOST_FRAMES);
}

/** A frame around two panels is worth this much of its likeness, where the panels hold about as well as it does. */
const STACK_WORTH = 0.3;
const AS_WELL = 0.85;

/** Frames drawn around two panels, each a frame of its own, put behind them. */
function withoutStacks(candidates: readonly CandidateFrame[]): CandidateFrame[] {
  return candidates
    .map((big) => {
      const inner = candidates.filter(
        (c) =>
          c.isDark === big.isDark &&
          c.frame.hold > AS_WELL * big.frame.hold &&
          areaOf(c.frame.corners) < 0.85 * areaOf(big.frame.corners) &&
          areaOf(c.frame.corners) > 0.1 * areaOf(big.frame.corners) &&
          overlap(c.frame.corners, big.frame.corners) > 0.95,
      );
      const isStack = inner.some((a) =>
        inner.some(
          (b) =>
            areStacked(a.frame.corners, b.frame.corners) &&
            areaOf(a.frame.corners) + areaOf(b.frame.corners) > 0.8 * areaOf(big.frame.corners),
        ),
      );
      return isStack ? { ...big, likeness: STACK_WORTH * big.likeness } : big;
    })
    .sort((a, b) => b.likeness - a.likeness);
}

const longEdgeOf = ({ full }: Photo) => Math.max(full.width, full.height);

function asFound(view: PageView, c: CandidateFrame, confidence: number, beside: readonly CandidateFrame[]): FoundFrame {
  const place = (frame: WebFrame) =>
    frame.corners.map(([x, y]) => photoPoint(inPhoto(view, x), inPhoto(view, y))) as unknown as Corners;
  return {
    corners: place(c.frame),
    polarity: c.isDark ? 'dark' : 'light',
    confidence,
    kind: kindOf(c.frame),
    ...(beside.length ? { panels: beside.map((o) => place(o.frame)) } : {}),
  };
}

function kindOf(frame: WebFrame): FoundFrame['kind'] {
  // the edge of a tinted panel is seen and yet no printed line
  const unprinted = sidesOf(frame).filter((s) => s.cover < PRINTED_SHARE || !s.line.strength);
  if (!unprinted.length) return 'boxed';
  return unprinted.every((s) => s.enders >= 3) ? 'grid' : 'open';
}
