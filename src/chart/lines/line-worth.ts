import { netInk } from '../trace/seed-stroke.ts';
import type { TracedCurve } from '../trace/trace.ts';
import type { TracingTable } from '../trace/tracing-table.ts';

/** What a traced line looks like as a whole; lengths in sheet pixels. */
export type LineWorth = {
  readonly length: number;
  /** extent to the right and upwards */
  readonly across: number;
  readonly up: number;
  /** share of its way on which it was seen, 0..1 */
  readonly seen: number;
  /** ink of its stroke above what lies beside it, where it is printed, 0..255 */
  readonly strength: number;
  /** share of its way without ink: about 0 for a solid line, 0.3 and more for dashes */
  readonly bare: number;
  /** how far it wriggles about a smooth course, root mean square */
  readonly roughness: number;
  /** farthest from the straight line between its ends */
  readonly bow: number;
};

/** Points of a trace (2.5 px apart) a smooth course is taken over. */
const SMOOTH = 16;

/** Measures a traced line. */
export function worthOf({ sheet, grid }: TracingTable, { trace, width }: TracedCurve): LineWorth {
  const { x, y, seen } = trace;
  const n = x.length;
  let length = 0;
  for (let i = 1; i < n; i++) length += Math.hypot(x[i]! - x[i - 1]!, y[i]! - y[i - 1]!);
  const inks: number[] = [];
  const away = width / 2 + 3;
  for (let i = 2; i + 2 < n; i += 2) {
    const dx = x[i + 2]! - x[i - 2]!;
    const dy = y[i + 2]! - y[i - 2]!;
    const l = Math.hypot(dx, dy) || 1;
    const at = (o: number) => netInk(sheet, grid, x[i]! - (dy / l) * o, y[i]! + (dx / l) * o);
    inks.push(Math.max(at(0), at(-1), at(1)) - 0.5 * (at(away) + at(-away)));
  }
  inks.sort((a, b) => a - b);
  const strength = inks[Math.floor(0.7 * inks.length)] ?? 0;
  let square = 0;
  let looks = 0;
  for (let i = SMOOTH; i + SMOOTH < n; i += 2) {
    const bent = (v: Float64Array) =>
      (-v[i - SMOOTH]! + 4 * v[i - SMOOTH / 2]! - 6 * v[i]! + 4 * v[i + SMOOTH / 2]! - v[i + SMOOTH]!) / 16;
    square += bent(x) ** 2 + bent(y) ** 2;
    looks++;
  }
  const ex = x[n - 1]! - x[0]!;
  const ey = y[n - 1]! - y[0]!;
  const chord = Math.hypot(ex, ey) || 1;
  let bow = 0;
  for (let i = 0; i < n; i++) bow = Math.max(bow, Math.abs((x[i]! - x[0]!) * ey - (y[i]! - y[0]!) * ex) / chord);
  return {
    length,
    across: Math.abs(ex),
    up: Math.max(...y) - Math.min(...y),
    seen: seen.reduce((s, v) => s + Math.min(1, v / 0.5), 0) / n,
    strength,
    bare: inks.filter((v) => v < 0.4 * strength).length / Math.max(1, inks.length),
    roughness: looks ? Math.sqrt(square / looks) : 0,
    bow,
  };
}
