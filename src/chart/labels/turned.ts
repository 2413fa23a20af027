import type { FrameMap } from '../frame/frame-map.ts';
import type { SnappedFrame } from '../frame/frame-snap.ts';
import type { Corners } from '../spaces.ts';
import type { Piece, Pieces } from './pieces.ts';
import type { Box, Surroundings } from './surroundings.ts';

/** How often a frame's corners were moved on by one so that the text stands upright. */
export type Turns = 0 | 1 | 2 | 3;

const AROUND = ['bottom', 'right', 'top', 'left'] as const;

/** The same printed frame, another corner taken for its first. */
export function turnedFrame(frame: SnappedFrame, turns: Turns): SnappedFrame {
  const corners = [0, 1, 2, 3].map((k) => frame.corners[(k + turns) % 4]!) as unknown as Corners;
  const sides = Object.fromEntries(
    AROUND.map((name, k) => [name, frame.sides[AROUND[(k + turns) % 4]!]]),
  ) as SnappedFrame['sides'];
  return { ...frame, corners, sides };
}

/** What was laid flat once need not be sampled again to be looked at from another side. */
export function turnedSurroundings(
  all: Surroundings,
  { list, labels }: Pieces,
  map: FrameMap,
  turns: Turns,
): { around: Surroundings; pieces: Pieces } {
  if (turns === 0) return { around: all, pieces: { list, labels } };
  const { width: w, height: h } = all;
  const [width, height] = turns === 2 ? [w, h] : [h, w];
  // where a place of the turned picture lies in the first one
  const back = (x: number, y: number): readonly [number, number] =>
    turns === 1 ? [y, h - x] : turns === 2 ? [w - x, h - y] : [w - y, x];
  const box = ({ x0, y0, x1, y1 }: Box): Box =>
    turns === 1
      ? { x0: h - y1, y0: x0, x1: h - y0, y1: x1 }
      : turns === 2
        ? { x0: w - x1, y0: h - y1, x1: w - x0, y1: h - y0 }
        : { x0: y0, y0: w - x1, x1: y1, y1: w - x0 };
  const ink = new Uint8Array(all.ink.length);
  const turnedLabels = new Int32Array(labels.length);
  const step = turns === 1 ? -w : turns === 2 ? -1 : w;
  for (let y = 1; y < height - 1; y++) {
    const [bx, by] = back(1, y);
    for (let x = 1, i = y * width + 1, j = by * w + bx; x < width - 1; x++, i++, j += step) {
      ink[i] = all.ink[j]!;
      turnedLabels[i] = labels[j]!;
    }
  }
  const frame = box(all.frame);
  const [fw, fh] = [frame.x1 - frame.x0, frame.y1 - frame.y0];
  return {
    around: {
      ...all,
      width,
      height,
      frame,
      ink,
      paperAt: (x, y) => all.paperAt(...back(x, y)),
      toPhoto: (x, y) => map.toPhoto((x - frame.x0) / fw, 1 - (y - frame.y0) / fh),
    },
    // pixels' numbers stand at their middles: a box turned round begins one later
    pieces: { labels: turnedLabels, list: list.map((p): Piece => ({ ...p, ...shifted(box(p), turns) })) },
  };
}

function shifted({ x0, y0, x1, y1 }: Box, turns: Turns): Box {
  const [dx, dy] = turns === 1 ? [1, 0] : turns === 2 ? [1, 1] : [0, 1];
  return { x0: x0 + dx, y0: y0 + dy, x1: x1 + dx, y1: y1 + dy };
}
