import type { MeasurementMaker } from '../measurement.ts';

/** Reading of a tape or tachometer against what was only supposed, in units of the supposition's own standard deviation. */
const TAPE_SHARE = 0.03;
const TACHOMETER_SD = 0.003;

/** Measuring what was only supposed: the wheel's speed and the blower's outlet. */
export const speedAndOutlet: MeasurementMaker = ({ index, judged }) => {
  const { draws, estimate } = judged.candidate;
  if (!draws || !estimate) return [];
  const { speed, outletArea } = estimate.model.spread;
  return [
    ...(speed > 3 * TACHOMETER_SD
      ? [
          {
            measurement: 'speed',
            text: 'Measure how fast the wheel turns under load: a mark and a tachometer, or ten seconds of its sound recorded close by.',
            values: {},
            detail: { path: `/blowers/${index}/runSpeed_rpm` },
            readings: [{ values: draws.speedDeviate, sd: TACHOMETER_SD / speed }],
            showsCurveAt_m3_s: null,
          },
        ]
      : []),
    ...(outletArea > 2 * TAPE_SHARE
      ? [
          {
            measurement: 'outlet-area',
            text: "Measure the inside of the blower's outlet with a tape, width and height or diameter.",
            values: {},
            detail: { path: `/blowers/${index}/outletArea_m2` },
            readings: [{ values: draws.outletDeviate, sd: TAPE_SHARE / outletArea }],
            showsCurveAt_m3_s: null,
          },
        ]
      : []),
  ];
};
