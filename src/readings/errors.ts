import { addedFlowDoubts, tubeScaleDoubt, tubeStretch } from './added-doubts.ts';
import type { Bench } from './bench.ts';
import { isOpenEnd } from './methods/orifice-cap.ts';
import { mean } from './methods/pitot-traverse.ts';
import type { Readings, Rig, Row } from './schema.ts';
import { DOUBTS, FLOW_DOUBT, pressureReadingSd, readingStep } from './uncertainty.ts';

/** A rig and one of its rows, as they are or with one error tried out. */
export type Trial = { bench: Bench; row: Row };

/**
 * One source of error: its standard deviation, and what the rig and row would be were it off by `by` (a share, metres, seconds or
 * pascals, as `sd` is). `error` names it; errors of one name in several rows are one and the same.
 */
export type ErrorSource = { error: string; sd: number; shift: (trial: Trial, by: number) => Trial };

const changedBench = (
  error: string,
  sd: number,
  change: (bench: Bench, by: number) => Partial<Bench>,
): ErrorSource => ({
  error,
  sd,
  shift: ({ bench, row }, by) => ({ row, bench: { ...bench, ...change(bench, by) } }),
});

const changedRow = (error: string, sd: number, change: (row: Row, by: number) => Partial<Row>): ErrorSource => ({
  error,
  sd,
  shift: ({ bench, row }, by) => ({ bench, row: { ...row, ...change(row, by) } }),
});

const scaled = (value: number | null | undefined, by: number) => (value == null ? value : value * (1 + by));

/** Errors that all rows of a rig share: they do not average away. `prefix` keeps the rigs of one blower apart. */
export function sharedErrors(rig: Rig, prefix: string): ErrorSource[] {
  const name = (error: string) => `${prefix}/${error}`;
  const nearWithoutLength = rig.method === 'orifice-cap' && rig.tap === 'near' && rig.lengthTapToBlower_m == null;
  const friction = nearWithoutLength ? DOUBTS.frictionNear.sd : DOUBTS.friction.sd;
  return [
    changedBench(name('flow-coefficient'), flowDoubt(rig), (bench, by) => ({
      flowFactor: bench.flowFactor * (1 + by),
    })),
    changedRow(name('manometer-scale'), Math.hypot(DOUBTS.manometerScale.sd, tubeScaleDoubt(rig)), (row, by) => ({
      staticPressure_Pa: row.staticPressure_Pa * (1 + by),
      throatPressure_Pa: scaled(row.throatPressure_Pa, by),
      differentialPressure_Pa: scaled(row.differentialPressure_Pa, by),
      velocityPressures_Pa: row.velocityPressures_Pa?.map((p) => p * (1 + by)),
    })),
    changedBench(name('rig-air-density'), DOUBTS.airDensity.sd, ({ air }, by) => ({
      air: { ...air, density_kg_m3: air.density_kg_m3 * (1 + by) },
    })),
    changedBench(name('pipe-diameter'), DOUBTS.pipeDiameter.sd, ({ pipe }, by) => ({
      pipe: { ...pipe, diameter_m: pipe.diameter_m * (1 + by), area_m2: pipe.area_m2 * (1 + by) ** 2 },
    })),
    changedBench(name('rig-friction'), friction, (bench, by) => ({ frictionFactor: bench.frictionFactor + by })),
    changedBench(name('open-end-loss'), openEndDoubt(rig), (bench, by) => ({ openEndLoss: bench.openEndLoss + by })),
  ];
}

/** Relative standard deviation of the flow that all rows share: as the job says, else the method's own and what the rig adds [-]. */
export function flowDoubt(rig: Rig): number {
  const outletCap = rig.method === 'orifice-cap' && rig.side === 'outlet';
  const usual = outletCap ? DOUBTS.outletCap.sd : FLOW_DOUBT[rig.method].sd;
  return rig.uncertainty?.flowRelative ?? Math.hypot(usual, ...addedFlowDoubts(rig).map((d) => d.sd));
}

const openEndDoubt = (rig: Rig): number => (rig.tap === 'near' ? DOUBTS.openEndNear.sd : DOUBTS.openEnd.sd);

/** Standard deviation of one pressure reading of this rig [Pa], from what the job says or from the steps the rows were read to. */
export function readingDoubt(readings: Readings): (reading_Pa: number) => number {
  const told = readings.rig.uncertainty?.pressure_Pa;
  if (told != null) return () => told;
  const all = readings.rows.flatMap((row) => [
    row.staticPressure_Pa,
    row.throatPressure_Pa ?? 0,
    row.differentialPressure_Pa ?? 0,
    ...(row.velocityPressures_Pa ?? []),
  ]);
  const stretch = tubeStretch(readings.rig);
  const step = stretch * readingStep(all.map((p) => p / stretch));
  return (reading_Pa) => pressureReadingSd(reading_Pa, step, stretch);
}

/** Relative standard deviation of the mean of independent readings, from that of each reading's square root or of itself [-]. */
const relativeOfMean = (values: readonly number[], sdOfEach: (value: number) => number): number => {
  const middle = mean(values);
  return middle === 0 ? 0 : Math.hypot(...values.map(sdOfEach)) / values.length / middle;
};

/** The water tube at the tap, misread in one row. */
export const tapReadingError = (sd_Pa: number): ErrorSource =>
  changedRow('manometer-reading', sd_Pa, (r, by) => ({ staticPressure_Pa: awayFromZero(r.staticPressure_Pa, by) }));

/** Errors of one row alone. */
export function ownErrors(rig: Rig, row: Row, pressureSd: (reading_Pa: number) => number): ErrorSource[] {
  const errors = [tapReadingError(pressureSd(row.staticPressure_Pa))];
  for (const field of ['throatPressure_Pa', 'differentialPressure_Pa'] as const) {
    const reading = row[field];
    if (reading == null) continue;
    errors.push(changedRow(field, pressureSd(reading), (r, by) => ({ [field]: awayFromZero(r[field]!, by) })));
  }
  const pressures = row.velocityPressures_Pa;
  if (pressures != null && pressures.length > 0) {
    const roots = pressures.map((p) => Math.sqrt(Math.max(p, LEAST_Pa)));
    const sd = relativeOfMean(roots, (root) => pressureSd(root * root) / (2 * root));
    const middle = mean(roots);
    // the mean of the roots is moved, not each by its share: readings that all say nothing leave the flow unsure, not certainly none
    errors.push(
      changedRow('velocity-pressures', sd, (r, by) => ({
        velocityPressures_Pa: r.velocityPressures_Pa!.map((p) => Math.max(Math.sqrt(p) + by * middle, 0) ** 2),
      })),
    );
  }
  const velocities = row.velocities_m_s;
  if (velocities != null && velocities.length > 0) {
    const sd = relativeOfMean(velocities, (v) => DOUBTS.vanePoint.sd * v);
    errors.push(
      changedRow('velocities', sd, (r, by) => ({ velocities_m_s: r.velocities_m_s!.map((v) => v * (1 + by)) })),
    );
  }
  if (row.fillTime_s != null) {
    const sd = Math.min(DOUBTS.bagTime.sd, row.fillTime_s / 2);
    errors.push(changedRow('fill-time', sd, (r, by) => ({ fillTime_s: r.fillTime_s! + by })));
  }
  if (
    row.orificeDiameter_m != null &&
    row.orificeDiameter_m > 0 &&
    rig.uncertainty?.flowRelative == null &&
    !isOpenEnd(rig, row)
  ) {
    const sd = Math.min(DOUBTS.hole.sd, row.orificeDiameter_m / 4);
    errors.push(changedRow('hole', sd, (r, by) => ({ orificeDiameter_m: r.orificeDiameter_m! + by })));
  }
  return errors;
}

/** Too small a pressure to take a root of [Pa]. */
const LEAST_Pa = 0.5;

/** An error never turns a reading's sign: suction stays suction. */
const awayFromZero = (reading: number, by: number): number =>
  reading < 0 ? Math.min(reading - by, -LEAST_Pa) : Math.max(reading + by, reading === 0 ? 0 : LEAST_Pa);
