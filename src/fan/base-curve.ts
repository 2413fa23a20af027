import { shapePreservingCubic, type Interpolant } from '../numeric/interpolate.ts';
import type { FamilyShape } from './families.ts';

/**
 * The curve that evidence is measured against, at run speed and in site air: the chart where there is one,
 * else the family's typical shape. Pressure is in units of `pressureScale_Pa` over x = flow / `flowScale_m3_s`,
 * x = 1 being free delivery.
 */
export type BaseCurve = {
  /** whether `pressure` is static or total */
  kind: 'static' | 'total';
  pressureScale_Pa: number;
  flowScale_m3_s: number;
  pressure: Interpolant;
  /** shaft power over x in units of `powerScale_W`, positive */
  power: Interpolant;
  powerScale_W: number;
  /** x between which the pressure is printed, not supposed */
  known: { low: number; high: number };
  /** flows [m3/s] at which the curve may bend: where crossings are looked for */
  knots_m3_s: number[];
};

export type ChartPoints = readonly (readonly [flow_m3_s: number, value: number])[];

/** Rising in flow; of points a millionth of the widest flow apart only the first is kept. */
function sortedByFlow(points: ChartPoints): (readonly [number, number])[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0]);
  const least = 1e-6 * sorted[sorted.length - 1]![0];
  return sorted.filter(([q], i) => i === 0 || q - sorted[i - 1]![0] > least);
}

/**
 * Base curve from a chart's points (at run speed, site air), continued by the family's shape beyond what is printed.
 * @param pressure at least two points, one pressure per flow
 * @param power    points of shaft power [W], or null
 */
export function baseFromChart(
  kind: 'static' | 'total',
  pressure: ChartPoints,
  power: ChartPoints | null,
  family: FamilyShape,
): BaseCurve {
  const points = sortedByFlow(pressure);
  const shape = shapePreservingCubic(family.staticShape);
  const fit = fitFamily(points, shape);
  const first = points[0]!;
  const last = points[points.length - 1]!;
  const flowScale = last[1] <= 0.02 * fit.pressure_Pa || last[0] > fit.flow_m3_s ? freeDelivery(points) : fit.flow_m3_s;
  const at = (flow: number) => fit.pressure_Pa * shape.value(flow / fit.flow_m3_s);

  const low: [number, number][] = [];
  if (first[0] > 0) {
    const ratio = first[1] / Math.max(at(first[0]), 1e-3 * fit.pressure_Pa);
    for (const s of [0, 0.25, 0.5, 0.75]) low.push([s * first[0], ratio * at(s * first[0])]);
  }
  const high: [number, number][] = [];
  if (last[0] < 0.995 * flowScale && kind === 'static') {
    const offset = last[1];
    const fallen = Math.max(at(last[0]), 1e-3 * fit.pressure_Pa);
    for (const s of [0.25, 0.5, 0.75, 1]) {
      const flow = last[0] + s * (flowScale - last[0]);
      high.push([flow, (offset * Math.max(at(Math.min(flow, fit.flow_m3_s)), 0)) / fallen]);
    }
  }
  const whole = [...low, ...points, ...high];
  const pressureScale = Math.max(...whole.map((p) => p[1]));
  const curve = shapePreservingCubic(whole.map(([q, p]) => [q / flowScale, p / pressureScale] as const));
  const { power: powerCurve, scale } = powerOver(power, flowScale, family);
  return {
    kind,
    pressureScale_Pa: pressureScale,
    flowScale_m3_s: flowScale,
    pressure: curve,
    power: powerCurve,
    powerScale_W: scale,
    known: { low: first[0] / flowScale, high: Math.max(last[0] / flowScale, first[0] / flowScale) },
    knots_m3_s: whole.map((p) => p[0]),
  };
}

/** Base curve of a family at a level of pressure and flow; how much power, the efficiency tells. */
export function baseFromFamily(family: FamilyShape, pressure_Pa: number, flow_m3_s: number): BaseCurve {
  return {
    kind: 'static',
    pressureScale_Pa: pressure_Pa,
    flowScale_m3_s: flow_m3_s,
    pressure: shapePreservingCubic(family.staticShape),
    power: shapePreservingCubic(family.powerShape),
    powerScale_W: 1,
    known: { low: 0, high: 0 },
    knots_m3_s: family.staticShape.map(([x]) => x * flow_m3_s),
  };
}

/** Power points over x, continued by the family's shape at both ends; without points the family's shape alone. */
function powerOver(
  power: ChartPoints | null,
  flowScale: number,
  family: FamilyShape,
): { power: Interpolant; scale: number } {
  const shape = shapePreservingCubic(family.powerShape);
  if (!power || power.length === 0) return { power: shape, scale: 1 };
  const points = sortedByFlow(power);
  const scale = Math.max(...points.map((p) => p[1]));
  const known = points.map(([q, p]) => [q / flowScale, p / scale] as [number, number]);
  const first = known[0]!;
  const last = known[known.length - 1]!;
  const low =
    first[0] > 1e-9
      ? [0, 0.33, 0.67].map(
          (s) => [s * first[0], (first[1] * shape.value(s * first[0])) / shape.value(first[0])] as [number, number],
        )
      : [];
  const high =
    last[0] < 0.995
      ? [0.33, 0.67, 1].map((s) => {
          const x = last[0] + s * (1 - last[0]);
          return [x, (last[1] * shape.value(x)) / shape.value(last[0])] as [number, number];
        })
      : [];
  const whole = [...low, ...known, ...high];
  return { power: whole.length > 1 ? shapePreservingCubic(whole) : shape, scale };
}

/** Flow at which the straight continuation of the last two points meets zero pressure. */
function freeDelivery(points: ChartPoints): number {
  const [a, b] = [points[points.length - 2]!, points[points.length - 1]!];
  if (b[1] <= 0 || b[1] >= a[1]) return b[0];
  return b[0] + (b[1] * (b[0] - a[0])) / (a[1] - b[1]);
}

/**
 * Pressure and flow scale with which a family's shape comes nearest to points (least squares: the pressure scale in
 * closed form, the flow scale by scan). Only used to continue a chart beyond its printed ends.
 */
export function fitFamily(points: ChartPoints, shape: Interpolant): { pressure_Pa: number; flow_m3_s: number } {
  const top = points[points.length - 1]![0];
  let best = { cost: Infinity, pressure_Pa: points[0]![1], flow_m3_s: top };
  for (let i = 0; i <= 120; i++) {
    const flow = Math.max(top, 1e-9) * 0.98 * Math.exp((i / 120) * Math.log(6));
    let hh = 0;
    let hp = 0;
    let pp = 0;
    for (const [q, p] of points) {
      const h = shape.value(q / flow);
      hh += h * h;
      hp += h * p;
      pp += p * p;
    }
    const cost = pp - (hp * hp) / hh;
    if (hp > 0 && cost < best.cost) best = { cost, pressure_Pa: hp / hh, flow_m3_s: flow };
  }
  return best;
}
