/** A small valid job as a client would send it: one planer, one belt-driven blower, chart and readings. */
export const smallJob = () => ({
  format: 'blower-bench-job',
  version: 1,
  name: 'One planer',
  site: { altitude_m: 1850, airTemperature_C: 24 },
  supply: { voltage_V: 400, lowestVoltage_V: 350, frequency_Hz: 50, phases: 3 },
  material: 'wood-dust',
  blowers: [
    {
      id: 'b1',
      wheel: { family: 'radial', diameter_m: 0.45 },
      drive: { kind: 'belt', motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.1 },
      motor: { ratedPower_W: 2200, speed_rpm: 2850 },
      evidence: [
        {
          kind: 'chart',
          speed_rpm: 2900,
          pressure: [
            [0, 2150],
            [0.2, 1970],
            [0.4, 1430],
          ],
          shaftPower: [
            [0, 700],
            [0.4, 2300],
          ],
        },
        {
          kind: 'readings',
          rig: { method: 'orifice-cap', tap: 'far', pipeDiameter_m: 0.15 },
          rows: [{ staticPressure_Pa: -1500, orificeDiameter_m: 0.075 }],
        },
      ],
    },
  ],
  ductwork: {
    sections: [
      {
        id: 'planer',
        into: 'main',
        pickup: { machine: 'thickness planer', requiredFlow_m3_s: 0.25 },
        gate: {},
        elements: [
          { kind: 'entry', diameter_m: 0.125 },
          { kind: 'pipe', surface: 'flexible-hose', length_m: 2, diameter_m: 0.125 },
        ],
      },
      {
        id: 'main',
        into: 'blower',
        elements: [{ kind: 'pipe', surface: 'drain-pipe', length_m: 4, diameter_m: 0.15 }],
      },
    ],
    discharge: [{ kind: 'exit', diameter_m: 0.2 }],
  },
  gatePlans: [{ name: 'planer alone', open: ['planer'] }],
});

/** A copy of the small job with the value at a JSON Pointer replaced, added, or (undefined) taken away. */
export function smallJobWith(pointer: string, value: unknown): unknown {
  const job: unknown = smallJob();
  const steps = pointer.slice(1).split('/');
  const last = steps.pop() as string;
  const parent = steps.reduce<Record<string, unknown>>(
    (at, step) => at[step] as Record<string, unknown>,
    job as Record<string, unknown>,
  );
  if (value === undefined) delete parent[last];
  else parent[last] = value;
  return job;
}
