import type { Measurement, MeasurementMaker } from '../measurement.ts';

/** One standard deviation of shaft power in ln: through the energy meter's flashes, and through amps. Source: feasibility figures. */
const FLASHES_SD = 0.08;
const AMPS_SD = 0.12;
/** Where power was measured before, one more reading shares most of its doubt with the others. */
const AGAIN_SD = 0.06;

/** The motor's load where the blower will run: by the energy meter, or by a clamp on one wire. */
export const shaftPower: MeasurementMaker = ({ job, index, judged }) => {
  const { candidate, cases } = judged;
  const heaviest = cases.reduce(
    (h, c) => ((c.points?.heaviest?.shaftPower_W ?? 0) > (h.points?.heaviest?.shaftPower_W ?? 0) ? c : h),
    cases[0]!,
  );
  if (!heaviest?.chances || !candidate.estimate) return [];
  const reading = heaviest.chances.load.map((x) => Math.log(Math.max(x, 1e-6)));
  const known = candidate.estimate.powerSource === 'measured';
  const place = job.blowers[index]!.evidence.findIndex((e) => e.kind === 'readings');
  const path = place >= 0 ? `/blowers/${index}/evidence/${place}/rows/-` : `/blowers/${index}/evidence/-`;
  const common = { reading, showsCurveAt_m3_s: null };
  const out: Measurement[] = [
    {
      ...common,
      measurement: 'energy-meter',
      text: 'With the inlet as open as it will run, and everything else in the house switched off, time 20 flashes of the energy meter and read how many it makes for a kilowatt-hour.',
      detail: { path, row: { inputPower_W: null } },
      sd: Math.hypot(FLASHES_SD, known ? AGAIN_SD : 0),
    },
    {
      ...common,
      measurement: 'motor-current',
      text: 'With the inlet as open as it will run, put a clamp meter around one wire of the motor cable, at a covered place, and read amps and volts together.',
      detail: { path, row: { current_A: null, voltage_V: null } },
      sd: Math.hypot(AMPS_SD, known ? AGAIN_SD : 0),
    },
  ];
  return known ? out.slice(0, 1) : out;
};
