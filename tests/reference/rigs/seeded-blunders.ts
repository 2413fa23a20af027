import type { Invented } from './invent.ts';
import type { Random } from './random.ts';

/** Mistakes people make with a water tube and boards with holes, made on purpose. */
export const BLUNDER_KINDS = ['one-leg-row', 'one-leg-all', 'decimal', 'swapped', 'wrong-hole', 'tap'] as const;
export type BlunderKind = (typeof BLUNDER_KINDS)[number];

type Row = Record<string, number | number[]>;
type Readings = { rig: Record<string, unknown>; rows: Row[] };
/** Places, below the readings, one of which a warning should name. */
export type Blundered = { job: Invented['job']; places: string[] };

const TUBE = ['staticPressure_Pa', 'throatPressure_Pa', 'differentialPressure_Pa', 'velocityPressures_Pa'] as const;

/** The find with one blunder in its readings; null where this blunder cannot be made in them. */
export function withBlunder(find: Invented, kind: BlunderKind, random: Random): Blundered | null {
  const job = structuredClone(find.job);
  const readings = (job.blowers[0]!.evidence as unknown[])[0] as Readings;
  const places = BLUNDERS[kind](readings, random);
  return places === null ? null : { job, places };
}

const timesTube = (row: Row, by: number) => {
  for (const field of TUBE) {
    const value = row[field];
    if (value === undefined) continue;
    row[field] = Array.isArray(value) ? value.map((v) => v * by) : value * by;
  }
};
/** A row with air in it, whose pressure is large enough for a mistake to matter. */
const anyRow = ({ rows }: Readings, random: Random) => random.integer(0, rows.length - 1);
const row = (i: number) => `/rows/${i}`;

const BLUNDERS: Record<BlunderKind, (readings: Readings, random: Random) => string[] | null> = {
  'one-leg-row'(readings, random) {
    const i = anyRow(readings, random);
    timesTube(readings.rows[i]!, 0.5);
    return [row(i)];
  },
  'one-leg-all'(readings) {
    readings.rows.forEach((r) => timesTube(r, 0.5));
    return ['/rows'];
  },
  decimal(readings, random) {
    const i = anyRow(readings, random);
    const fields = TUBE.filter((f) => typeof readings.rows[i]![f] === 'number' && readings.rows[i]![f] !== 0);
    if (fields.length === 0) return null;
    const field = random.pick(fields);
    readings.rows[i]![field] = (readings.rows[i]![field] as number) * random.pick([10, 0.1]);
    return [row(i)];
  },
  swapped(readings, random) {
    if (readings.rows.length < 2) return null;
    const i = random.integer(0, readings.rows.length - 2);
    const [a, b] = [readings.rows[i]!, readings.rows[i + 1]!];
    for (const field of TUBE) if (field in a && field in b) [a[field], b[field]] = [b[field]!, a[field]!];
    return [row(i), row(i + 1)];
  },
  'wrong-hole'(readings, random) {
    const i = anyRow(readings, random);
    const hole = readings.rows[i]!.orificeDiameter_m as number | undefined;
    const pipe = readings.rig.pipeDiameter_m as number;
    if (readings.rig.method !== 'orifice-cap' || !hole || hole >= 0.95 * pipe) return null;
    const wrong = hole * random.pick([0.7, 0.75, 0.8, 1.2, 1.25, 1.3]);
    if (wrong > 0.89 * pipe) return null;
    readings.rows[i]!.orificeDiameter_m = wrong;
    return [row(i)];
  },
  tap(readings, random) {
    const { rig } = readings;
    if (rig.method !== 'orifice-cap' || rig.side === 'outlet') return null;
    if (rig.tap === 'near') rig.tap = random.chance(0.5) ? 'far' : undefined;
    else rig.tap = 'near';
    delete rig.lengthToTap_m;
    delete rig.lengthTapToBlower_m;
    return ['/rig/tap'];
  },
};
