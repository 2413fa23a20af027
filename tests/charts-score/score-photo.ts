import type { ChartTruth, CurveTruth } from '../../fixtures/generate/photo/truth.ts';
import type { ChartReading, CurveReading } from '../../src/chart/index.ts';
import { closenessOf, shareOn, type Closeness, type Xy } from './curve-distance.ts';
import { pairUp } from './pair-up.ts';

/** What counts. Shares of full scale, of the curve's length, of the speed. */
export const LIMITS = {
  goodRms: 0.01,
  goodCoverage: 0.9,
  foundRms: 0.1,
  foundCoverage: 0.2,
  speed: 0.005,
  power: 0.03,
};

export type CurveScore = {
  truth: CurveTruth;
  read: CurveReading | null;
  closeness: Closeness | null;
  good: boolean;
  /** null where none is printed */
  speedRight: boolean | null;
};

export type PhotoScore = {
  truth: ChartTruth;
  reading: ChartReading | null;
  /** why there is none, as the server says it */
  refusal: string | null;
  seconds: number;
  curves: CurveScore[];
  /** read curves that are none of the chart's */
  strays: CurveReading[];
  /** every primary pressure curve is found and good */
  good: boolean;
  flagged: boolean;
  /** what would mislead if it came without a flag */
  dangers: string[];
  verdict: 'good' | 'flagged' | 'wrong';
};

const isPressure = (quantity: string) => quantity === 'static_pressure' || quantity === 'total_pressure';

/** Judges one reading. A refusal in words counts as flagged; a fault of the server as wrong. */
export function scorePhoto(
  truth: ChartTruth,
  reading: ChartReading | null,
  refusal: PhotoScore['refusal'],
  refused: boolean,
  seconds: number,
): PhotoScore {
  const read = reading?.curves.filter((c) => c.points.length > 0) ?? [];
  const { axes } = truth.chart;
  const shareX = shareOn(axes.find((a) => a.id === 'x')!);
  const placed = (points: readonly Xy[], yAxis: string, si: boolean): Xy[] => {
    const y = axes.find((a) => a.id === yAxis)!;
    const [fx, fy] = si ? [1, 1] : [axes[0]!.siFactor, y.siFactor];
    const shareY = shareOn(y);
    const out = points.map(([q, v]): Xy => [shareX(q * fx), shareY(v * fy)]);
    return si ? out.filter((p) => p.every(Number.isFinite)).sort((a, b) => a[0] - b[0]) : out;
  };
  const close = truth.chart.curves.map((c) => {
    const line = placed(c.points, c.yAxis, false);
    return read.map((r) => (r.quantity === c.quantity ? closenessOf(placed(r.points, c.yAxis, true), line) : null));
  });
  const cost = close.map((row) => row.map((c) => (c ? Math.min(100 * c.rms + 20 * (1 - c.coverage), 900) : Infinity)));
  const partner = pairUp(cost, 1000);
  const used = new Set<number>();
  const curves = truth.chart.curves.map((curve, i): CurveScore => {
    const j = partner[i] ?? null;
    const closeness = j === null ? null : (close[i]![j] ?? null);
    const found = closeness !== null && closeness.rms <= LIMITS.foundRms && closeness.coverage >= LIMITS.foundCoverage;
    if (!found)
      return {
        truth: curve,
        read: null,
        closeness: null,
        good: false,
        speedRight: curve.speed_rpm === null ? null : false,
      };
    used.add(j!);
    return {
      truth: curve,
      read: read[j!]!,
      closeness,
      good: closeness.rms <= LIMITS.goodRms && closeness.coverage >= LIMITS.goodCoverage,
      speedRight: curve.speed_rpm === null ? null : isNear(read[j!]!.speed_rpm, curve.speed_rpm),
    };
  });
  const strays = read.filter((_, j) => !used.has(j));
  const primary = curves.filter((c) => c.truth.primary);
  const good = primary.length > 0 && primary.every((c) => c.good);
  const flagged = refused || reading?.confidence.needsReview === true;
  const dangers = [
    ...curves.filter(misreadSpeed).map((c) => `speed of ${c.truth.id}`),
    ...curves
      .filter((c) => c.truth.quantity === 'shaft_power' && (c.closeness?.rms ?? 0) > LIMITS.power)
      .map((c) => `power ${c.truth.id} off`),
    ...strays.filter((c) => isPressure(c.quantity)).map(() => 'a pressure curve that is none'),
  ];
  const verdict = flagged ? (good ? 'good' : 'flagged') : good && !dangers.length ? 'good' : 'wrong';
  return { truth, reading, refusal, seconds, curves, strays, good, flagged, dangers, verdict };
}

const isNear = (read: number | null, printed: number) =>
  read !== null && Math.abs(read - printed) <= LIMITS.speed * printed;

/** A speed read that is not the printed one; none read is no mistake. */
const misreadSpeed = ({ truth, read }: CurveScore) =>
  truth.speed_rpm !== null && read !== null && read.speed_rpm !== null && !isNear(read.speed_rpm, truth.speed_rpm);
