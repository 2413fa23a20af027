import { endOf, goesOn, toFrameSides } from './curve-ends.ts';
import { followStroke, type Followed } from './follow.ts';
import type { StrokeStep } from './foresee.ts';
import { colourSpread, LOOSE_COLOUR } from './likeness.ts';
import { strokeNear } from './seed-stroke.ts';
import { centreOfStroke } from './stroke-centre.ts';
import { SOLID, styleAlong } from './stroke-style.ts';
import type { TracedCurve } from './trace.ts';
import { sharedLikeness, type TracingTable } from './tracing-table.ts';

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
): TracedCurve | null {
  const { sheet, grid, bounds } = table;
  const stroke = strokeNear(sheet, grid, x, y, reach);
  if (!stroke) return null;
  const options = {
    bounds,
    width: stroke.width,
    usual: USUAL,
    longestGap: LONGEST_GAP_SHARE * Math.max(sheet.frameWidth, sheet.frameHeight),
    taken: takenBy(others),
  };
  // a first look around the tap shows how even the ink is and whether the line is dashed
  const nearby = { ...options, style: SOLID, mostSteps: STYLE_STEPS };
  const loose = sharedLikeness(table, stroke.colour, LOOSE_COLOUR);
  const around = joined(followStroke(loose, stroke, -1, nearby), followStroke(loose, stroke, 1, nearby));
  const style = styleAlong(loose, around);
  const like = sharedLikeness(table, stroke.colour, colourSpread(sheet, around, stroke.colour));
  const right = followStroke(like, stroke, 1, { ...options, style });
  const left = followStroke(like, stroke, -1, { ...options, style });
  const steps = style === SOLID ? withoutIslands(joined(left, right)) : joined(left, right);
  const trace = centreOfStroke(like, steps, stroke.width);
  if (!trace) return null;
  const doubts = [left.doubt, right.doubt].filter((d) => d !== null);
  const complete = toFrameSides(table, trace);
  return {
    trace: complete,
    drawn: 'line',
    colour: stroke.colour,
    width: stroke.width,
    doubts,
    looseEnds: ([0, 1] as const).filter((end) => goesOn(table, like, complete, end)).map((end) => endOf(complete, end)),
    scatter_px: 0,
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
const SURE_STEPS = 6;
const BRIDGED_STEPS = 5;

/** Running along another curve costs; crossing it, a few steps, does not matter. */
function takenBy(others: readonly TracedCurve[]): ((x: number, y: number) => number) | undefined {
  if (!others.length) return undefined;
  const cells = new Set<number>();
  for (const { trace } of others)
    for (let i = 0; i < trace.x.length; i++)
      cells.add(Math.round(trace.y[i]! / 3) * 4096 + Math.round(trace.x[i]! / 3));
  return (x, y) => (cells.has(Math.round(y / 3) * 4096 + Math.round(x / 3)) ? 0.4 : 0);
}
