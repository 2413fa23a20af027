import { formatQuantity } from '../../units/format.ts';
import { crossingOnNet, onTheNet } from '../../operate/net.ts';
import type { Measurement, MeasurementMaker } from '../measurement.ts';

/** Contraction of a sharp-edged hole in a cap; the job document's own value. */
const CONTRACTION = 0.6;
/** Holes tried, as shares of the pipe's diameter; beyond the last the cap is hardly one. */
const HOLES = [0, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
/** One standard deviation of the flow through a home-made hole, and of the tube: share and pascals. Source: as for readings. */
const FLOW_SD = 0.025;
const TUBE = { share: 0.01, eye_Pa: 4 };
/** Test pipe where the blower has none yet: the drain pipe that hardware shops sell [m]. */
const USUAL_PIPE_m = 0.1036;

/** One more row with a holed cap: hole sizes along the curve of this blower. */
export const holedCap: MeasurementMaker = ({ job, index, judged }) => {
  const { candidate } = judged;
  const { draws, estimate, air, outletArea_m2 } = candidate;
  if (!draws || !estimate) return [];
  const blower = job.blowers[index]!;
  const place = blower.evidence.findIndex(
    (e) => e.kind === 'readings' && e.rig.method === 'orifice-cap' && (e.rig.side ?? 'inlet') === 'inlet',
  );
  const rig = blower.evidence[place];
  const pipe_m =
    (rig?.kind === 'readings' ? rig.rig.pipeDiameter_m : null) ??
    Math.max(USUAL_PIPE_m, 0.8 * (blower.wheel.inletDiameter_m ?? 0));
  const done = rig?.kind === 'readings' ? rig.rows.map((r) => r.orificeDiameter_m ?? -1) : [];
  const area = (Math.PI / 4) * pipe_m ** 2;
  const outlet = outletArea_m2 === null ? 0 : air.density_kg_m3 / (2 * outletArea_m2 ** 2);
  const flows = draws.flows_m3_s;

  return HOLES.flatMap((share): Measurement[] => {
    const hole_m = Math.round(share * pipe_m * 200) / 200;
    if (done.some((d) => Math.abs(d - hole_m) < 0.003)) return [];
    const resistance =
      hole_m === 0
        ? Infinity
        : (air.density_kg_m3 / 2) * (1 / (CONTRACTION * (Math.PI / 4) * hole_m ** 2) - 1 / area) ** 2;
    // fan total pressure against hole and outlet: where they meet the tube reads the hole's part
    const loss = flows.map((q) => (q === 0 ? 0 : (resistance + outlet) * q * q));
    const read = (offset: number, total: Float64Array, factor: number) => {
      if (hole_m === 0) return total[offset]!;
      const q = crossingOnNet(flows, total, offset, loss, factor).least;
      return Math.max(onTheNet(flows, total, offset, q) - outlet * q * q, 1);
    };
    const reading = Float64Array.from({ length: draws.count }, (_, d) =>
      Math.log(Math.max(read(d * flows.length, draws.total_Pa, 1), 1)),
    );
    const best = read(0, candidate.bestOnNet_Pa!, 1);
    const off = read(0, candidate.bestOnNet_Pa!, (1 + FLOW_SD) ** -2);
    const sd = Math.hypot(Math.log(off / best), TUBE.share, TUBE.eye_Pa / best);
    const flow = hole_m === 0 ? 0 : crossingOnNet(flows, candidate.bestOnNet_Pa!, 0, loss, 1).least;
    const row = { orificeDiameter_m: hole_m };
    const cap = hole_m === 0 ? 'a closed cap' : `a cap with a clean round hole of ${formatQuantity(hole_m, 'mm')}`;
    const where =
      place >= 0
        ? 'on the same test pipe'
        : `on ${formatQuantity(8 * pipe_m, 'm')} of straight ${formatQuantity(pipe_m, 'mm')} pipe at the inlet`;
    return [
      {
        measurement: 'orifice-cap',
        text: `Put ${cap} ${where}, read the water tube next to the blower, and the speed and amps with it; about ${formatQuantity(best, 'mm water')} is to be expected.`,
        detail:
          place >= 0
            ? { path: `/blowers/${index}/evidence/${place}/rows/-`, row }
            : {
                path: `/blowers/${index}/evidence/-`,
                value: {
                  kind: 'readings',
                  rig: { method: 'orifice-cap', tap: 'far', pipeDiameter_m: pipe_m },
                  rows: [],
                },
                row,
              },
        reading,
        sd,
        showsCurveAt_m3_s: flow,
      },
    ];
  });
};
