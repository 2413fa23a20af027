import { describe, expect, it } from 'vitest';
import { checkReadings, reduceReadings, type Readings, type Rig, type Row } from '../../../src/readings/index.ts';

/**
 * Worked by hand: pipe 200 mm (31,416 mm²), hole 100 mm (7,854 mm²), jet 0.60 of the hole (4,712.4 mm²), 0.1 m³/s of air of 1.2 kg/m³.
 * Jet 21.2207 m/s, pipe 3.1831 m/s. Enlargement ρ/2·(21.2207 − 3.1831)² = 195.212 Pa, velocity pressure 6.0793 Pa, jet ρ/2·21.2207² = 270.190 Pa.
 */
const AIR = { density_kg_m3: 1.2, viscosity_Pa_s: 1.8e-5, pressure_Pa: 101_325 };
const NO_LENGTH = { lengthToTap_m: 0, lengthTapToBlower_m: 0 };
const PATH = '/blowers/0/evidence/1';

const readings = (rig: Partial<Rig>, ...rows: Row[]): Readings => ({
  kind: 'readings',
  rig: { method: 'orifice-cap', pipeDiameter_m: 0.2, tap: 'far', ...NO_LENGTH, ...rig },
  rows,
});

const reduce = (evidence: Readings) => {
  const reduced = reduceReadings(evidence, AIR, PATH);
  if (!reduced.ok) throw new Error(JSON.stringify(reduced.issues));
  return { points: reduced.value.points, warnings: reduced.warnings };
};

describe('a hole in a cap, inlet side', () => {
  it('far tap: jet loss and velocity pressure make the reading', () => {
    const [point] = reduce(
      readings({}, { staticPressure_Pa: -201.2914, orificeDiameter_m: 0.1, speed_rpm: 2850 }),
    ).points;
    expect(point).toMatchObject({
      pressureKind: 'static',
      speed_rpm: 2850,
      airDensity_kg_m3: 1.2,
      path: `${PATH}/rows/0`,
    });
    expect(point!.flow_m3_s).toBeCloseTo(0.1, 7);
    expect(point!.pressure_Pa).toBeCloseTo(195.2121, 3);
  });

  it('near tap: the jet alone makes the reading, the blower feels the enlargement', () => {
    const [point] = reduce(readings({ tap: 'near' }, { staticPressure_Pa: -270.18982, orificeDiameter_m: 0.1 })).points;
    expect(point!.flow_m3_s).toBeCloseTo(0.1, 7);
    expect(point!.pressure_Pa).toBeCloseTo(195.2121, 3);
    expect(point!.speed_rpm).toBeNull();
  });

  it('the minus of suction may be left off', () => {
    const minus = reduce(readings({}, { staticPressure_Pa: -201.2914, orificeDiameter_m: 0.1 })).points[0]!;
    const plus = reduce(readings({}, { staticPressure_Pa: 201.2914, orificeDiameter_m: 0.1 })).points[0]!;
    expect([plus.flow_m3_s, plus.pressure_Pa]).toEqual([minus.flow_m3_s, minus.pressure_Pa]);
  });

  it('no hole is shut-off: no flow, and all of the reading is pressure', () => {
    const [point] = reduce(readings({}, { staticPressure_Pa: -2100, orificeDiameter_m: 0 })).points;
    expect([point!.flow_m3_s, point!.pressure_Pa]).toEqual([0, 2100]);
  });

  it('a hole as wide as the pipe is a plain pipe end: 1.93 velocity pressures at the tap', () => {
    const [point] = reduce(readings({}, { staticPressure_Pa: -11.73299, orificeDiameter_m: 0.2 })).points;
    expect(point!.flow_m3_s).toBeCloseTo(0.1, 4);
    expect(point!.pressure_Pa).toBeCloseTo(0.93 * 6.0793, 2);
    expect(point!.shared.find((e) => e.error === `${PATH}/open-end-loss`)!.flow_m3_s).toBeLessThan(0);
  });

  it('a tap that nobody placed is taken as far, and that is said', () => {
    const row = { staticPressure_Pa: -500, orificeDiameter_m: 0.1 };
    const { points, warnings } = reduce(readings({ tap: null, lengthToTap_m: null, lengthTapToBlower_m: null }, row));
    const far = reduce(readings({ tap: 'far', lengthToTap_m: null, lengthTapToBlower_m: null }, row)).points[0]!;
    expect([points[0]!.flow_m3_s, points[0]!.pressure_Pa]).toEqual([far.flow_m3_s, far.pressure_Pa]);
    expect(warnings).toEqual([
      {
        code: 'tap-assumed-far',
        path: `${PATH}/rig/tap`,
        text: 'It is not said where the tap is. It is taken as far from the cap, next to the blower; were it close behind the cap, the flow would be over-stated by 16–31 %.',
      },
    ]);
  });

  it.each([
    [0.5, 1.16],
    [0.6, 1.23],
    [0.7, 1.31],
  ])('near data read as far over-state the flow (diameter ratio %d: × %d)', (ratio, factor) => {
    const row = { staticPressure_Pa: -800, orificeDiameter_m: 0.2 * ratio };
    const far = reduce(readings({ tap: 'far' }, row)).points[0]!.flow_m3_s;
    const near = reduce(readings({ tap: 'near' }, row)).points[0]!.flow_m3_s;
    expect(far / near).toBeCloseTo(factor, 2);
  });

  it('friction between tap and blower is added; friction before the tap takes flow off the reading', () => {
    const row = { staticPressure_Pa: -400, orificeDiameter_m: 0.16 };
    const without = reduce(readings({}, row)).points[0]!;
    const before = reduce(readings({ lengthToTap_m: 4 }, row)).points[0]!;
    const after = reduce(readings({ lengthTapToBlower_m: 4 }, row)).points[0]!;
    expect(before.flow_m3_s).toBeLessThan(without.flow_m3_s);
    expect(after.flow_m3_s).toBe(without.flow_m3_s);
    expect(after.pressure_Pa).toBeGreaterThan(without.pressure_Pa);
  });

  it('a tap called near that stands far away is asked about', () => {
    const { warnings } = reduce(
      readings({ tap: 'near', lengthToTap_m: 1.6 }, { staticPressure_Pa: -400, orificeDiameter_m: 0.1 }),
    );
    expect(warnings).toEqual([
      {
        code: 'tap-place-doubtful',
        path: `${PATH}/rig/tap`,
        text: 'The tap is called near but stands 8.0 diameters behind the cap. Near is about 0.4, far is 5 or more.',
      },
    ]);
  });

  it('an open end read near the end counts little', () => {
    const { points, warnings } = reduce(readings({ tap: 'near' }, { staticPressure_Pa: -400, orificeDiameter_m: 0.2 }));
    expect(warnings.map((w) => w.code)).toEqual(['open-end-near-tap']);
    const loss = points[0]!.shared.find((e) => e.error.endsWith('/open-end-loss'))!;
    expect(Math.abs(loss.flow_m3_s) / points[0]!.flow_m3_s).toBeGreaterThan(0.15);
  });
});

describe('a hole in a cap, outlet side', () => {
  it('the jet speeds up from the pipe; its contraction eases towards the pipe’s own width', () => {
    // Contraction 0.6185 at half the diameter: jet 20.5837 m/s, p_s = ρ/2·(20.5837² − 3.1831²) = 248.132 Pa; total adds 6.0793 Pa.
    const [point] = reduce(
      readings({ side: 'outlet', tap: null }, { staticPressure_Pa: 248.1323, orificeDiameter_m: 0.1 }),
    ).points;
    expect(point!.pressureKind).toBe('total');
    expect(point!.flow_m3_s).toBeCloseTo(0.1, 6);
    expect(point!.pressure_Pa).toBeCloseTo(248.1323 + 6.0793, 3);
  });

  it('a minus there is a slip and is said', () => {
    const { warnings } = reduce(readings({ side: 'outlet' }, { staticPressure_Pa: -248, orificeDiameter_m: 0.1 }));
    expect(warnings).toEqual([
      {
        code: 'sign-doubtful',
        path: `${PATH}/rows/0/staticPressure_Pa`,
        text: 'On the outlet side the pressure before a cap is above the room’s: it is taken as positive.',
      },
    ]);
  });

  it('without a cap the tap shows no flow: the row is left out', () => {
    const { points, warnings } = reduce(
      readings({ side: 'outlet' }, { staticPressure_Pa: 10, orificeDiameter_m: 0.2 }),
    );
    expect(points).toEqual([]);
    expect(warnings).toEqual([
      {
        code: 'row-useless',
        path: `${PATH}/rows/0`,
        text: 'With the cap off on the outlet side the tap shows no flow. Put a cap with a hole on, or leave this row out.',
      },
    ]);
  });
});

describe('holes that can’t be', () => {
  it('wider than the pipe', () => {
    expect(
      checkReadings(
        readings(
          {},
          { staticPressure_Pa: -9, orificeDiameter_m: 0.1 },
          { staticPressure_Pa: -9, orificeDiameter_m: 0.21 },
        ),
        PATH,
      ),
    ).toEqual([
      {
        code: 'contradiction',
        path: `${PATH}/rows/1/orificeDiameter_m`,
        message: 'A hole of 0.21 m does not fit into a pipe of 0.2 m: look at both diameters.',
      },
    ]);
  });

  it('too wide to measure by, and just not', () => {
    const wide = readings({}, { staticPressure_Pa: -100, orificeDiameter_m: 0.185 });
    const issue = {
      code: 'out-of-range',
      path: `${PATH}/rows/0/orificeDiameter_m`,
      message:
        "A hole of 0.185 m in a pipe of 0.2 m is too wide to measure by: 0.18 m at most, or take the cap off and give the pipe's own diameter.",
    };
    expect(checkReadings(wide, PATH)).toEqual([issue]);
    expect(reduceReadings(wide, AIR, PATH)).toEqual({ ok: false, issues: [issue] });
    expect(checkReadings(readings({}, { staticPressure_Pa: -100, orificeDiameter_m: 0.18 }), PATH)).toEqual([]);
  });
});

describe('what is missing stops no other row', () => {
  it('a row without its hole is left out and named', () => {
    const { points, warnings } = reduce(
      readings(
        { lengthToTap_m: null },
        { staticPressure_Pa: -300 },
        { staticPressure_Pa: -201.2914, orificeDiameter_m: 0.1 },
      ),
    );
    expect(points.map((p) => p.path)).toEqual([`${PATH}/rows/1`]);
    expect(warnings).toEqual([
      {
        code: 'row-incomplete',
        path: `${PATH}/rows/0/orificeDiameter_m`,
        text: 'This row is left out: hole diameter missing.',
      },
    ]);
  });

  it('a rig without its pipe gives no points and says what it needs', () => {
    const { points, warnings } = reduce(
      readings({ pipeDiameter_m: null }, { staticPressure_Pa: -300, orificeDiameter_m: 0.1 }),
    );
    expect(points).toEqual([]);
    expect(warnings).toEqual([
      {
        code: 'rig-incomplete',
        path: `${PATH}/rig/pipeDiameter_m`,
        text: "These readings can't be used yet: test pipe, inside missing.",
      },
    ]);
  });

  it('no rows, no points, no complaint', () => {
    expect(reduce(readings({ tap: null }))).toEqual({ points: [], warnings: [] });
  });
});
