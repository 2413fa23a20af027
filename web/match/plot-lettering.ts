import { toPx } from './axis.ts';
import { placeNames } from './place-names.ts';
import type { NameBox, PlacedName } from './place-names.ts';
import { curvePx } from './plot-frame.ts';
import type { PlotFrame } from './plot-frame.ts';
import { readCurve } from './plot-model.ts';
import type { Curve, PlotModel } from './plot-model.ts';

/** Names on the plot, placed so that no two lie on each other nor on a curve they do not belong to. */
export type Lettering = {
  others: PlacedName[];
  blower: { x: number; y: number };
  /** the chosen plan in the free corner below the curves, with a leader; under it the key of curves too close to be named at their ends */
  chosen: { x: number; y: number; leader: { x: number; y: number } | null };
  key: string[];
};

/** Width of lettering before a browser has measured it. */
export const wide = (text: string, font: number): number => [...text].length * font * 0.57;

/** Room a line sample takes in the key [px]. */
export const SAMPLE = 30;

export function letterPlot(
  model: PlotModel,
  frame: PlotFrame,
  texts: { blower: string; chosen: string[]; others: string[] },
): Lettering {
  const { font, area } = frame;
  const blower = blowerSpot(model, frame, wide(texts.blower, font));
  const blowerBox: NameBox = {
    left: blower.x,
    right: blower.x + wide(texts.blower, font),
    top: blower.y - font,
    bottom: blower.y + 4,
  };
  const named = model.others.map((other, i) => ({
    id: other.plan,
    width: wide(texts.others[i] ?? '', font),
    curve: curvePx(frame, other.curve),
  }));
  const chosenCurves = [model.clean, model.loaded].flatMap((curve) => (curve ? [curvePx(frame, curve)] : []));
  const fan = curvePx(frame, model.fan);
  const { placed, left } = placeNames(named, [...chosenCurves, fan], [blowerBox], area, font);
  const key = model.others.filter((other) => left.includes(other.plan)).map((other) => other.plan);
  const keyWidth = Math.max(
    0,
    ...key.map(
      (plan) => SAMPLE + wide(texts.others[model.others.findIndex((other) => other.plan === plan)] ?? '', font),
    ),
  );
  return {
    others: placed,
    blower,
    key,
    chosen: cornerSpot(model, frame, texts.chosen, key.length, keyWidth, blower.y),
  };
}

/** Under the band where no duct curve runs there, else above it. */
function blowerSpot(model: PlotModel, frame: PlotFrame, width: number): { x: number; y: number } {
  const { area, font } = frame;
  const x = area.left + 8;
  const span = (curve: Curve): number[] =>
    [0, 0.25, 0.5, 0.75, 1].flatMap((t) => readCurve(curve, x + t * width) ?? []);
  const below = Math.max(...span(curvePx(frame, { x: model.fan.x, y: model.fan.low })), area.top) + font + 5;
  const ducts = [model.clean, model.loaded, ...model.others.map((other) => other.curve)].flatMap((curve) =>
    curve ? span(curvePx(frame, curve)) : [],
  );
  if (below < area.bottom - 8 && !ducts.some((y) => y < below + 6)) return { x, y: below };
  const above = Math.min(...span(curvePx(frame, { x: model.fan.x, y: model.fan.high }))) - 7;
  return { x, y: Math.max(area.top + font, above) };
}

type Block = { width: number; height: number; leadY: number };

/**
 * The chosen plan's name and the key: in the empty corner right below the duct curves, right of the post; where that is too
 * narrow, in the empty field between pressure axis and curves; else right below in spite of the post.
 */
function cornerSpot(
  model: PlotModel,
  frame: PlotFrame,
  lines: string[],
  keyLines: number,
  keyWidth: number,
  blowerY: number,
): Lettering['chosen'] {
  const { area, font } = frame;
  const block: Block = {
    width: Math.max(keyWidth, ...lines.map((line) => wide(line, font))),
    height: (lines.length + keyLines) * font * 1.3,
    leadY: font * 0.5,
  };
  const low = area.bottom - Math.max(block.height + 2, (area.bottom - area.top) * 0.24) + font;
  const curve = model.loaded ?? model.clean;
  const px = curve && curvePx(frame, curve);
  const at = px ? px.y.findIndex((y) => y <= low - font * 1.9) : -1;
  const leader = px && at > 0 ? { x: px.x[at]!, y: px.y[at]! } : null;
  const post = model.need === null ? 0 : toPx(frame.flow, model.need);
  const top = low - font * 1.1;
  const reached = ductsPx(model, frame).map((curve) => curve.x[curve.y.findIndex((y) => y <= top)] ?? 0);
  const beside = Math.max((leader?.x ?? area.left) + 20, ...reached.map((x) => x + 10));
  const clear = Math.max(beside, post > beside - 40 ? post + 12 : 0);
  if (clear + block.width <= area.right) return { x: clear, y: low, leader };
  return fieldSpot(model, frame, block, blowerY) ?? { x: Math.min(beside, area.right - block.width), y: low, leader };
}

const ductsPx = (model: PlotModel, frame: PlotFrame): Curve[] =>
  [model.clean, model.loaded, ...model.others.map((other) => other.curve)].flatMap((curve) =>
    curve ? [curvePx(frame, curve)] : [],
  );

/** Between the pressure axis and the steepest curve, under the band. */
function fieldSpot(model: PlotModel, frame: PlotFrame, block: Block, blowerY: number): Lettering['chosen'] | null {
  const { area, font } = frame;
  const x = area.left + 12;
  const right = x + block.width + 12;
  const band = curvePx(frame, { x: model.fan.x, y: model.fan.low });
  const roof = Math.max(blowerY, ...[x, (x + right) / 2, right].flatMap((at) => readCurve(band, at) ?? []));
  const y = roof + font * 1.9;
  const floor = y + block.height - font;
  const ducts = ductsPx(model, frame);
  if (floor > area.bottom - 12 || ducts.some((curve) => (readCurve(curve, right) ?? Infinity) < floor)) return null;
  const chosen = curvePx(frame, (model.loaded ?? model.clean)!);
  const at = chosen.y.findIndex((py) => py <= y - block.leadY);
  return { x, y, leader: at > 0 ? { x: chosen.x[at]!, y: chosen.y[at]! } : null };
}
