import type { Assessment, BlowerResult, Reason } from '../../src/assessment.ts';
import { assess } from '../../src/assess.ts';
import { checkJob } from '../../src/job/check.ts';

/** A chart of a paddle wheel whose power rises with flow, at 2,900 rpm in air of 1.2 kg/m³. */
export const paddleChart = {
  kind: 'chart',
  speed_rpm: 2900,
  airDensity_kg_m3: 1.2,
  pressureKind: 'total',
  accuracyGrade: 'AN1',
  pressure: [
    [0, 2150],
    [0.1, 2100],
    [0.2, 1970],
    [0.3, 1750],
    [0.4, 1430],
    [0.5, 1000],
    [0.6, 450],
  ],
  shaftPower: [
    [0, 500],
    [0.1, 700],
    [0.2, 900],
    [0.3, 1100],
    [0.4, 1300],
    [0.5, 1500],
    [0.6, 1700],
  ],
};

export const threePhase = { ratedPower_W: 2200, speed_rpm: 2900, voltage_V: 400, phases: 3, frequency_Hz: 50 };

/** A whole job with one blower on one duct of square law, at sea level, without required flows: only the motor is judged. */
export function motorJob(change: { blower?: object; supply?: object; site?: object; duct?: object } = {}): unknown {
  return {
    format: 'blower-bench-job',
    version: 1,
    name: 'motor',
    site: { altitude_m: 0, airTemperature_C: 20, ...change.site },
    supply: { voltage_V: 400, frequency_Hz: 50, phases: 3, ...change.supply },
    material: 'light-powder',
    blowers: [
      {
        id: 'b',
        wheel: { family: 'radial', diameter_m: 0.4, safeTipSpeed_m_s: 80 },
        drive: { kind: 'direct' },
        runSpeed_rpm: 2900,
        outletArea_m2: 0.05,
        motor: threePhase,
        evidence: [paddleChart],
        ...change.blower,
      },
    ],
    ductwork: {
      sections: [
        {
          id: 'saw',
          into: 'blower',
          pickup: { machine: 'saw' },
          elements: [{ kind: 'fixed-resistance', flow_m3_s: 0.4, pressure_Pa: 1400, exponent: 2, ...change.duct }],
        },
      ],
      discharge: [{ kind: 'exit', diameter_m: 0.5 }],
    },
  };
}

/** The assessment of a job that must be possible, and its one blower. */
export function answerTo(job: unknown): {
  assessment: Assessment;
  blower: BlowerResult;
  reason(code: string): Reason | undefined;
} {
  const read = checkJob(job);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const assessment = assess(read.value);
  const blower = assessment.blowers[0]!;
  return { assessment, blower, reason: (code) => blower.reasons.find((r) => r.code === code) };
}
