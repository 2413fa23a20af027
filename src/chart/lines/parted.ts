import { turn } from '../trace/foresee.ts';
import type { InkColour } from '../trace/likeness.ts';
import type { Sheet } from '../sheet.ts';
import type { TracedCurve } from '../trace/trace.ts';
import type { Trace } from '../trace/stroke-centre.ts';

/** Points of a trace (2.5 px apart) left out on both sides of the place where it is parted: they belong to neither. */
const LEFT_OUT = 2;

/** Points before and after a place whose directions are compared, and how far from a rough place the sharpest turn may be. */
const ARM = 9;
const FAR = 32;
/** Lines that only bend turn less over so short a way, radians. */
const SHARP_TURN = 0.3;

/**
 * A traced line in two, parted near one of its points: at the sharpest turn there, if there is any. Where each part was
 * cut off, print goes on.
 */
export function parted(sheet: Sheet, curve: TracedCurve, near: number): TracedCurve[] {
  const { trace, looseEnds, doubts } = curve;
  const at = sharpestTurn(trace, near);
  const ends = [
    [0, at - LEFT_OUT],
    [at + LEFT_OUT, trace.x.length],
  ] as const;
  return ends
    .filter(([from, to]) => to - from > 2 * LEFT_OUT)
    .map(([from, to]) => {
      const part = stretch(trace, from, to);
      const [x0, x1] = [part.x[0]!, part.x.at(-1)!];
      const cut = from === 0 ? to - 1 : from;
      const isOn = ({ x }: { readonly x: number }) => x >= x0 - LEFT_OUT && x <= x1 + LEFT_OUT;
      return {
        ...curve,
        trace: part,
        colour: inkAlong(sheet, part) ?? curve.colour,
        doubts: doubts.filter(isOn),
        looseEnds: [...looseEnds.filter(isOn), { x: trace.x[cut]!, y: trace.y[cut]! }],
      };
    });
}

function sharpestTurn({ x, y }: Trace, near: number): number {
  let best = { at: near, turn: SHARP_TURN };
  for (let p = Math.max(ARM, near - FAR); p <= Math.min(x.length - 1 - ARM, near + FAR); p++) {
    const before = Math.atan2(y[p]! - y[p - ARM]!, x[p]! - x[p - ARM]!);
    const after = Math.atan2(y[p + ARM]! - y[p]!, x[p + ARM]! - x[p]!);
    const sharp = Math.abs(turn(before, after));
    if (sharp > best.turn) best = { at: p, turn: sharp };
  }
  return best.at;
}

const stretch = ({ x, y, seen }: Trace, from: number, to: number): Trace => ({
  x: x.slice(from, to),
  y: y.slice(from, to),
  seen: seen.slice(from, to),
});

/** The part may be printed in another ink than the line it was traced with: the mean of its clearer points. */
function inkAlong({ width, height, ink, darkness }: Sheet, { x, y }: Trace): InkColour | null {
  const places = Array.from(x, (v, i) => Math.round(y[i]!) * width + Math.round(v))
    .filter((i) => i >= 0 && i < width * height)
    .sort((a, b) => darkness[b]! - darkness[a]!);
  const used = places.slice(Math.floor(0.1 * places.length), Math.ceil(0.6 * places.length));
  if (!used.length) return null;
  const mean = (c: 0 | 1 | 2) => Math.max(1, used.reduce((s, i) => s + ink[3 * i + c]!, 0) / used.length);
  return [mean(0), mean(1), mean(2)];
}
