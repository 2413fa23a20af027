import { siteAir } from './air/index.ts';
import { gatherEvidence } from './evidence/gather.ts';
import type { Blower, Ductwork, Evidence, Site, Supply } from './job/types.ts';

/** Where one find says the blower runs: flow [m3/s] and total pressure [Pa], brought to run speed and site air. */
export type EvidencePoint = {
  /** place in `blower.evidence` */
  evidence: number;
  kind: Evidence['kind'];
  /** place in the rows of readings; null for charts and rated points */
  row: number | null;
  flow_m3_s: number;
  totalPressure_Pa: number;
};

/** A chart is shown by about this many of its points: enough to see its way, few enough to see the curve beneath. */
const CHART_POINTS_SHOWN = 12;

/**
 * The evidence of a blower as points on the plot of its curve, for looking at; the curve itself is fitted elsewhere.
 * Static pressure becomes total with the velocity pressure in the outlet (definition); where the outlet is unknown the two are
 * taken as equal, as the curve does. Readings that cannot be understood give no points.
 */
export function evidencePoints(
  blower: Blower,
  { site, supply, ductwork }: { site: Site; supply: Supply; ductwork: Ductwork | null },
): EvidencePoint[] {
  const { air } = siteAir(site);
  const place = {
    air,
    supply,
    altitude_m: site.altitude_m ?? null,
    ambient_C: site.airTemperature_C ?? null,
    ductwork,
    path: '/blower',
  };
  const { charts, pressures, outletArea_m2 } = gatherEvidence(blower, place).evidence;
  const outletPressure = (flow: number) =>
    outletArea_m2 === null ? 0 : (air.density_kg_m3 / 2) * (flow / outletArea_m2) ** 2;
  const point = (path: string, kind: 'static' | 'total', flow_m3_s: number, pressure: number): EvidencePoint => {
    const { evidence, row } = placeOf(path);
    return {
      evidence,
      kind: blower.evidence[evidence]!.kind,
      row,
      flow_m3_s,
      totalPressure_Pa: kind === 'total' ? pressure : pressure + outletPressure(flow_m3_s),
    };
  };
  return [
    ...charts.flatMap((c) => thinned(c.pressure).map(([flow, pressure]) => point(c.path, c.kind, flow, pressure))),
    ...pressures.map((p) => point(p.path, p.kind, p.flow_m3_s, p.pressure_Pa)),
  ].sort((a, b) => a.evidence - b.evidence);
}

/** Evenly taken points, both ends among them. */
function thinned<T>(points: readonly T[]): T[] {
  if (points.length <= CHART_POINTS_SHOWN) return [...points];
  return Array.from(
    { length: CHART_POINTS_SHOWN },
    (_, i) => points[Math.round((i * (points.length - 1)) / (CHART_POINTS_SHOWN - 1))]!,
  );
}

/** The evidence and, in readings, the row that a pointer leads to. */
function placeOf(path: string): { evidence: number; row: number | null } {
  const [, evidence, row] = /\/evidence\/(\d+)(?:\/rows\/(\d+))?/.exec(path)!;
  return { evidence: Number(evidence), row: row === undefined ? null : Number(row) };
}
