import { once } from '../../numeric/once.ts';
import type { Photo } from '../../picture/raster.ts';
import { likenessOf } from './frame-likeness.ts';
import { frameSigns, strokeSteps, type FrameSigns } from './frame-signs.ts';
import { glyphBlobs } from './glyph-blobs.ts';
import { straightLines } from '../../picture/lines/join-lines.ts';
import { lineWebs, type LineWeb } from '../../picture/lines/line-webs.ts';
import { pageLean } from './page-lean.ts';
import { lengthOf, type PageLine } from '../../picture/lines/page-lines.ts';
import { pageView, turned, type PageView } from '../../picture/lines/page-view.ts';
import { ridgeChains } from '../../picture/lines/ridge-chains.ts';
import { tintEdge } from './tint-edges.ts';
import { webFrames, type WebFrame } from './web-frames.ts';

/** Four lines that may frame a plot, with what speaks for it; places in view pixels. */
export type CandidateFrame = {
  readonly frame: WebFrame;
  readonly isDark: boolean;
  readonly signs: FrameSigns;
  /** 0..1 */
  readonly likeness: number;
};

/** Strokes and lines shorter than these are letters and specks: rows, and share of the view's longer edge. */
const SHORTEST_STROKE_PX = 10;
const SHORTEST_LINE_SHARE = 0.03;
/** A plot is at least this long, share of the view's longer edge. */
const SMALLEST_PLOT_SHARE = 0.09;

/** Everything on a photo that might frame a plot, likeliest first, and the view it was found in. */
export function candidateFrames(photo: Photo): { view: PageView; candidates: CandidateFrame[] } {
  const view = pageView(photo);
  const { width, height } = view.grey;
  const longEdge = Math.max(width, height);
  const upright = ridgeChains(view.grey, view.grain, SHORTEST_STROKE_PX);
  const level = ridgeChains(turned(view.grey), view.grain, SHORTEST_STROKE_PX);
  const lines = (['dark', 'light'] as const).map((ink) =>
    straightLines(
      { upright: upright[ink], level: level[ink] },
      ink === 'dark',
      longEdge,
      SHORTEST_LINE_SHARE * longEdge,
    ),
  );
  const lean = pageLean(lines.flat());
  const steps = [upright, level].flatMap((s) => strokeSteps([...s.dark, ...s.light], s === upright));
  const dark = once(() => glyphBlobs(view.grey, true));
  const light = once(() => glyphBlobs(view.grey, false));
  const candidates: CandidateFrame[] = [];
  for (const mine of lines) {
    if (!mine.length) continue;
    const { isDark } = mine[0]!;
    // graph paper ends in an edge too, but the lines of a tinted panel are lighter than it
    const edgeNear = (end: PageLine) => (isDark ? null : tintEdge(view.grey, end));
    const frames = lineWebs(mine)
      .filter((web) => isBig(web, SMALLEST_PLOT_SHARE * longEdge))
      .flatMap((web) => webFrames(web, mine, lean, longEdge, edgeNear));
    for (const frame of frames)
      // on a tinted panel the grid is lighter than the panel, and the words are dark as ever
      for (const letters of isDark ? [dark()] : [light(), dark()]) {
        const signs = frameSigns(frame, steps, letters, width, height);
        if (signs) candidates.push({ frame, isDark, signs, likeness: likenessOf(signs) });
      }
  }
  return { view, candidates: candidates.sort((a, b) => b.likeness - a.likeness) };
}

const isBig = ({ upright, level }: LineWeb, least: number) =>
  [upright, level].every((lines) => !lines.length || lines.some((l) => lengthOf(l) > least));
