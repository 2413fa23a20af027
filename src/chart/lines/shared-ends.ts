import type { Trace } from '../trace/stroke-centre.ts';

const ON_PX = 4;
/** Points of a trace (2.5 px apart) that show which way it runs. */
const LOOK = 12;
const MOST_TURN = 0.2;
/** A line shares no more than this of another one's way. */
const MOST_SHARED = 0.45;

/**
 * Lines that begin or end as one, total and static pressure at no flow for instance, are traced apart only from where
 * they part: one that stops on another line, and along it, goes on with that one to its end.
 * @returns the traces, longer where they share an end
 */
export function withSharedEnds(traces: readonly Trace[]): Trace[] {
  return traces.map((trace, i) => {
    let out = trace;
    for (const end of [0, 1] as const) {
      const rest = traces
        .filter((_, j) => j !== i)
        .map((other) => restOf(other, out, end))
        .filter((r) => r !== null)
        .sort((a, b) => b.x.length - a.x.length)[0];
      if (rest) out = end ? joined(out, rest) : joined(rest, out);
    }
    return out;
  });
}

/** What another line has beyond the end of a trace, if the trace stops on it and runs along it. */
function restOf(other: Trace, trace: Trace, end: 0 | 1): Trace | null {
  const n = trace.x.length;
  if (n < 2 * LOOK || other.x.length < 2 * LOOK) return null;
  const [x, y] = [trace.x.at(end ? -1 : 0)!, trace.y.at(end ? -1 : 0)!];
  let at = 0;
  for (let k = 1; k < other.x.length; k++) if (gap(other, k, x, y) < gap(other, at, x, y)) at = k;
  if (gap(other, at, x, y) > ON_PX) return null;
  const length = end ? other.x.length - 1 - at : at;
  if (length < LOOK / 2 || length > MOST_SHARED * other.x.length) return null;
  const back = end ? n - 1 - LOOK : LOOK;
  const own = Math.atan2(y - trace.y[back]!, x - trace.x[back]!);
  const far = end ? Math.min(other.x.length - 1, at + LOOK) : Math.max(0, at - LOOK);
  const its = Math.atan2(other.y[far]! - other.y[at]!, other.x[far]! - other.x[at]!);
  if (Math.abs(Math.atan2(Math.sin(own - its), Math.cos(own - its))) > MOST_TURN) return null;
  return end ? part(other, at + 1, other.x.length) : part(other, 0, at);
}

const gap = ({ x, y }: Trace, k: number, px: number, py: number) => Math.hypot(x[k]! - px, y[k]! - py);

const part = ({ x, y, seen }: Trace, from: number, to: number): Trace => ({
  x: x.slice(from, to),
  y: y.slice(from, to),
  seen: seen.slice(from, to),
});

const joined = (a: Trace, b: Trace): Trace => {
  const of = (key: keyof Trace) => Float64Array.from([...a[key], ...b[key]]);
  return { x: of('x'), y: of('y'), seen: of('seen') };
};
