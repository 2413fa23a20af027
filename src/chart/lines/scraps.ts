import type { Sheet } from '../sheet.ts';
import { turn } from '../trace/foresee.ts';
import type { Trace } from '../trace/stroke-centre.ts';
import { directionOf, inkOf, type InkIsland } from './ink-islands.ts';
import type { Piece } from './join-pieces.ts';
import { isNear } from './stroke-runs.ts';

/** A stroke is this many times longer than wide (spreads), and at least so long, sheet pixels. */
const STROKE_RATIO = 2;
const SHORTEST_STROKE_PX = 8;
/** Dashes further apart are not one line's; neither are those that bend more than this from one to the next, rad. */
const LONGEST_GAP_PX = 26;
const MOST_TURN = 0.4;
/** Shorter scraps have no direction to go by, sheet pixels. */
const SHORTEST_PX = 14;
const ON_LINE_PX = 9;
const STEP_PX = 2.5;
/** Half the length of an evenly inked stroke, and its whole width, for one standard deviation. */
const HALF_LENGTH = Math.sqrt(3);
const WIDTH = Math.sqrt(12);

type Stroke = { readonly island: InkIsland; readonly from: Point; readonly to: Point; readonly angle: number };
type Point = readonly [number, number];

/**
 * Short stretches of print that lie on no line, from the left to the right: a dash or two, or a bit of a solid line, that
 * a label parts from the rest of its curve. They are too short to be lines themselves.
 * @param islands small pieces of ink that are no letters
 */
export function scraps(
  sheet: Sheet,
  islands: readonly InkIsland[],
  lines: readonly { readonly trace: Trace }[],
): Piece[] {
  const strokes = islands
    .filter((i) => i.long > STROKE_RATIO * i.short && WIDTH * i.long > SHORTEST_STROKE_PX)
    .map(strokeOf)
    .filter(({ from: [x0, y0], to: [x1, y1] }) => {
      const middle = { x: (x0 + x1) / 2, y: (y0 + y1) / 2 };
      return !lines.some(({ trace }) => isNear(trace, middle, ON_LINE_PX));
    })
    .sort((a, b) => a.from[0] - b.from[0]);
  return chained(strokes)
    .map((chain) => pieceOf(sheet, chain))
    .filter(({ trace: { x } }) => x.length * STEP_PX >= SHORTEST_PX);
}

function strokeOf(island: InkIsland): Stroke {
  const { left, right, top, bottom } = island;
  const angle = directionOf(island.moments);
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const half = HALF_LENGTH * island.long;
  const [dx, dy] = [half * Math.cos(angle), half * Math.sin(angle)];
  return { island, from: [x - dx, y - dy], to: [x + dx, y + dy], angle };
}

/** Strokes that follow each other in one direction, each in one chain. */
function chained(strokes: readonly Stroke[]): Stroke[][] {
  const left = [...strokes];
  const chains: Stroke[][] = [];
  for (let first = left.shift(); first; first = left.shift()) {
    const chain = [first];
    for (;;) {
      const last = chain.at(-1)!;
      const next = left.findIndex((s) => follows(last, s));
      if (next < 0) break;
      chain.push(...left.splice(next, 1));
    }
    chains.push(chain);
  }
  return chains;
}

function follows(a: Stroke, b: Stroke): boolean {
  const [dx, dy] = [b.from[0] - a.to[0], b.from[1] - a.to[1]];
  const gap = Math.hypot(dx, dy);
  const way = gap > 2 ? Math.atan2(dy, dx) : a.angle;
  return gap < LONGEST_GAP_PX && Math.abs(turn(a.angle, way)) < MOST_TURN && Math.abs(turn(way, b.angle)) < MOST_TURN;
}

function pieceOf(sheet: Sheet, chain: readonly Stroke[]): Piece {
  const x: number[] = [];
  const y: number[] = [];
  const seen: number[] = [];
  const draw = ([x0, y0]: Point, [x1, y1]: Point, ink: number): void => {
    const steps = Math.max(1, Math.round(Math.hypot(x1 - x0, y1 - y0) / STEP_PX));
    for (let k = 0; k < steps; k++) {
      x.push(x0 + ((x1 - x0) * k) / steps);
      y.push(y0 + ((y1 - y0) * k) / steps);
      seen.push(ink);
    }
  };
  chain.forEach(({ from, to }, k) => {
    if (k > 0) draw(chain[k - 1]!.to, from, 0);
    draw(from, to, 1);
  });
  const [longest] = chain.toSorted((a, b) => b.island.area - a.island.area);
  return {
    trace: { x: Float64Array.from(x), y: Float64Array.from(y), seen: Float64Array.from(seen) },
    colour: inkOf(sheet, { pixels: middleOf(sheet, longest!.island) }),
    width: widthOf(longest!.island),
  };
}

/** A letter that touches the end of a stroke spreads it, and adds little to its area. */
const widthOf = ({ long, short, area }: InkIsland): number =>
  Math.min(WIDTH * short, area / Math.max(1, 2 * HALF_LENGTH * long));

/** The darkest third of a stroke: its middle, where the paper does not lighten it. */
const middleOf = ({ darkness }: Sheet, { pixels }: InkIsland): number[] =>
  pixels.toSorted((a, b) => darkness[b]! - darkness[a]!).slice(0, Math.ceil(pixels.length / 3));
