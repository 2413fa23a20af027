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
  key: { plan: string; text: string }[];
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
    text: texts.others[i] ?? '',
    width: wide(texts.others[i] ?? '', font),
    curve: curvePx(frame, other.curve),
  }));
  const chosenCurves = [model.clean, model.loaded].flatMap((curve) => (curve ? [curvePx(frame, curve)] : []));
  const { placed, left } = placeNames(named, [...chosenCurves, curvePx(frame, model.fan)], [blowerBox], area, font);
  const key = named.filter((one) => left.includes(one.id));
  const block = {
    lines: texts.chosen.length + key.length,
    width: Math.max(0, ...texts.chosen.map((line) => wide(line, font))),
    keyWidth: Math.max(0, ...key.map((one) => SAMPLE + one.width)),
  };
  const chosen = cornerSpot(model, frame, block, blower.y);
  const room = Math.max(60, chosen.room - SAMPLE);
  return {
    others: placed,
    blower,
    key: key.map((one) => ({ plan: one.id, text: shortened(one.text, room, font) })),
    chosen,
  };
}

/** A name cut to a width, with an ellipsis. */
function shortened(text: string, width: number, font: number): string {
  if (wide(text, font) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && wide(`${letters.join('')}…`, font) > width) letters.pop();
  return `${letters.join('').trimEnd()}…`;
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

type Block = { lines: number; width: number; keyWidth: number };
type Corner = Lettering['chosen'] & { room: number };

/**
 * The chosen plan's name and the key: in the empty corner right below the duct curves, right of the post, long names in the
 * key cut to the room there; where even the plan's name is too wide, in the empty field between pressure axis and curves.
 */
function cornerSpot(model: PlotModel, frame: PlotFrame, block: Block, blowerY: number): Corner {
  const { area, font } = frame;
  const low = area.bottom - Math.max(block.lines * font * frame.leading + 2, (area.bottom - area.top) * 0.24) + font;
  const curve = model.loaded ?? model.clean;
  const px = curve && curvePx(frame, curve);
  const at = px ? px.y.findIndex((y) => y <= low - font * 1.9) : -1;
  const leader = px && at > 0 ? { x: px.x[at]!, y: px.y[at]! } : null;
  const post = model.need === null ? 0 : toPx(frame.flow, model.need);
  const top = low - font * 1.1;
  const reached = ductsPx(model, frame).map((duct) => duct.x[duct.y.findIndex((y) => y <= top)] ?? 0);
  const beside = Math.max((leader?.x ?? area.left) + 20, ...reached.map((x) => x + 10));
  const clear = Math.max(beside, post > beside - 40 ? post + 12 : 0);
  if (clear + Math.max(block.width, Math.min(block.keyWidth, LEAST_KEY)) <= area.right)
    return { x: clear, y: low, leader, room: area.right - clear };
  const field = fieldSpot(model, frame, block, blowerY);
  if (field) return field;
  const x = Math.max(
    area.left + 8,
    Math.min(beside, area.right - Math.max(block.width, Math.min(block.keyWidth, LEAST_KEY))),
  );
  return { x, y: low, leader: leader && leader.x < x - 8 ? leader : null, room: area.right - x };
}

/** A key narrower than this would say nothing [px]. */
const LEAST_KEY = 110;

const ductsPx = (model: PlotModel, frame: PlotFrame): Curve[] =>
  [model.clean, model.loaded, ...model.others.map((other) => other.curve)].flatMap((curve) =>
    curve ? [curvePx(frame, curve)] : [],
  );

/** Between the pressure axis and the steepest curve, under the band. */
function fieldSpot(model: PlotModel, frame: PlotFrame, block: Block, blowerY: number): Corner | null {
  const { area, font } = frame;
  const x = area.left + 12;
  const width = Math.max(block.width, block.keyWidth);
  const right = x + width + 12;
  const band = curvePx(frame, { x: model.fan.x, y: model.fan.low });
  const roof = Math.max(blowerY, ...[x, (x + right) / 2, right].flatMap((at) => readCurve(band, at) ?? []));
  const y = roof + font * 1.9;
  const floor = y + (block.lines - 1) * font * frame.leading + 4;
  if (floor > area.bottom - 12 || ductsPx(model, frame).some((curve) => (readCurve(curve, right) ?? Infinity) < floor))
    return null;
  const chosen = curvePx(frame, (model.loaded ?? model.clean)!);
  const at = chosen.y.findIndex((py) => py <= y - font * 0.5);
  return { x, y, leader: at > 0 ? { x: chosen.x[at]!, y: chosen.y[at]! } : null, room: width };
}
