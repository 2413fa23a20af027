import type { MeasurementMaker } from '../measurement.ts';

/** How well a known flow and one tube show the loss of ducts that stand, relative. Estimated. */
const KNOWN_FLOW_SD = 0.06;

/** Where the ducts stand already, any blower shows what they cost: all their doubts in one reading. */
export const wholeDuct: MeasurementMaker = ({ job, judged }) => {
  const unsure = judged.cases
    .filter((c) => c.result.required && c.withMargins !== null)
    .sort((a, b) => a.result.probability - b.result.probability)[0];
  if (!unsure?.withMargins) return [];
  const last = job.ductwork.sections.findIndex((s) => s.into === 'blower');
  return [
    {
      measurement: 'duct-pressure',
      text: `If the pipes stand already: with the gates as for ${unsure.result.gatePlan}, let any blower suck through them, read the suction where this blower will sit, and the flow with a pitot tube or anemometer in the main.`,
      values: { plan: unsure.result.gatePlan },
      detail: {
        path: `/ductwork/sections/${last}/elements/-`,
        element: { kind: 'fixed-resistance', flow_m3_s: null, pressure_Pa: null, exponent: 2 },
      },
      readings: [{ values: unsure.withMargins().lnLoss, sd: KNOWN_FLOW_SD }],
      showsCurveAt_m3_s: null,
    },
  ];
};
