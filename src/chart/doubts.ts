import { pointer, type Warning } from '../issues/result.ts';
import { formatNumber } from '../units/format.ts';
import { valueAt, type AxisScale } from './axes.ts';
import { SIDE_NAMES, type SideName } from './frame/find-sides.ts';
import type { SnappedFrame } from './frame/frame-snap.ts';
import type { AxisQuantity } from './hints.ts';
import { turn } from './trace/foresee.ts';
import { hiddenStretches } from './trace/hidden-stretches.ts';
import type { ScaleGrid } from './grid/scale-grid.ts';
import type { Sheet } from './sheet.ts';
import type { TracedCurve } from './trace/trace.ts';

/** What a reading is not sure of, in words, and how much that takes from its confidence. */
export type Doubt = { readonly warning: Warning; readonly confidence: number; readonly serious: boolean };

/**
 * What remains of a doubt that something else on the chart speaks against. Measured on 49 invented photos: of
 * 35 doubts about a scale so cleared, none was about an end whose figures were wrong; four lay on scales with a wrong unit
 * or power of ten, which no grid can tell.
 */
const CLEARED = 0.95;

/** The doubts of these codes said and no longer serious, because something else on the chart speaks against them. */
export const cleared = (doubts: readonly Doubt[], codes: ReadonlySet<string>): Doubt[] =>
  doubts.map((d) =>
    codes.has(d.warning.code) ? { ...d, confidence: Math.max(d.confidence, CLEARED), serious: false } : d,
  );

const doubt = (code: string, path: string, text: string, confidence: number, serious: boolean): Doubt => ({
  warning: { code, text, path },
  confidence,
  serious,
});

/**
 * Sides that could not be found in the print.
 * @param isTold whether grid or ticks along the other sides tell where an open side lies
 */
export function frameDoubts(frame: SnappedFrame, exact: boolean, isTold: (side: SideName) => boolean): Doubt[] {
  const open = SIDE_NAMES.filter((name) => !frame.sides[name].course);
  if (!open.length || exact) return [];
  const which =
    open.length === 1 ? `the ${open[0]} side` : `the ${open.slice(0, -1).join(', ')} and ${open.at(-1)} sides`;
  const text = `No printed line was found along ${which} of the plot frame`;
  return [
    open.every(isTold)
      ? doubt(
          'frame-side-open',
          pointer('frameCorners_px'),
          `${text}; grid and ticks tell where the plot ends there.`,
          0.92,
          false,
        )
      : doubt('frame-side-open', pointer('frameCorners_px'), `${text}: please check the corners there.`, 0.6, true),
  ];
}

/** A photo with several fan charts, and nothing told which is meant. */
export const oneOfSeveral = (): Doubt =>
  doubt(
    'several-charts',
    pointer('frameCorners_px'),
    'There are several charts on this photo; one of them was read. Tap inside another to read that instead.',
    0.6,
    true,
  );

/**
 * Whether the grid bears the typed scale out.
 * @param isOthers the lines belong to another scale along the same side: those off round values are none of this one's
 */
export function scaleDoubts(grid: ScaleGrid, axisIndex: number, what: string, isOthers = false): Doubt[] {
  const path = pointer('axes', axisIndex);
  if (grid.lattice && grid.isRound) {
    if (grid.bend.residual > 0.003)
      return [
        doubt(
          'grid-uneven',
          path,
          `The ${what} grid does not run smoothly: this scale may be off by ${(100 * grid.bend.residual).toFixed(1)} %.`,
          0.7,
          true,
        ),
      ];
    return [];
  }
  if (!isOthers && (grid.lattice || isEven(grid.lines.filter((l) => l.seen > 0.7).map((l) => l.place))))
    return [
      doubt(
        'grid-off-scale',
        path,
        `The printed grid lines do not stand at round values between the two ends given for the ${what} axis: please check those two numbers.`,
        0.5,
        true,
      ),
    ];
  return [
    doubt(
      'no-grid',
      path,
      `There is no grid to check the ${what} scale by; if the page is bent, values between its ends may be a little off.`,
      0.92,
      false,
    ),
  ];
}

/** Three or more places at even distances: a printed grid. */
function isEven(places: readonly number[]): boolean {
  if (places.length < 3) return false;
  const steps = places.slice(1).map((p, i) => p - places[i]!);
  return Math.max(...steps) < 1.12 * Math.min(...steps);
}

/** Stretches that were bridged, other ways the curve could go, markers that lie far apart. */
export function curveDoubts(
  sheet: Sheet,
  curve: TracedCurve,
  toFraction: (x: number, y: number) => readonly [number, number],
  flow: AxisScale & { unit: string },
  path: string,
  quantity: AxisQuantity,
): Doubt[] {
  const out: Doubt[] = [];
  const flowAt = (x: number, y: number) => said(valueAt(flow, toFraction(x, y)[0]), flow);
  const { x, y, seen } = curve.trace;
  const forks = (px: number, py: number) => [
    doubt(
      'curve-forks',
      path,
      `Near ${flowAt(px, py)} ${flow.unit} the line could also go another way: please look whether the right branch was followed.`,
      0.6,
      true,
    ),
  ];
  // what is missing of a power curve misleads nobody, a pressure curve's end does
  const isPressure = quantity.endsWith('_pressure');
  const least = Math.max(26, 0.03 * sheet.frameWidth);
  if (curve.drawn === 'line')
    for (const [from, to] of hiddenStretches(seen)) {
      const length = Math.hypot(x[to]! - x[from]!, y[to]! - y[from]!);
      if (length < least) continue;
      const turned = turnAcross(curve.trace, from, to);
      if (turned > SHARP_TURN && length < TIGHTEST * sheet.frameWidth * turned) out.push(...forks(x[from]!, y[from]!));
      const glare = glareAt(sheet, x[(from + to) >> 1]!, y[(from + to) >> 1]!);
      const range = `Between ${flowAt(x[from]!, y[from]!)} and ${flowAt(x[to]!, y[to]!)} ${flow.unit}`;
      out.push(
        doubt(
          glare ? 'curve-in-glare' : 'curve-hidden',
          path,
          glare
            ? `${range} the curve is hidden by glare and was bridged.`
            : `${range} the curve could not be seen clearly and was bridged.`,
          length > 0.12 * sheet.frameWidth ? (isPressure ? 0.6 : 0.85) : length > 0.08 * sheet.frameWidth ? 0.88 : 0.96,
          isPressure && length > 0.12 * sheet.frameWidth,
        ),
      );
    }
  for (const d of curve.doubts) out.push(...forks(d.x, d.y));
  for (const e of curve.looseEnds)
    out.push(
      doubt(
        'curve-may-go-on',
        path,
        `Near ${flowAt(e.x, e.y)} ${flow.unit} the trace stops where a line seems to go on: please look whether the curve is whole.`,
        isPressure ? 0.6 : 0.85,
        isPressure,
      ),
    );
  if (curve.drawn === 'markers')
    out.push(
      doubt(
        'markers-only',
        path,
        `This curve has no printed line: it was drawn smoothly through its test points, and may be off between them by ${((100 * curve.doubt_px) / sheet.frameHeight).toFixed(1)} % of the scale.`,
        0.85,
        curve.doubt_px > MOST_BETWEEN_MARKERS * sheet.frameHeight,
      ),
    );
  return out;
}

/**
 * Two ways of joining test points that differ by this share of the scale: then the true curve is off by up to three times as
 * much. On 1300 invented curves of 7 to 13 points 6 % were off by more than 1 % of full scale; with a smaller difference
 * than this, 1.6 %.
 */
const MOST_BETWEEN_MARKERS = 0.003;

function said(value: number, axis: AxisScale): string {
  const span = Math.abs(axis.max - axis.min);
  return formatNumber(value, Math.max(0, Math.ceil(1.7 - Math.log10(span))));
}

/** Angle between the ways into and out of a bridged stretch, radians. */
function turnAcross({ x, y }: TracedCurve['trace'], from: number, to: number): number {
  const back = Math.max(0, from - 10);
  const on = Math.min(x.length - 1, to + 10);
  const a = Math.atan2(y[from]! - y[back]!, x[from]! - x[back]!);
  const b = Math.atan2(y[on]! - y[to]!, x[on]! - x[to]!);
  return Math.abs(turn(a, b));
}

/** A fan curve bends less than this behind a label, unless it bends as gently as the dip of a stall: radius, share of the frame's width. */
const SHARP_TURN = 0.7;
const TIGHTEST = 0.06;

/** Light so strong that the print may have drowned in it. */
function glareAt({ paper: { columns, rows, cell, colours } }: Sheet, x: number, y: number): boolean {
  const c = Math.min(columns - 1, Math.max(0, Math.floor(x / cell)));
  const r = Math.min(rows - 1, Math.max(0, Math.floor(y / cell)));
  const i = 3 * (r * columns + c);
  return Math.min(colours[i]!, colours[i + 1]!, colours[i + 2]!) > 248;
}

/** Two taps whose curves could not be kept apart. */
export const runTogether = (i: number, j: number): Doubt =>
  doubt(
    'curves-run-together',
    pointer('seeds', j),
    `The curves under tap ${i + 1} and tap ${j + 1} came out on top of each other for a part of their way: please check both.`,
    0.5,
    true,
  );

/** A tap with no line under it, among others that had one. */
export const noLine = (i: number): Doubt =>
  doubt('no-line-under-tap', pointer('seeds', i, 'point_px'), NO_LINE, 0.5, true);

export const NO_LINE = 'No line was found under this tap.';

/** A curve that begins far later than the others of its family. @param flow where it begins, in the axis's unit */
export const beginsLate = (seed: number, flow: number, axis: AxisScale & { unit: string }): Doubt =>
  doubt(
    'curve-begins-late',
    pointer('seeds', seed),
    `This curve begins at ${said(flow, axis)} ${axis.unit}, the others much earlier: please look whether its first part is missing.`,
    0.7,
    true,
  );

/** Curves, and none of them a pressure. */
export const noPressure = (): Doubt =>
  doubt(
    'no-pressure-curve',
    pointer('curves'),
    'No pressure curve was found in this plot: please check what its scales show, or tap one.',
    0.3,
    true,
  );
