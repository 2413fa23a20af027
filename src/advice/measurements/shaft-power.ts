import type { Measurement, MeasurementMaker } from '../measurement.ts';
import { capWords, freshHoles, holedRow } from './holed-cap.ts';

/** The motor's load about where the blower will run: timed on the energy meter, beside the tube on a holed cap. */
export const shaftPower: MeasurementMaker = (situation) => {
  const point_m3_s = Math.max(0, ...situation.judged.cases.map((c) => c.points?.heaviest?.flow_m3_s ?? 0));
  const rows = freshHoles(situation).holes_m.flatMap((hole_m) => holedRow(situation, hole_m, 'flashes') ?? []);
  const off = (r: (typeof rows)[number]) => Math.abs((r.showsCurveAt_m3_s ?? 0) - point_m3_s);
  const nearest = rows.reduce<(typeof rows)[number] | null>((n, r) => (n === null || off(r) < off(n) ? r : n), null);
  if (nearest === null || point_m3_s === 0) return [];
  const { hole_m, where, detail, values, readings, showsCurveAt_m3_s } = nearest;
  const out: Measurement = {
    measurement: 'energy-meter',
    text: `Put ${capWords(hole_m)} ${where}, switch everything else in the house off, time 20 flashes of the energy meter and read how many it makes for a kilowatt-hour; read tube and speed with it.`,
    values,
    detail,
    readings,
    showsCurveAt_m3_s,
  };
  return [out];
};
