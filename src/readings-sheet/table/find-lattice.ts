import { straightLines } from '../../picture/lines/join-lines.ts';
import { lengthOf, slopeAt, type PageLine } from '../../picture/lines/page-lines.ts';
import { inPhoto, pageView, turned } from '../../picture/lines/page-view.ts';
import { ridgeChains } from '../../picture/lines/ridge-chains.ts';
import type { Grey, Photo } from '../../picture/raster.ts';
import { chooseRulings, type Rulings } from './choose-rulings.ts';
import { mapped, type Lattice, type Xy } from './lattice.ts';
import { withEnds } from './ruling-ends.ts';
import { strongSpan } from './strong-span.ts';
import { turnedView } from './turned-view.ts';

const SHORTEST_STROKE_PX = 10;
const SHORTEST_LINE_SHARE = 0.03;
/** Strokes are followed within 45° of upright and level, and best within 30°: steeper pages are turned first. */
const STEEP = 0.4;
const TURNS = [0, Math.PI / 6, -Math.PI / 6];

/** The ruled table on a photo; null where there is none. */
export function findLattice(photo: Photo): Lattice | null {
  const view = pageView(photo);
  const longEdge = Math.max(view.grey.width, view.grey.height);
  for (const first of TURNS) {
    let angle = first;
    for (let round = 0; round < 2; round++) {
      const { grey, toView } = turnedView(view.grey, angle);
      const rulings = chooseRulings(linesOf(grey, view.grain, longEdge));
      if (!rulings) break;
      const lean = leanOf(rulings);
      if (Math.abs(lean) > STEEP && round === 0) {
        angle += Math.atan(lean);
        continue;
      }
      const toPhoto = (at: Xy): Xy => {
        const [x, y] = toView(...at);
        return [inPhoto(view, x), inPhoto(view, y)];
      };
      return mapped(withEnds(rulings), toPhoto);
    }
  }
  return null;
}

/** All dark lines of a picture, at most 45° off upright and level. @param grain its standard deviation, grey levels */
export function linesOf(grey: Grey, grain: number, longEdge: number): PageLine[] {
  const upright = ridgeChains(grey, grain, SHORTEST_STROKE_PX);
  const level = ridgeChains(turned(grey), grain, SHORTEST_STROKE_PX);
  const strokes = { upright: upright.dark, level: level.dark };
  return straightLines(strokes, true, longEdge, SHORTEST_LINE_SHARE * longEdge).map(strongSpan);
}

/** Tangent by which the table leans, falling to the right; half of what both directions say where they differ. */
function leanOf({ level, upright }: Rulings): number {
  const mean = (lines: readonly PageLine[]) =>
    lines.reduce((s, l) => s + slopeAt(l, l.middle) * lengthOf(l), 0) / lines.reduce((s, l) => s + lengthOf(l), 0);
  if (!level.length) return -mean(upright);
  return upright.length ? (mean(level) - mean(upright)) / 2 : mean(level);
}
