import type { Trace } from '../trace/stroke-centre.ts';

/** The sides of a box run along the frame's own to within this, radians. */
const ALONG = 0.12;
/** Points of a trace (2.5 px apart) a direction is taken over, and the fewest that make a side. */
const ARM = 3;
const SHORTEST_SIDE = 10;
/** Share of the way that its sides make up: a corner is rounded where it was traced. */
const MOSTLY = 0.72;

/** Whether a trace runs along two sides of a box, round its corner: the box around a legend, no curve. */
export function isRoundBox({ x, y }: Trace): boolean {
  let [level, upright] = [0, 0];
  for (let i = ARM; i < x.length - ARM; i++) {
    const dx = Math.abs(x[i + ARM]! - x[i - ARM]!);
    const dy = Math.abs(y[i + ARM]! - y[i - ARM]!);
    if (Math.atan2(dy, dx) < ALONG) level++;
    if (Math.atan2(dx, dy) < ALONG) upright++;
  }
  return Math.min(level, upright) >= SHORTEST_SIDE && level + upright > MOSTLY * (x.length - 2 * ARM);
}
