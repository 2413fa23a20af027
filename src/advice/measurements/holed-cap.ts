import { formatQuantity } from '../../units/format.ts';
import { crossingOnNet, onTheNet } from '../../operate/net.ts';
import type { Measurement, MeasurementMaker, MeasurementSituation, PredictedReading } from '../measurement.ts';

/** Contraction of a sharp-edged hole in a cap; the job document's own value. */
const CONTRACTION = 0.6;
/** Holes tried, as shares of the pipe's diameter; beyond the last the cap is hardly one. */
const HOLES = [0, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
/** One standard deviation of the flow through a home-made hole, and of the tube: share and pascals. Source: as for readings. */
const FLOW_SD = 0.025;
const TUBE = { share: 0.01, eye_Pa: 4 };
/** Test pipe where the blower has none yet: the drain pipe that hardware shops sell [m]. */
const USUAL_PIPE_m = 0.1036;
/** One standard deviation of shaft power in ln: through amps, through the energy meter's flashes. Source: feasibility figures. */
const POWER_SD = { amps: 0.12, flashes: 0.08 };
/** Where power was measured before, one more reading shares most of its doubt with the others. */
const AGAIN_SD = 0.06;

export type MotorReading = keyof typeof POWER_SD;

/** One row of a test with a holed cap, as it may come out: what to say, where it goes, what tube and meter may show. */
export type HoledRow = Pick<Measurement, 'detail' | 'values' | 'readings' | 'showsCurveAt_m3_s'> & {
  hole_m: number;
  /** "on the same test pipe", or the pipe to get */
  where: string;
  expected_Pa: number;
};

/** The test pipe there is, or the one to get, with the holes it was not read with yet [m]. */
export function freshHoles({ job, index }: MeasurementSituation): { pipe_m: number; place: number; holes_m: number[] } {
  const blower = job.blowers[index]!;
  const place = blower.evidence.findIndex(
    (e) => e.kind === 'readings' && e.rig.method === 'orifice-cap' && (e.rig.side ?? 'inlet') === 'inlet',
  );
  const rig = blower.evidence[place];
  const pipe_m =
    (rig?.kind === 'readings' ? rig.rig.pipeDiameter_m : null) ??
    Math.max(USUAL_PIPE_m, 0.8 * (blower.wheel.inletDiameter_m ?? 0));
  const done = rig?.kind === 'readings' ? rig.rows.map((r) => r.orificeDiameter_m ?? -1) : [];
  const holes_m = HOLES.map((share) => Math.round(share * pipe_m * 200) / 200).filter(
    (hole) => !done.some((d) => Math.abs(d - hole) < 0.003),
  );
  return { pipe_m, place, holes_m };
}

/** The row that one hole would give, drawn for every possible truth; null where the blower has no curve yet. */
export function holedRow(situation: MeasurementSituation, hole_m: number, motor: MotorReading): HoledRow | null {
  const { index, judged } = situation;
  const { draws, estimate, air, outletArea_m2, bestOnNet_Pa } = judged.candidate;
  if (!draws || !estimate || !bestOnNet_Pa) return null;
  const { pipe_m, place } = freshHoles(situation);
  const area = (Math.PI / 4) * pipe_m ** 2;
  const outlet = outletArea_m2 === null ? 0 : air.density_kg_m3 / (2 * outletArea_m2 ** 2);
  const flows = draws.flows_m3_s;
  const resistance =
    hole_m === 0
      ? Infinity
      : (air.density_kg_m3 / 2) * (1 / (CONTRACTION * (Math.PI / 4) * hole_m ** 2) - 1 / area) ** 2;
  // fan total pressure against hole and outlet: where they meet the tube reads the hole's part
  const loss = flows.map((q) => (q === 0 ? 0 : (resistance + outlet) * q * q));
  const flowThrough = (offset: number, total: Float64Array, factor = 1) =>
    hole_m === 0 ? 0 : crossingOnNet(flows, total, offset, loss, factor).least;
  const pressureAt = (offset: number, total: Float64Array, q: number) =>
    Math.max(hole_m === 0 ? total[offset]! : onTheNet(flows, total, offset, q) - outlet * q * q, 1);
  const tube = new Float64Array(draws.count);
  const power = new Float64Array(draws.count);
  for (let d = 0; d < draws.count; d++) {
    const offset = d * flows.length;
    const q = flowThrough(offset, draws.total_Pa);
    tube[d] = Math.log(pressureAt(offset, draws.total_Pa, q));
    power[d] = Math.log(Math.max(onTheNet(flows, draws.shaftPower_W, offset, q), 1e-6));
  }
  const flow_m3_s = flowThrough(0, bestOnNet_Pa);
  const expected_Pa = pressureAt(0, bestOnNet_Pa, flow_m3_s);
  const off_Pa = pressureAt(0, bestOnNet_Pa, flowThrough(0, bestOnNet_Pa, (1 + FLOW_SD) ** -2));
  const readings: PredictedReading[] = [
    { values: tube, sd: Math.hypot(Math.log(off_Pa / expected_Pa), TUBE.share, TUBE.eye_Pa / expected_Pa) },
    { values: power, sd: Math.hypot(POWER_SD[motor], estimate.powerSource === 'measured' ? AGAIN_SD : 0) },
  ];
  const row = { orificeDiameter_m: hole_m, ...(motor === 'amps' ? { current_A: null } : { inputPower_W: null }) };
  const fresh = { kind: 'readings', rig: { method: 'orifice-cap', tap: 'far', pipeDiameter_m: pipe_m }, rows: [] };
  return {
    hole_m,
    where:
      place >= 0
        ? 'on the same test pipe'
        : `on ${formatQuantity(8 * pipe_m, 'm')} of straight ${formatQuantity(pipe_m, 'mm')} pipe at the inlet`,
    expected_Pa,
    values: { expected_Pa, ...(hole_m > 0 ? { hole_m } : {}), ...(place >= 0 ? {} : { pipe_m, length_m: 8 * pipe_m }) },
    detail:
      place >= 0
        ? { path: `/blowers/${index}/evidence/${place}/rows/-`, row }
        : { path: `/blowers/${index}/evidence/-`, value: fresh, row },
    readings,
    showsCurveAt_m3_s: flow_m3_s,
  };
}

/** "a closed cap", "a cap with a clean round hole of 60 mm" */
export const capWords = (hole_m: number): string =>
  hole_m === 0 ? 'a closed cap' : `a cap with a clean round hole of ${formatQuantity(hole_m, 'mm')}`;

/** One more row with a holed cap: hole sizes along the curve of this blower, amps read with it. */
export const holedCap: MeasurementMaker = (situation) =>
  freshHoles(situation).holes_m.flatMap((hole_m): Measurement[] => {
    const row = holedRow(situation, hole_m, 'amps');
    if (row === null) return [];
    const { detail, values, readings, showsCurveAt_m3_s } = row;
    return [
      {
        measurement: 'orifice-cap',
        text: `Put ${capWords(hole_m)} ${row.where}, read the water tube next to the blower, and the speed and amps with it; about ${formatQuantity(row.expected_Pa, 'mm water')} is to be expected.`,
        values,
        detail,
        readings,
        showsCurveAt_m3_s,
      },
    ];
  });
