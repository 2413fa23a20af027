import type { Air } from '../air/index.ts';
import { fail, ok, pointer, type Result, type Warning } from '../issues/result.ts';
import { benchOf, testAir } from './bench.ts';
import { checkReadings } from './check.ts';
import { electricalOf, type Electrical } from './electrical.ts';
import {
  flowDoubt,
  ownErrors,
  readingDoubt,
  sharedErrors,
  tapReadingError,
  type ErrorSource,
  type Trial,
} from './errors.ts';
import { missingInRig, missingInRow } from './missing.ts';
import { methodNamed, type Method } from './methods/index.ts';
import { fanPressure, tapReading, velocityPressure } from './pressures.ts';
import type { Readings, Row } from './schema.ts';
import { DOUBTS } from './uncertainty.ts';

/**
 * What one error does to a point: change of flow [m3/s] and pressure [Pa] for one standard deviation. The effect of a wrong speed or
 * a wrong air density includes what it does when the point is brought to another speed or air by the fan laws.
 */
export type Effect = { error: string; flow_m3_s: number; pressure_Pa: number };

/** One row as a point of the blower's curve, at the row's own speed and the air of the test. */
export type ReadingPoint = {
  flow_m3_s: number;
  pressure_Pa: number;
  pressureKind: 'static' | 'total';
  speed_rpm: number | null;
  airDensity_kg_m3: number;
  /** JSON Pointer of the row */
  path: string;
  /** errors other rows of the same rig share, by name */
  shared: Effect[];
  /** errors of this row alone */
  own: Effect[];
  /** what one more pascal at the tap would make of it [m3/s and Pa, per Pa] */
  perPascal: Point;
  electrical: Electrical;
};

export type ReducedReadings = {
  points: ReadingPoint[];
  /** air in which the test was made */
  air: Air;
  /** false where another motor or drive turned the wheel */
  sameDrive: boolean;
};

/**
 * Test readings as points of the fan curve, each with its errors kept apart by source.
 * @param readings the evidence as it stands in the job
 * @param site     air of the site, for what the readings don't say of theirs
 * @param path     JSON Pointer of the evidence; also keeps its shared errors apart from those of other rigs
 * @returns points in the order of the rows. Rows that lack something are left out with a warning; impossible ones are issues.
 * Source: formulas in `methods/`; errors by finite differences through the whole chain, JCGM 100:2008 (GUM) 5.2 for shared ones.
 */
export function reduceReadings(readings: Readings, site: Air, path: string): Result<ReducedReadings> {
  const issues = checkReadings(readings, path);
  if (issues.length > 0) return fail(issues);

  const { rig, rows } = readings;
  const method = methodNamed(rig.method);
  const { air, warnings } = testAir(readings, site, path);
  const sameDrive = rig.sameDrive ?? true;
  const bench = benchOf(rig, air);
  const gaps = missingInRig(method, rig, path);
  if (bench === null || gaps.length > 0) return ok({ points: [], air, sameDrive }, [...warnings, ...gaps]);

  warnings.push(...(rows.length > 0 ? (method.rigDoubtful?.(rig, path + pointer('rig')) ?? []) : []));
  const shared = sharedErrors(rig, path);
  const pressureSd = readingDoubt(readings);
  const points: ReadingPoint[] = [];
  for (const [index, row] of rows.entries()) {
    const at = path + pointer('rows', index);
    const left = missingInRow(method, row, at);
    const reason = left.length > 0 ? null : (method.useless?.(bench, row) ?? null);
    if (reason !== null) left.push({ code: 'row-useless', path: at, text: reason });
    if (left.length > 0) {
      warnings.push(...left);
      continue;
    }
    const trial = { bench, row };
    const here = pointOf(method, trial);
    warnings.push(...(method.doubtful?.(bench, row, at) ?? []), ...slowerThanItLooks(trial, here.flow_m3_s, at));
    const effects = (sources: readonly ErrorSource[]) => sources.map((source) => effectOf(method, trial, source));
    const tube_Pa = pressureSd(row.staticPressure_Pa);
    const atTap = effectOf(method, trial, tapReadingError(tube_Pa));
    points.push({
      ...here,
      pressureKind: bench.side === 'inlet' ? 'static' : 'total',
      speed_rpm: row.speed_rpm ?? null,
      airDensity_kg_m3: air.density_kg_m3,
      path: at,
      shared: effects(shared)
        .map((e) => (e.error.endsWith('/rig-air-density') ? broughtToOtherAir(e, here) : e))
        .filter(isFelt),
      own: [...effects(ownErrors(rig, row, pressureSd)), speedEffect(readings, row, here)].filter(isFelt),
      perPascal: { flow_m3_s: atTap.flow_m3_s / tube_Pa, pressure_Pa: atTap.pressure_Pa / tube_Pa },
      electrical: electricalOf(row, rig, path),
    });
  }
  return ok({ points, air, sameDrive }, [
    ...warnings,
    ...mixedSigns(readings, path),
    ...strongSuction(readings, air, path),
  ]);
}

type Point = { flow_m3_s: number; pressure_Pa: number };

function pointOf(method: Method, { bench, row }: Trial): Point {
  const flow_m3_s = method.flow(bench, row);
  return { flow_m3_s, pressure_Pa: (method.pressure ?? fanPressure)(bench, row, flow_m3_s) };
}

function effectOf(method: Method, trial: Trial, { error, sd, shift }: ErrorSource): Effect {
  const more = pointOf(method, shift(trial, sd));
  const less = pointOf(method, shift(trial, -sd));
  return {
    error,
    flow_m3_s: (more.flow_m3_s - less.flow_m3_s) / 2,
    pressure_Pa: (more.pressure_Pa - less.pressure_Pa) / 2,
  };
}

const isFelt = (effect: Effect): boolean => effect.flow_m3_s !== 0 || effect.pressure_Pa !== 0;

/** Pressure goes with density: believing the air heavier than it is makes every pressure too low in other air. */
const broughtToOtherAir = (effect: Effect, point: Point): Effect => ({
  ...effect,
  pressure_Pa: effect.pressure_Pa - DOUBTS.airDensity.sd * point.pressure_Pa,
});

/** Flow goes with speed, pressure with its square: a speed read too high makes both too low at another speed. */
function speedEffect({ rig }: Readings, row: Row, point: Point): Effect {
  const told = rig.uncertainty?.speed_rpm;
  const measured = told != null && row.speed_rpm != null ? told / row.speed_rpm : DOUBTS.speed.sd;
  const share = row.speed_rpm == null ? DOUBTS.speedUnmeasured.sd : measured;
  return { error: 'speed', flow_m3_s: -share * point.flow_m3_s, pressure_Pa: -2 * share * point.pressure_Pa };
}

/** Beyond so many standard deviations of the flow, and this misreading of the tube, it is no chance. */
const SURELY = 2.5;
const EYE_Pa = 10;

/** On the inlet side the tap must read at least the velocity pressure: less is a blunder (one leg, a leak, a wrong pipe). */
function slowerThanItLooks({ bench, row }: Trial, flow_m3_s: number, path: string): Warning[] {
  if (bench.side === 'outlet' || flow_m3_s === 0) return [];
  const needed = velocityPressure(bench, flow_m3_s);
  const read = tapReading(bench, row);
  const sure = needed * (1 - 2 * SURELY * flowDoubt(bench.rig)) - EYE_Pa;
  if (read >= sure) return [];
  return [
    {
      code: 'suction-too-small',
      path: path + pointer('staticPressure_Pa'),
      text: `${Math.round(read)} Pa at the tap is less than the air's own speed makes (${Math.round(needed)} Pa). Was one leg of the tube read, or is a diameter wrong?`,
    },
  ];
}

/** The minus of suction may be left off, but then in all rows. */
function mixedSigns({ rig, rows }: Readings, path: string): Warning[] {
  if ((rig.side ?? 'inlet') !== 'inlet') return [];
  const negative = rows.filter((row) => row.staticPressure_Pa < 0).length;
  const odd = rows.findIndex((row) =>
    negative * 2 >= rows.length ? row.staticPressure_Pa > 0 : row.staticPressure_Pa < 0,
  );
  if (negative === 0 || odd === -1) return [];
  const text = 'Some rows have a minus and some have none. On the inlet side all are taken as suction.';
  return [{ code: 'sign-doubtful', path: path + pointer('rows', odd, 'staticPressure_Pa'), text }];
}

const COMPRESSIBLE_SHARE = 0.05;

function strongSuction({ rows }: Readings, air: Air, path: string): Warning[] {
  const strongest = rows.findIndex((row) => Math.abs(row.staticPressure_Pa) > COMPRESSIBLE_SHARE * air.pressure_Pa);
  if (strongest === -1) return [];
  const text =
    'The pressure is more than a twentieth of the air’s own: the air thins on its way, and the flow is a few percent off.';
  return [{ code: 'compressible', path: path + pointer('rows', strongest, 'staticPressure_Pa'), text }];
}
