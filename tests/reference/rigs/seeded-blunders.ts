import type { Invented } from './invent.ts';
import type { Random } from './random.ts';

/** Mistakes people make with a water tube and boards with holes, made on purpose. */
export const BLUNDER_KINDS = [
  'one-leg-row',
  'one-leg-all',
  'decimal',
  'swapped',
  'wrong-hole',
  'tap',
  'unit-mixed',
  'hole-radius',
  'backwards',
  'belt-slips',
  'bag-short',
] as const;
export type BlunderKind = (typeof BLUNDER_KINDS)[number];

type Row = Record<string, number | number[]>;
type Readings = { rig: Record<string, unknown>; rows: Row[] };
/** What a warning must say to name the blunder: one of these codes, at one of these places below the readings. */
export type Blundered = { job: Invented['job']; codes: readonly string[]; places: readonly string[] };
type Made = Omit<Blundered, 'job'> | null;

const TUBE = ['staticPressure_Pa', 'throatPressure_Pa', 'differentialPressure_Pa', 'velocityPressures_Pa'] as const;

/** The find with one blunder in its readings; null where this blunder cannot be made in them. */
export function withBlunder(find: Invented, kind: BlunderKind, random: Random): Blundered | null {
  const job = structuredClone(find.job);
  const readings = (job.blowers[0]!.evidence as unknown[])[0] as Readings;
  const made = BLUNDERS[kind](readings, random, find);
  return made === null ? null : { job, ...made };
}

const times = (row: Row, fields: readonly string[], by: number) => {
  for (const field of fields) {
    const value = row[field];
    if (value === undefined) continue;
    row[field] = Array.isArray(value) ? value.map((v) => v * by) : value * by;
  }
};
const timesTube = (row: Row, by: number) => times(row, TUBE, by);
/** The row as it would be at another speed of the wheel: the holes and the pipe stay. */
const atSpeedShare = (row: Row, share: number) => {
  timesTube(row, share ** 2);
  times(row, ['velocities_m_s'], share);
  times(row, ['fillTime_s'], 1 / share);
};
const anyRow = ({ rows }: Readings, random: Random) => random.integer(0, rows.length - 1);
const inRow = (codes: readonly string[], ...rows: number[]): Made => ({
  // a row that does not fit is named, too, where nobody can know why
  codes: [...codes, 'row-doubtful'],
  places: rows.map((i) => `/rows/${i}`),
});
const inAll = (...codes: string[]): Made => ({ codes, places: ['/rows'] });

const BLUNDERS: Record<BlunderKind, (readings: Readings, random: Random, find: Invented) => Made> = {
  'one-leg-row'(readings, random) {
    const i = anyRow(readings, random);
    timesTube(readings.rows[i]!, 0.5);
    return inRow(['one-leg', 'suction-too-small'], i);
  },
  'one-leg-all'(readings) {
    readings.rows.forEach((r) => timesTube(r, 0.5));
    return inAll('one-leg', 'suction-too-small');
  },
  decimal(readings, random) {
    const i = anyRow(readings, random);
    const fields = TUBE.filter((f) => typeof readings.rows[i]![f] === 'number' && readings.rows[i]![f] !== 0);
    if (fields.length === 0) return null;
    const field = random.pick(fields);
    readings.rows[i]![field] = (readings.rows[i]![field] as number) * random.pick([10, 0.1]);
    return inRow(['decimal-slip', 'suction-too-small'], i);
  },
  swapped(readings, random) {
    if (readings.rows.length < 2) return null;
    const i = random.integer(0, readings.rows.length - 2);
    const [a, b] = [readings.rows[i]!, readings.rows[i + 1]!];
    for (const field of TUBE) if (field in a && field in b) [a[field], b[field]] = [b[field]!, a[field]!];
    return inRow(['swapped-rows', 'suction-too-small'], i, i + 1);
  },
  'wrong-hole'(readings, random) {
    const i = anyRow(readings, random);
    const hole = readings.rows[i]!.orificeDiameter_m as number | undefined;
    const pipe = readings.rig.pipeDiameter_m as number;
    if (readings.rig.method !== 'orifice-cap' || !hole || hole >= 0.95 * pipe) return null;
    const wrong = hole * random.pick([0.7, 0.75, 0.8, 1.2, 1.25, 1.3]);
    if (wrong > 0.89 * pipe) return null;
    readings.rows[i]!.orificeDiameter_m = wrong;
    return inRow(['wrong-hole', 'suction-too-small'], i);
  },
  tap({ rig }, random) {
    if (rig.method !== 'orifice-cap' || rig.side === 'outlet') return null;
    const near = rig.tap === 'near';
    if (near) rig.tap = random.chance(0.5) ? 'far' : undefined;
    else rig.tap = 'near';
    delete rig.lengthToTap_m;
    delete rig.lengthTapToBlower_m;
    return { codes: [near ? 'near-tap-taken-for-far' : 'far-tap-taken-for-near'], places: ['/rig/tap'] };
  },
  'unit-mixed'(readings, random) {
    const by = random.pick([1 / 9.80665, 9.80665, 1 / 100]);
    readings.rows.forEach((r) => timesTube(r, by));
    return inAll('unit-mixed', 'suction-too-small');
  },
  'hole-radius'({ rig, rows }) {
    const holes = rows.flatMap((r) => (r.orificeDiameter_m ? [r.orificeDiameter_m as number] : []));
    if (rig.method !== 'orifice-cap' || holes.length < 2) return null;
    if (holes.some((h) => h > 0.9 * (rig.pipeDiameter_m as number))) return null;
    rows.forEach((r) => times(r, ['orificeDiameter_m'], 0.5));
    return inAll('hole-radius');
  },
  backwards(readings, random, { family }) {
    // a paddle wheel blows as well either way, and a vacuum's motor is not turned round
    if (family === 'radial' || family === 'through-flow-vacuum') return null;
    const share = Math.sqrt(random.uniform(0.2, 0.5));
    readings.rows.forEach((r) => atSpeedShare(r, share));
    // what makes half the pressure may have been read at one leg, and that text asks for the way of turning too
    return inAll('wheel-backwards', 'one-leg', 'suction-too-small');
  },
  'belt-slips'(readings, random, { drive, job }) {
    if (drive.motorPulleyDiameter_m === undefined) return null;
    if ('testedWith' in readings || job.blowers[0]!.runSpeed_rpm !== undefined) return null;
    if (readings.rows.some((r) => r.speed_rpm === undefined)) return null;
    const all = random.chance(0.5);
    const share = random.uniform(0.75, 0.9);
    const slipping = all ? readings.rows.map((_, i) => i) : [anyRow(readings, random)];
    for (const i of slipping) {
      atSpeedShare(readings.rows[i]!, share);
      times(readings.rows[i]!, ['speed_rpm'], share);
    }
    return { codes: ['belt-slipping'], places: all ? ['/rows'] : slipping.map((i) => `/rows/${i}`) };
  },
  'bag-short'({ rig, rows }, random) {
    if (rig.method !== 'bag-fill') return null;
    const quickest = rows.reduce((a, b, i) => (b.fillTime_s! < rows[a]!.fillTime_s! ? i : a), 0);
    if ((rows[quickest]!.fillTime_s as number) < 5) return null;
    const by = random.uniform(1.5, 4) / (rows[quickest]!.fillTime_s as number);
    rig.bagVolume_m3 = (rig.bagVolume_m3 as number) * by;
    // the thumb is late
    rows.forEach((r) => (r.fillTime_s = (r.fillTime_s as number) * by + 0.4));
    return { codes: ['bag-too-fast'], places: [`/rows/${quickest}`] };
  },
};
