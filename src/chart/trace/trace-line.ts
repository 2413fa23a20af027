import { endOf, goesOn, toFrameSides } from './curve-ends.ts';
import { followStroke, type Followed } from './follow.ts';
import type { StrokeStep } from './foresee.ts';
import { colourSpread, LOOSE_COLOUR, type Likeness } from './likeness.ts';
import { strokeNear, type SeedStroke } from './seed-stroke.ts';
import { centreOfStroke, type Trace } from './stroke-centre.ts';
import { SOLID, styleAlong } from './stroke-style.ts';
import type { TracedCurve } from './trace.ts';
import { sharedLikeness, type TracingTable } from './tracing-table.ts';
import type { FollowOptions } from './ways-on.ts';

/**
 * Traces the printed line under a tap: the stroke there tells ink, width and dashes, then it is followed both ways.
 * @returns null where there is no stroke within reach
 */
export function traceLine(
  table: TracingTable,
  x: number,
  y: number,
  reach: number,
  others: readonly TracedCurve[],
  halfLength?: number,
): TracedCurve | null {
  const { sheet, grid, bounds } = table;
  const stroke = strokeNear(sheet, grid, x, y, reach, halfLength);
  if (!stroke) return null;
  const options = {
    bounds,
    width: stroke.width,
    usual: USUAL,
    longestGap: LONGEST_GAP_SHARE * Math.max(sheet.frameWidth, sheet.frameHeight),
    taken: takenBy(others.map((o) => pathOf(o.trace))),
  };
  // a first look around the tap shows how even the ink is and whether the line is dashed
  const nearby = { ...options, style: SOLID, mostSteps: STYLE_STEPS };
  const loose = sharedLikeness(table, stroke.colour, LOOSE_COLOUR);
  const around = joined(followStroke(loose, stroke, -1, nearby), followStroke(loose, stroke, 1, nearby));
  const style = styleAlong(loose, around);
  const like = sharedLikeness(table, stroke.colour, colourSpread(sheet, around, stroke.colour));
  const arm = (way: 1 | -1) =>
    followInStyle(like, stroke, way, { ...options, style }, (avoid) =>
      takenBy([...others.map((o) => pathOf(o.trace)), avoid]),
    );
  const right = arm(1);
  const left = arm(-1);
  const steps = style === SOLID ? withoutIslands(joined(left, right)) : joined(left, right);
  const trace = centreOfStroke(like, steps, stroke.width);
  if (!trace) return null;
  const doubts = [left.doubt, right.doubt].filter((d) => d !== null);
  // the last dot or dash before the frame stands by itself
  const period = style === SOLID ? 0 : style.longestGap + style.longestDash;
  const complete = toFrameSides(table, trace, (end) => (period && goesOn(table, like, trace, end) ? period : 0));
  return {
    trace: complete,
    drawn: 'line',
    colour: stroke.colour,
    width: stroke.width,
    doubts,
    looseEnds: ([0, 1] as const).filter((end) => goesOn(table, like, complete, end)).map((end) => endOf(complete, end)),
    doubt_px: 0,
  };
}

/** Likeness along the middle of a stroke that is seen well, blur and all. */
const USUAL = 0.8;
/** A label on the line may hide it for this share of the frame. */
const LONGEST_GAP_SHARE = 0.12;

/** Enough way to tell dashes by, in steps of five pixels each way. */
const STYLE_STEPS = 26;

/** Two ways from one start as one, from left to right. */
const joined = (left: Followed, right: Followed): StrokeStep[] => [...left.steps.toReversed(), ...right.steps.slice(1)];

/**
 * Where a label interrupts a solid line, its letters look like bits of stroke. Between two stretches that are surely
 * line, a longer piece that is not is bridged: nothing in it is believed.
 */
function withoutIslands(steps: readonly StrokeStep[]): StrokeStep[] {
  const out = steps.map((s) => ({ ...s }));
  let sure = -1;
  for (let i = 0; i < out.length;) {
    let j = i;
    while (j < out.length && out[j]!.quality > SURE_QUALITY) j++;
    if (j - i >= SURE_STEPS) {
      if (sure >= 0 && i - sure > BRIDGED_STEPS) for (let k = sure; k < i; k++) out[k]!.quality = 0;
      sure = j;
    }
    i = Math.max(j, i + 1);
  }
  return out;
}

const SURE_QUALITY = 0.5;
const SURE_STEPS = 4;
const BRIDGED_STEPS = 5;

type Path = readonly { readonly x: number; readonly y: number }[];

const pathOf = ({ x, y }: Trace): Path => Array.from(x, (v, i) => ({ x: v, y: y[i]! }));

/**
 * Follows a stroke one way. Where a solid line seems to turn into a dashed one it went astray: it is followed again
 * with that part forbidden.
 */
function followInStyle(
  like: Likeness,
  start: SeedStroke,
  way: 1 | -1,
  options: FollowOptions,
  avoiding: (path: Path) => FollowOptions['taken'],
): Followed {
  const first = followStroke(like, start, way, options);
  if (options.style !== SOLID) return first;
  const astray = strayedAt(like, first.steps);
  if (astray === null) return first;
  const again = followStroke(like, start, way, { ...options, taken: avoiding(first.steps.slice(astray)) });
  const stillAstray = strayedAt(like, again.steps);
  return stillAstray === null ? again : { steps: again.steps.slice(0, stillAstray), doubt: again.steps[stillAstray]! };
}

/** From which step on an arm runs along a dashed line to its end, if it does for a good while; a label is no dashed line. */
function strayedAt(like: Likeness, steps: readonly StrokeStep[]): number | null {
  const isDashed = (from: number) => styleAlong(like, steps.slice(from)) !== SOLID;
  for (let k = 4; k + DASHED_STEPS <= steps.length; k += 4)
    if (isDashed(k) && isDashed((k + steps.length) >> 1)) return k;
  return null;
}

const DASHED_STEPS = 30;

/** Running along another curve costs; crossing it, a few steps, does not matter. */
function takenBy(paths: readonly Path[]): FollowOptions['taken'] {
  const cells = new Set<number>();
  for (const path of paths) for (const { x, y } of path) cells.add(Math.round(y / CELL) * 4096 + Math.round(x / CELL));
  if (!cells.size) return undefined;
  // steps lie further apart than cells
  const near = [0, -1, 1, -4096, 4096];
  return (x, y) => {
    const cell = Math.round(y / CELL) * 4096 + Math.round(x / CELL);
    return near.some((d) => cells.has(cell + d)) ? TAKEN_COST : 0;
  };
}

const CELL = 3;
const TAKEN_COST = 0.4;
