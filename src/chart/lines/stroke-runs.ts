import { followStroke } from '../trace/follow.ts';
import { likenessTo, LOOSE_COLOUR, type InkColour, type Likeness } from '../trace/likeness.ts';
import type { SeedStroke } from '../trace/seed-stroke.ts';
import type { Trace } from '../trace/stroke-centre.ts';
import { SOLID } from '../trace/stroke-style.ts';
import type { TracingTable } from '../trace/tracing-table.ts';

const LEAST_RUN_PX = 60;
const RUN_STEPS = 12;
/** Inks closer than this share one picture for a short look. */
const ALIKE = 0.2;

export type StrokeRuns = {
  isLong(seed: SeedStroke): boolean;
  /** Whether the stroke of a seed runs into a line known already, both ways: a marker on it, or its edge. */
  leadsTo(seed: SeedStroke, line: Trace): boolean;
};

/**
 * Tells whether a stroke is seen on from a seed for a good stretch both ways: letters and grain do not get far.
 */
export function strokeRuns(table: TracingTable): StrokeRuns {
  const likes: { colour: InkColour; like: Likeness }[] = [];
  const known = new Map<SeedStroke, Run>();
  const look = (seed: SeedStroke): Run => {
    let own = likes.find((l) => inkApart(l.colour, seed.colour) < ALIKE);
    if (!own) {
      own = { colour: seed.colour, like: likenessTo(table.sheet, table.grid, seed.colour, LOOSE_COLOUR) };
      likes.push(own);
    }
    const options = {
      bounds: table.bounds,
      width: seed.width,
      usual: 0.8,
      longestGap: 40,
      style: SOLID,
      mostSteps: RUN_STEPS,
    };
    let seen = 0;
    const ends = ([1, -1] as const).map((way) => {
      const { steps } = followStroke(own.like, seed, way, options);
      for (const s of steps.slice(1)) seen += 5 * s.quality;
      return steps.at(-1)!;
    });
    return { seen, ends };
  };
  const runOf = (seed: SeedStroke): Run => {
    let run = known.get(seed);
    if (!run) known.set(seed, (run = look(seed)));
    return run;
  };
  return {
    isLong: (seed) => runOf(seed).seen >= LEAST_RUN_PX,
    leadsTo: (seed, line) => runOf(seed).ends.every((end) => isNear(line, end)),
  };
}

type Run = { readonly seen: number; readonly ends: readonly { readonly x: number; readonly y: number }[] };

/** Whether a place lies at most so far from a trace, in rows and in columns; sheet pixels. */
export const isNear = ({ x, y }: Trace, at: { readonly x: number; readonly y: number }, within = NEAR_PX): boolean =>
  x.some((v, i) => Math.abs(v - at.x) < within && Math.abs(y[i]! - at.y) < within);

const inkApart = (a: InkColour, b: InkColour) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) / Math.hypot(...a);

/** Whether a seed lies on a trace and runs along it. Source: definition. */
export function isOn({ x, y }: Trace, seed: SeedStroke): boolean {
  for (let i = 0; i < x.length; i++) {
    if (Math.abs(x[i]! - seed.x) > NEAR_PX || Math.abs(y[i]! - seed.y) > NEAR_PX) continue;
    const a = Math.max(0, i - 3);
    const b = Math.min(x.length - 1, i + 3);
    const off = Math.atan2(y[b]! - y[a]!, x[b]! - x[a]!) - seed.angle;
    if (Math.abs(Math.sin(off)) < ALONG) return true;
  }
  return false;
}

const NEAR_PX = 4;
/** Sine of the largest angle between a stroke and the line it is part of. */
const ALONG = 0.35;
