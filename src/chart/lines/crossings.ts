import { bridgeGaps } from '../trace/bridge.ts';
import type { TracedCurve } from '../trace/trace.ts';
import { exchange, meetings } from '../trace/untangle.ts';

/** Points at a joint that are bridged smoothly. */
const SMOOTHED = 5;
const MOST_MEETINGS = 4;
/** A marker on a crossing pushes the two ways a little apart. */
const NEAR_PX = 8;

/** Both ways on exchanged at each place where two ways meet: what they would be if each had taken the other turning. */
export function exchanged(a: TracedCurve, b: TracedCurve): [TracedCurve, TracedCurve][] {
  return meetings(a, b, NEAR_PX)
    .slice(0, MOST_MEETINGS)
    .map((m) => {
      const [p, q] = exchange(a, b, m);
      return [smoothed(p, (m.a[0] + m.a[1]) >> 1), smoothed(q, (m.b[0] + m.b[1]) >> 1)];
    });
}

function smoothed(curve: TracedCurve, at: number): TracedCurve {
  const x = curve.trace.x.slice();
  const y = curve.trace.y.slice();
  const hidden = new Uint8Array(x.length);
  hidden.fill(1, Math.max(0, at - SMOOTHED), Math.min(x.length, at + SMOOTHED));
  bridgeGaps(x, y, hidden);
  return { ...curve, trace: { x, y, seen: curve.trace.seen } };
}
