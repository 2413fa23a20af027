import type { Running } from './true-rig.ts';

export type TruePoint = { flow_m3_s: number; total_Pa: number; shaftPower_W: number };

/** Stable meetings of fan and ducts, the least flow first. */
export function meetingPoints(running: (q: number) => Running, loss: (q: number) => number, free: number): TruePoint[] {
  const found: TruePoint[] = [];
  const excess = (q: number) => running(q).total_Pa - loss(q);
  const top = 1.6 * free;
  let before = excess(0);
  for (let i = 1; i <= 60; i++) {
    let [a, b] = [(top * (i - 1)) / 60, (top * i) / 60];
    const here = excess(b);
    if (before > 0 && here <= 0) {
      for (let k = 0; k < 26; k++) {
        const middle = (a + b) / 2;
        if (excess(middle) > 0) a = middle;
        else b = middle;
      }
      const state = running(a);
      found.push({ flow_m3_s: a, total_Pa: state.total_Pa, shaftPower_W: state.wheelPower_W });
    }
    before = here;
  }
  return found;
}
