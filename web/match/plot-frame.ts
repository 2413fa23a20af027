import { toPx } from './axis.ts';
import type { Axis } from './axis.ts';
import type { Area } from './place-names.ts';
import type { Curve, PlotModel } from './plot-model.ts';

/** Where everything of the plot stands, in px of its box: one flow axis under pressure, bars and motor strip. */
export type PlotFrame = {
  width: number;
  height: number;
  flow: Axis;
  pressure: Axis;
  motor: Axis | null;
  area: Area;
  barsTop: number;
  barStep: number;
  font: number;
  /** from one line of lettering to the next, in font sizes: a tall script needs more */
  leading: number;
};

export const barY = (frame: PlotFrame, index: number): number => frame.barsTop + index * frame.barStep;

/** Lays the plot out for a width; a phone gets a motor strip high enough to read. */
export function plotFrame(model: PlotModel, width: number, tallScript = false): PlotFrame {
  const roomy = width > 430;
  const left = 40;
  const right = width - 10;
  const top = 28;
  const bottom = top + (roomy ? 300 : 232);
  const barsTop = bottom + 12;
  const barStep = tallScript ? 22 : 17;
  const barsBottom = barsTop + Math.max(1, model.bars.length) * barStep + (model.need === null ? 2 : barStep + 1);
  const motorTop = barsBottom + 12;
  const motorBottom = model.motor ? motorTop + (roomy ? 96 : 92) : barsBottom;
  return {
    width,
    height: motorBottom + 24,
    flow: { max: model.flowMax, from: left, to: right },
    pressure: { max: model.pressureMax, from: bottom, to: top },
    motor: model.motor && { max: model.motor.max, from: motorBottom, to: motorTop },
    area: { left, top, right, bottom },
    barsTop,
    barStep,
    leading: tallScript ? 1.75 : 1.3,
    font: roomy ? 13 : 12.5,
  };
}

export const curvePx = (frame: PlotFrame, curve: Curve): Curve => ({
  x: curve.x.map((x) => toPx(frame.flow, x)),
  y: curve.y.map((y) => toPx(frame.pressure, y)),
});

export const polyline = ({ x, y }: Curve): string =>
  x.map((at, i) => `${i === 0 ? 'M' : 'L'}${at.toFixed(1)} ${y[i]!.toFixed(1)}`).join('');

/** The area between two curves as one closed path: where the point walks as the filters fill. */
export function wedge(frame: PlotFrame, a: Curve, b: Curve): string {
  const back = curvePx(frame, b);
  return `${polyline(curvePx(frame, a))}${polyline({ x: back.x.toReversed(), y: back.y.toReversed() }).replace('M', 'L')}Z`;
}

/** Short strokes on the forbidden side of a standing line. */
export function postHatch(x: number, from: number, to: number): string {
  let d = '';
  for (let y = from + 4; y < to - 2; y += 8) d += `M${x} ${y}l-7 6`;
  return d;
}

/** Short strokes above a lying limit. */
export function limitHatch(y: number, from: number, to: number): string {
  let d = '';
  for (let x = from + 8; x < to; x += 9) d += `M${x} ${y}l5 -6`;
  return d;
}
