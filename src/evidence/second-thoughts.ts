import { foreseenBy } from '../fan/foreseen.ts';
import { estimateFan, type FanEstimate, type FanEvidence } from '../fan/estimate.ts';
import type { PressureObservation } from '../fan/observation.ts';
import { CURVE_UNKNOWNS, UNKNOWN } from '../fan/unknowns.ts';
import type { Blower, ReadingsEvidence } from '../job/types.ts';
import { checkReadings } from '../readings/index.ts';
import { gatherEvidence, type Gathered, type Place } from './gather.ts';
import type { Row } from './explanation.ts';

/** How likely readings are, whatever their instruments are worth. */
export type Look = {
  /** with instruments as good as they are taken for */
  estimate: FanEstimate;
  /** ln of how likely the readings are, with instruments as good as anybody's [up to a constant] */
  lnChance(): number;
};

/** A row against a curve that was made without it. */
export type Stranger = {
  /** distance in standard deviations: what a bell curve would call as unlikely */
  off: number;
  /** ln of how likely all readings are with this row among them [up to a constant], and were it on the curve */
  lnChance: number;
  lnChanceAtHome: number;
};

/** One test of a blower, ready to be looked at again with something in it changed. */
export type SecondThoughts = {
  asItStands(): Look;
  /** with other readings in this test; null where they cannot be, or lose a row */
  with(readings: ReadingsEvidence): Look | null;
  /** what a curve without this row makes of other rows in its place, each null where it cannot be one; null without such a curve */
  foreseen(row: number, instead: readonly Row[]): (Stranger | null)[] | null;
};

/**
 * Instruments are as good as they are taken for, or worse: errors of the rows' own so many times as large, and how likely. A doubt
 * that was judged by experience is itself known to a third or a half. Source: JCGM 100:2008 (GUM) G.4.2; the tail estimated.
 */
const WORTH = [
  { times: 1, share: 0.7 },
  { times: 2, share: 0.3 },
] as const;

/** No mistake moves readings by more than this [-]; where a changed test leaves no pressure at all, the search still starts at a number. */
const FURTHEST_MOVED = 100;
/** A level known better than this is the evidence's own, and stays where it is [ln]. */
const LOOSE_LEVEL = 0.05;

const coarser = (o: PressureObservation, times: number): PressureObservation => ({
  ...o,
  own: o.own.map((e) => ({ flow_m3_s: e.flow_m3_s * times, value: e.value * times })),
});
const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
const lnSum = (values: readonly number[]) => {
  const top = Math.max(...values);
  return top + Math.log(values.reduce((s, v) => s + Math.exp(v - top), 0));
};

/**
 * @param index which piece of the blower's evidence the test is
 * @param estimate the curve out of all evidence as it stands
 */
export function secondThoughts(
  blower: Blower,
  place: Place,
  index: number,
  readings: ReadingsEvidence,
  estimate: FanEstimate,
): SecondThoughts {
  const path = `${place.path}/evidence/${index}`;
  const mode = estimate.posterior.mode.slice(0, CURVE_UNKNOWNS);
  const own = (o: { path: string }) => o.path.startsWith(`${path}/rows/`);
  let gatheredOnce: Gathered | null = null;
  const gathered = () => (gatheredOnce ??= gatherEvidence(blower, place));
  const gatherWith = (changed: ReadingsEvidence, speed_rpm: number | null = blower.runSpeed_rpm ?? null) =>
    gatherEvidence(
      { ...blower, runSpeed_rpm: speed_rpm, evidence: blower.evidence.map((e, k) => (k === index ? changed : e)) },
      place,
    );
  const withWorth = (evidence: FanEvidence, times: number): FanEvidence => ({
    ...evidence,
    pressures: evidence.pressures.map((o) => (own(o) ? coarser(o, times) : o)),
  });
  const worse = (evidence: FanEvidence, near: FanEstimate) =>
    WORTH.map(({ times, share }) => {
      const found =
        times === 1
          ? near
          : estimateFan(withWorth(evidence, times), false, near.posterior.mode.slice(0, CURVE_UNKNOWNS))!;
      return { times, estimate: found, lnShare: Math.log(share) + found.posterior.lnEvidence };
    });
  const lookAt = (evidence: FanEvidence, found: FanEstimate): Look => {
    let known: number | null = null;
    return {
      estimate: found,
      lnChance: () => (known ??= lnSum(worse(evidence, found).map((w) => w.lnShare))),
    };
  };

  /** Where a curve through changed readings must lie: as much higher and further as they do. */
  const shifted = (to: FanEvidence): Float64Array => {
    const rows = (e: FanEvidence, of: (o: PressureObservation) => number) => median(e.pressures.filter(own).map(of));
    const moved = (of: (o: PressureObservation) => number) => {
      const ratio = Math.max(rows(to, of), 1e-9) / Math.max(rows(gathered().evidence, of), 1e-9);
      return Math.log(Math.min(Math.max(ratio, 1 / FURTHEST_MOVED), FURTHEST_MOVED));
    };
    const near = Float64Array.from(mode);
    const { pressureLevel, flowLevel } = estimate.model.spread;
    if (pressureLevel > LOOSE_LEVEL) near[UNKNOWN.pressureLevel]! += moved((o) => o.pressure_Pa) / pressureLevel;
    if (flowLevel > LOOSE_LEVEL) near[UNKNOWN.flowLevel]! += moved((o) => o.flow_m3_s) / flowLevel;
    return near;
  };
  /** Rows as points of the curve, each null where it cannot be one. */
  const asPoints = (rows: readonly Row[]): (PressureObservation | null)[] => {
    const possible = rows.map((row) => checkReadings({ ...readings, rows: [row] }, path).length === 0);
    const tried = { ...readings, rows: [...readings.rows, ...rows.filter((_, k) => possible[k])] };
    // the run speed stands as it is, whatever the rows that are tried have been turned at
    const { pressures } = gatherWith(tried, gathered().speed_rpm).evidence;
    let next = readings.rows.length;
    return possible.map((can) => {
      if (!can) return null;
      const at = `${path}/rows/${next++}`;
      return pressures.find((o) => o.path === at) ?? null;
    });
  };

  let standing: Look | null = null;
  return {
    asItStands: () => (standing ??= lookAt(gathered().evidence, estimate)),
    with(changed) {
      if (checkReadings(changed, path).length > 0) return null;
      const { evidence } = gatherWith(changed);
      const found = estimateFan(evidence, false, shifted(evidence));
      return found?.posterior.checks.length === estimate.posterior.checks.length ? lookAt(evidence, found) : null;
    },
    foreseen(row, instead) {
      const { evidence } = gathered();
      const other = (o: { path: string }) => o.path !== `${path}/rows/${row}`;
      const rest = {
        ...evidence,
        pressures: evidence.pressures.filter(other),
        powers: evidence.powers.filter(other),
      };
      const without = estimateFan(rest, false, mode);
      if (without === null) return null;
      const fits = worse(rest, without);
      return asPoints(instead).map((point) => {
        if (point === null) return null;
        const seen = fits.map((f) => ({ ...foreseenBy(f.estimate, coarser(point, f.times)), lnShare: f.lnShare }));
        const lnChance = lnSum(seen.map((s) => s.lnShare + s.lnChance));
        const lnChanceAtHome = lnSum(seen.map((s) => s.lnShare + s.lnChance + s.off ** 2 / 2));
        return { lnChance, lnChanceAtHome, off: Math.sqrt(2 * Math.max(lnChanceAtHome - lnChance, 0)) };
      });
    },
  };
}
