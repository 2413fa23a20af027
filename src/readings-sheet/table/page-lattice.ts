import type { Photo } from '../../picture/raster.ts';
import { layFlat } from '../../writing/index.ts';
import { findOutline, wholePhoto } from '../../writing/outline/find-outline.ts';
import type { Lattice } from './find-lattice.ts';

/** A bent page is straight enough between so many places along each side. */
const PLACES = 9;
/** The very edge of the paper is left out: its shadow looks like ink. Share of a side. */
const EDGE = 0.012;

/** The sheet of paper as a lattice of which no line is drawn: where no rulings tell of a table. */
export function pageLattice(photo: Photo): Lattice | null {
  const page = layFlat(photo, findOutline(photo) ?? wholePhoto(photo));
  if (!page) return null;
  const share = (i: number) => EDGE + ((1 - 2 * EDGE) * i) / (PLACES - 1);
  const steps = Array.from({ length: PLACES }, (_, i) => share(i));
  const none = steps.map(() => false);
  return {
    nodes: steps.map((v) => steps.map((u) => page.toPhoto(u * page.width, v * page.height))),
    isDrawn: { level: none, upright: none },
  };
}
