import { describe, expect, it } from 'vitest';
import reference from '../../fixtures/reference/motor.json' with { type: 'json' };
import { currentModel, drawnBy, wholePlate } from '../../src/motor/index.ts';
import { answerTo, motorJob, paddleChart, threePhase } from './motor-jobs.ts';

const near = (value: number, expected: number, absolute: number, what = '') =>
  expect(Math.abs(value - expected), `${what}: ${value} against ${expected}`).toBeLessThanOrEqual(absolute);

/** The wheel's power in this job, so that a motor of just that rating can be put on it. */
const powerOf = (change: Parameters<typeof motorJob>[0] = {}) =>
  answerTo(motorJob(change)).assessment.cases[0]!.motor.shaftPower_W!;
const fullyLoaded = { ...threePhase, ratedPower_W: powerOf() };

describe('whole jobs: the motor on its worst day', () => {
  // NEMA-type voltage table: 90 % volts, torque −19 %, amps +11 %; 80 %: torque 64 %. Amps within 2 points.
  it('low evening voltage', () => {
    const at = (lowestVoltage_V: number) =>
      answerTo(motorJob({ blower: { motor: fullyLoaded }, supply: { lowestVoltage_V } }));
    const ninety = at(360);
    const day = ninety.blower.worstDay;
    near(day.heaviest!.load, 1, 1e-9);
    near(day.lowest!.torqueLeft, 0.81, 1e-9);
    near(day.lowest!.current_A / day.current_A!, 1.11, 0.02);
    const state = ninety.blower.states.find((s) => s.state === 'lowest-voltage')!;
    near(state.value!, day.lowest!.current_A / day.plate_A, 1e-9);
    expect(state).toMatchObject({ limit: 1, ok: false });
    near(at(320).blower.worstDay.lowest!.torqueLeft, 0.64, 1e-9);
  });

  // Fan laws at 2850/3450 rpm: 0.83 of the flow, 0.68 of the pressure, 0.56 of the power; rounded to two digits: 0.005.
  it('a 60 Hz import on 50 Hz', () => {
    const motor = { ...threePhase, ratedPower_W: 3000, speed_rpm: 3450, frequency_Hz: 60, voltage_V: 400 };
    const run = (runSpeed_rpm: number | null, frequency_Hz: number) =>
      answerTo(motorJob({ blower: { motor, runSpeed_rpm }, supply: { frequency_Hz } }));
    const [sixty, fifty] = [run(3450, 60), run(2850, 50)].map((a) => a.assessment.cases[0]!.operatingPoint!);
    near(fifty!.flow_m3_s / sixty!.flow_m3_s, 0.83, 0.005, 'flow');
    near(fifty!.totalPressure_Pa / sixty!.totalPressure_Pa, 0.68, 0.005, 'pressure');
    near(fifty!.shaftPower_W! / sixty!.shaftPower_W!, 0.56, 0.005, 'power');
    // by the plate alone: 5/6 of the speed, and of the rating
    const alone = run(null, 50);
    near(alone.assessment.cases[0]!.operatingPoint!.speed_rpm!, 2875, 1e-9);
    const { shaftPower_W, loadFraction } = alone.assessment.cases[0]!.motor;
    near(loadFraction! / (shaftPower_W! / 2500), 1, 1e-9);
    expect(alone.assessment.warnings.find((w) => w.code === 'other-frequency')!.text).toBe(
      'A 60 Hz motor on 50 Hz loses 17 % of its speed and power.',
    );
  });

  // A naval training manual: wheel pulley changed for 20 % more speed, 6.2 A × 1.2³ = 10.7 A on a plate of 9 A: refused.
  it('cube of a pulley change', () => {
    const old = { kind: 'belt', motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.12 };
    const motor = { ...threePhase, ratedPower_W: 4000, current_A: 9, powerFactor: 0.8 };
    const evidence = [
      {
        kind: 'readings',
        rig: { method: 'pitot-traverse', pipeDiameter_m: 0.35 },
        air: { temperature_C: 20 },
        testedWith: { drive: old },
        rows: [
          { staticPressure_Pa: -1750, velocityPressures_Pa: [12], current_A: 5.2, speed_rpm: 2400 },
          { staticPressure_Pa: -1560, velocityPressures_Pa: [25], current_A: 5.7, speed_rpm: 2400 },
          { staticPressure_Pa: -1300, velocityPressures_Pa: [40], current_A: 6.2, speed_rpm: 2400 },
          { staticPressure_Pa: -900, velocityPressures_Pa: [58], current_A: 6.7, speed_rpm: 2400 },
        ],
      },
    ];
    // the third row: √(2·40/1.204)·π/4·0.35² = 0.784 m³/s at 1300 − 40 Pa static, 11 Pa of pipe and 38 Pa in the outlet on top
    const duct = { flow_m3_s: 0.784, pressure_Pa: 1310 };
    const run = (drive: object, idle: object = {}) =>
      answerTo(
        motorJob({
          blower: {
            drive,
            motor: { ...motor, ...idle },
            evidence,
            runSpeed_rpm: null,
            wheel: { family: 'radial' },
            outletArea_m2: 0.1,
          },
          duct,
        }),
      );
    const faster = { ...old, wheelPulleyDiameter_m: 0.1 };
    const before = run(old);
    near(before.assessment.cases[0]!.motor.current_A!, 6.2, 0.2, 'amps before');
    expect(before.blower.verdict).toBe('yes');
    const after = run(faster);
    const [one, two] = [before, after].map((a) => a.assessment.cases[0]!.motor);
    // within 5 %: amps pass through a motor known to about 9 %, and what the motor's rating lets one expect stays put
    near(two!.shaftPower_W! / one!.shaftPower_W!, 1.728, 0.05 * 1.728, 'power');
    expect(two!.current_A!).toBeGreaterThan(9);
    // amps are not proportional to load, so the cube of the amps is on the safe side
    expect(two!.current_A!).toBeLessThan(6.2 * 1.2 ** 3);
    // both figures are told: the manual's own, and the one of a motor whose idle amps do not grow
    const told = after.reason('faster-than-tested')!;
    near(Number(told.values['cubed_A']), 10.7, 0.05, 'by the cube');
    near(Number(told.values['current_A']), two!.current_A!, 1e-9);
    expect(told.text).toMatch(
      /^In the test it drew 6\.2.A at 2[,.]?400.rpm\. By the cube of speed that makes 10\.7.A at 2[,.]?8[78]\d.rpm; idle amps do not grow with the load, so about 9\.\d.A is likelier\. Its plate allows 9\.0.A\.$/,
    );
    expect(before.reason('faster-than-tested')).toBeUndefined();
    // amps alone leave it one chance in ten; the amps with the belt off settle it
    expect(after.blower.verdict).not.toBe('yes');
    expect(after.blower.probability).toBeLessThan(0.15);
    const sure = run(faster, { idleCurrent_A: 3.6 });
    expect(sure.blower.verdict).toBe('no');
    expect(sure.reason('motor-overload')!.severity).toBe('stop');
    // and the page would have said so beforehand
    expect(before.blower.worstDay.speed!.byMotor_rpm!).toBeLessThan(1.2 * before.blower.worstDay.speed!.now_rpm);
  });

  // IEC 60034-1 and practice tables, recalled: 0.02 on the factor. The load fraction itself stays without derating.
  it('altitude and heat', () => {
    for (const row of reference.sections.derating_site.rows) {
      if (!('output_factor' in row)) continue;
      const site = { altitude_m: row.altitude_m!, airTemperature_C: row.ambient! };
      const { blower, assessment, reason } = answerTo(motorJob({ site }));
      near(blower.worstDay.usableShare, row.output_factor!, 0.02, JSON.stringify(site));
      const { shaftPower_W, loadFraction } = assessment.cases[0]!.motor;
      near(loadFraction!, shaftPower_W! / threePhase.ratedPower_W, 1e-9);
      expect(reason('hot-or-high')!.values['share']).toBe(blower.worstDay.usableShare);
    }
    const hot = answerTo(
      motorJob({
        site: { airTemperature_C: 60 },
        blower: { motor: fullyLoaded },
      }),
    );
    expect(hot.reason('derated-overload')!.text).toMatch(
      /^The motor carries 8\d % of its plate, .* leave it 82 % here: it runs too hot\.$/,
    );
  });

  // NEMA MG 1 curve, recalled: 0.02 on the factor.
  it('unbalanced mains', () => {
    for (const row of reference.sections.unbalance.rows) {
      if (row.derating_factor === undefined) continue;
      const unbalance = row.unbalance_percent! / 100;
      const { blower, reason } = answerTo(motorJob({ supply: { voltageUnbalance: unbalance } }));
      near(blower.worstDay.usableShare, row.derating_factor, 0.02, `${row.unbalance_percent} %`);
      expect(reason('voltage-unbalance') === undefined).toBe(unbalance <= 0.01);
    }
  });

  // Trade notes: up to 0.75 kW 60–70 % of the plate is left, up to 2.2 kW 40–60 %. A motor loaded to two thirds will not do.
  it('a three-phase motor on one phase', () => {
    const job = (motor: object, share = 1.5) =>
      answerTo(
        motorJob({
          blower: {
            motor: { ...fullyLoaded, ratedPower_W: share * fullyLoaded.ratedPower_W, voltage_V: 230, ...motor },
          },
          supply: { phases: 1, voltage_V: 230 },
        }),
      );
    const capacitor = job({});
    expect(capacitor.reason('single-phase-feed')!.text).toBe(
      'A three-phase motor on one phase gives 40–60 % of its plate. A two-pole motor like this one starts badly that way, or not at all. An inverter (one phase in, three out) made for the motor avoids both.',
    );
    expect(capacitor.blower.states.find((s) => s.state === 'highest-motor-load')).toMatchObject({
      ok: false,
      limit: 0.45,
    });
    expect(capacitor.blower.verdict).toBe('no');
    const inverter = job({ fedThrough: 'inverter' });
    expect(inverter.reason('single-phase-feed')).toBeUndefined();
    expect(inverter.blower.states.find((s) => s.state === 'highest-motor-load')!.ok).toBe(true);
    expect(inverter.blower.verdict).toBe('yes');
  });

  // US DOE fact sheet: slip is not for accuracy better than about 20 %, nor for rewound motors; amps need at least half load.
  it('says how rough a slip or current estimate is', () => {
    const rows = [
      { staticPressure_Pa: -1300, velocityPressures_Pa: [40], current_A: 3.4, inputPower_W: 1900, speed_rpm: 2925 },
    ];
    const readings = { kind: 'readings', rig: { method: 'pitot-traverse', pipeDiameter_m: 0.25 }, rows };
    const meters = (motor: object) =>
      answerTo(
        motorJob({
          blower: {
            motor: { ...threePhase, speed_rpm: 2860, ...motor },
            runSpeed_rpm: null,
            evidence: [readings, paddleChart],
          },
        }),
      ).blower.worstDay.meters;
    const within = Object.fromEntries(meters({}).map((m) => [m.way, m.within]));
    expect(within['slip']).toBeGreaterThan(0.4);
    expect(within['amps']).toBeGreaterThan(within['watts']!);
    expect(within['amps']).toBeLessThan(within['slip']!);
    expect(meters({ rewound: true }).map((m) => m.way)).toEqual(['watts', 'amps']);
    // the idle amps its plate leads one to expect, but measured
    const model = currentModel(wholePlate({ ...threePhase, speed_rpm: 2860, phases: 3 }).plate);
    const idle = Object.fromEntries(
      meters({ idleCurrent_A: drawnBy(model, 0, 400).current_A }).map((m) => [m.way, m.within]),
    );
    expect(idle['amps']).toBeLessThan(within['amps']!);
  });

  // Textbook shapes (fixtures/reference/motor.json, load_facts): power of a forward-curved fan rises to free delivery, a propeller
  // fan draws most when shut. Both charts dip, the duct crosses them three times, and the middle point cannot last.
  it.each([
    { family: 'forward-curved', shaftPower: (q: number) => 60 + 500 * q, heaviest: 'most' },
    { family: 'axial', shaftPower: (q: number) => 400 - 400 * q, heaviest: 'least' },
  ])(
    'three crossings of a $family wheel: the stable point of $heaviest flow loads the motor',
    ({ family, shaftPower, heaviest }) => {
      const pressure = [
        [0, 330],
        [0.05, 325],
        [0.1, 290],
        [0.15, 220],
        [0.2, 175],
        [0.25, 200],
        [0.3, 260],
        [0.35, 305],
        [0.4, 320],
        [0.45, 300],
        [0.5, 250],
        [0.6, 130],
        [0.66, 0],
      ];
      const chart = { ...paddleChart, pressure, shaftPower: pressure.map(([q]) => [q!, shaftPower(q!)]) };
      const job = motorJob({
        blower: { wheel: { family }, evidence: [chart], motor: { ...threePhase, ratedPower_W: 370 } },
        duct: { flow_m3_s: 0.25, pressure_Pa: 230, exponent: 0.5 },
      });
      const { assessment, blower, reason } = answerTo(job);
      const { operatingPoint, otherOperatingPoints, motor } = assessment.cases[0]!;
      const points = [operatingPoint!, ...otherOperatingPoints].sort((a, b) => a.flow_m3_s - b.flow_m3_s);
      expect(points.map((p) => p.stable)).toEqual([true, false, true]);
      expect(operatingPoint).toBe(points[0]);
      const expected = points[heaviest === 'most' ? 2 : 0]!;
      near(motor.shaftPower_W! / expected.shaftPower_W!, 1, 1e-9);
      near(blower.worstDay.heaviest!.load, expected.shaftPower_W! / 370, 1e-9);
      near(motor.worstCase!.loadFraction, expected.shaftPower_W! / 370, 1e-9);
      expect(expected.shaftPower_W).toBe(Math.max(points[0]!.shaftPower_W!, points[2]!.shaftPower_W!));
      expect(reason('several-points')!.values['count']).toBe(3);
    },
  );

  // IEC 60364-5-52 annex G, recalled: warm copper, √3·0.0225·60/1.5·I·cos φ, and under 2 % for its reactance.
  it('a long thin cable takes from both voltages and from the start', () => {
    const motor = { ...fullyLoaded, current_A: 3.6, powerFactor: 0.85 };
    const day = (cable: object | null) =>
      answerTo(motorJob({ blower: { motor, cable }, supply: { lowestVoltage_V: 360 } })).blower.worstDay;
    const [none, long] = [day(null), day({ length_m: 60, crossSection_m2: 1.5e-6 })];
    const amps = long.current_A!;
    near(long.cable!.drop_V / (Math.sqrt(3) * 0.0225 * (60 / 1.5) * amps * 0.85), 1, 0.02);
    expect(amps).toBeGreaterThan(none.current_A!);
    expect(long.lowest!.current_A).toBeGreaterThan(none.lowest!.current_A);
    expect(long.lowest!.voltage_V).toBeLessThan(360);
    expect(long.start!.seconds!).toBeGreaterThan(none.start!.seconds!);
    expect(long.cable!.startVolts).toBeLessThan(0.97);
    // amps read behind it are read at the volts it leaves
    const tested = (cable: object | null, voltage_V: number) => {
      const rows = [
        { staticPressure_Pa: -1300, velocityPressures_Pa: [40], current_A: 3.4, speed_rpm: 2900, voltage_V },
      ];
      const readings = { kind: 'readings', rig: { method: 'pitot-traverse', pipeDiameter_m: 0.25 }, rows };
      const job = motorJob({ blower: { motor, cable, wheel: { family: 'radial' }, evidence: [readings] } });
      return answerTo(job).assessment.cases[0]!.motor.shaftPower_W!;
    };
    const [at400, at385] = [tested(null, 400), tested(null, 385)];
    const lost_V = Math.sqrt(3) * 0.0225 * (60 / 0.75) * 3.4 * 0.8;
    const behind = tested({ length_m: 60, crossSection_m2: 0.75e-6 }, 385 + lost_V);
    near(behind / at385, 1, 0.005);
    expect(Math.abs(at400 / at385 - 1)).toBeGreaterThan(0.01);
    const thin = answerTo(motorJob({ blower: { motor, cable: { length_m: 260, crossSection_m2: 1.5e-6 } } }));
    expect(thin.reason('cable-drop')!.text).toMatch(
      /^The cable eats 2\d.V, [56] % of the mains; 5 % is usual at most\./,
    );
  });
});
