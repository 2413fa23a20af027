import fc from 'fast-check';

/**
 * Random shops with everything given (k, roughness, dense charts), so that two solvers must agree: 0–2,500 m, belt and direct,
 * 60 Hz plates on 50 Hz, 1–12 machines, up to four levels of junctions, leaks, one to three crossings.
 */
const between = (min: number, max: number) => fc.nat(100_000).map((i) => min + ((max - min) * i) / 100_000);

const pipe = (d: number) =>
  fc.record({
    kind: fc.constant('pipe'),
    surface: fc.constantFrom('drain-pipe', 'flexible-hose'),
    length_m: between(0.5, 8),
    diameter_m: fc.constant(d),
    roughness_m: between(0.00001, 0.002),
  });
const lossy = (d: number) =>
  fc.oneof(
    fc.record({
      kind: fc.constant('fitting'),
      fitting: fc.constant('elbow-90'),
      diameter_m: fc.constant(d),
      k: between(0.1, 0.6),
      count: fc.integer({ min: 1, max: 3 }),
    }),
    fc.record({
      kind: fc.constant('branch-entry'),
      angle_deg: fc.constant(45),
      diameter_m: fc.constant(d),
      k: between(0.1, 0.5),
    }),
    fc.record({
      kind: fc.constant('fixed-resistance'),
      flow_m3_s: between(0.1, 0.3),
      pressure_Pa: between(50, 300),
      exponent: between(1, 2),
      airDensity_kg_m3: between(0.9, 1.25),
    }),
    fc.record({
      kind: fc.constant('reducer'),
      fromDiameter_m: fc.constant(d),
      toDiameter_m: fc.constant(d * 1.25),
      k: between(0.05, 0.4),
    }),
  );

const leaf = (id: string, into: string) =>
  between(0.08, 0.16).chain((d) =>
    fc.record({
      id: fc.constant(id),
      into: fc.constant(into),
      pickup: fc.record({ machine: fc.constant(id), requiredFlow_m3_s: between(0.02, 0.4) }),
      gate: fc.option(fc.record({ closedLeakArea_m2: fc.oneof(fc.constant(0), between(1e-6, 1e-4)) }), {
        nil: undefined,
        freq: 6,
      }),
      elements: fc
        .tuple(
          fc.record({ kind: fc.constant('entry'), diameter_m: fc.constant(d), k: between(0.2, 1.2) }),
          pipe(d),
          fc.array(lossy(d), { maxLength: 2 }),
        )
        .map(([e, p, l]) => [e, p, ...l]),
    }),
  );

const trunk = (id: string, into: string, tail: boolean) =>
  between(0.12, 0.22).chain((d) =>
    fc
      .tuple(
        pipe(d),
        fc.array(lossy(d), { maxLength: 2 }),
        fc.record({ kind: fc.constant('cyclone'), inletDiameter_m: fc.constant(d), k: between(1, 5) }),
        fc.record({
          kind: fc.constant('filters'),
          count: fc.integer({ min: 2, max: 8 }),
          each: fc.record({
            cleanFlow_m3_s: between(0.05, 0.15),
            cleanPressure_Pa: between(40, 200),
            loadedPressure_Pa: between(250, 900),
            exponent: between(1, 1.9),
          }),
          airDensity_kg_m3: fc.option(between(1, 1.2), { nil: undefined }),
        }),
      )
      .map(([p, l, c, f]) => ({ id, into, elements: tail ? [p, ...l, c, f] : [p, ...l] })),
  );

/** Sections of a random tree: every machine hangs on a random trunk; trunk k hangs on an earlier one, at most four deep. */
const sections = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 4 }), fc.infiniteStream(fc.nat()))
  .chain(([machines, trunks, pick]) => {
    const depth: number[] = [];
    const trunkInto = Array.from({ length: trunks }, (_, k) => {
      const candidates = depth.flatMap((d, i) => (d < 3 ? [i] : []));
      const onBlower = k === 0 || candidates.length === 0 || pick.next().value! % 4 === 0;
      const parent = onBlower ? -1 : candidates[pick.next().value! % candidates.length]!;
      depth.push(parent < 0 ? 0 : depth[parent]! + 1);
      return parent < 0 ? 'blower' : `t${parent}`;
    });
    const used = new Set<string>();
    const leaves = Array.from({ length: Math.max(machines, trunks) }, (_, i) => {
      const t = i < trunks ? i : pick.next().value! % trunks;
      used.add(`t${t}`);
      return leaf(`m${i}`, `t${t}`);
    });
    return fc.tuple(...leaves, ...trunkInto.map((into, k) => trunk(`t${k}`, into, into === 'blower')));
  });

/** A falling curve, or one with a dip deep enough for three crossings. */
const chart = fc
  .record({
    p0: between(1200, 4500),
    q0: between(0.25, 0.9),
    dip: fc.oneof(fc.constant(0), between(0.45, 0.65)),
    n: between(1300, 3000),
    rho: between(1.1, 1.25),
    kind: fc.constantFrom('static', 'total'),
    grade: fc.constantFrom('AN1', 'AN2', 'AN3', 'AN4'),
    byEfficiency: fc.boolean(),
  })
  .map(({ p0, q0, dip, n, rho, kind, grade, byEfficiency }) => {
    const flows = Array.from({ length: 121 }, (_, i) => (i / 120) * q0);
    const pressure = flows.map((q) => [
      q,
      p0 * (1 - (q / q0) ** 2.2 - dip * Math.exp(-(((q / q0 - 0.4) / 0.045) ** 2))),
    ]);
    const power = flows.map((q) => [q, (p0 * q0 * (0.25 + 0.9 * (q / q0))) / 1.6]);
    const efficiency = flows.slice(1, -1).map((q, i) => [q, (q * pressure[i + 1]![1]!) / power[i + 1]![1]!]);
    return {
      kind: 'chart',
      speed_rpm: n,
      airDensity_kg_m3: rho,
      pressureKind: kind,
      accuracyGrade: grade,
      pressure,
      ...(byEfficiency ? { efficiency } : { shaftPower: power }),
    };
  });

export const randomJob = fc
  .record({
    site: fc.record({
      altitude_m: between(0, 2500),
      airTemperature_C: between(5, 40),
      relativeHumidity: between(0.1, 0.9),
    }),
    chart,
    belt: fc.boolean(),
    sixty: fc.boolean(),
    stated: fc.boolean(),
    outletArea_m2: between(0.03, 0.08),
    sections,
    discharge: fc.oneof(
      fc.constant([]),
      fc.tuple(pipe(0.2), fc.constant({ kind: 'exit', diameter_m: 0.2 })).map((x) => [...x]),
    ),
    serviceFactor: fc.constant(1),
  })
  .map(({ site, chart, belt, sixty, stated, outletArea_m2, sections, discharge, serviceFactor }) => ({
    format: 'blower-bench-job',
    version: 1,
    name: 'random shop',
    site,
    supply: { voltage_V: 400, lowestVoltage_V: 360, frequency_Hz: 50, phases: 3 },
    material: 'wood-dust',
    blowers: [
      {
        id: 'b',
        wheel: { family: 'radial', diameter_m: 0.4 },
        outletArea_m2,
        drive: belt ? { kind: 'belt', motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.09 } : { kind: 'direct' },
        ...(stated ? { runSpeed_rpm: chart.speed_rpm * 0.97 } : {}),
        motor: {
          ratedPower_W: 2200,
          speed_rpm: sixty ? 3420 : 2850,
          voltage_V: 400,
          phases: 3,
          frequency_Hz: sixty ? 60 : 50,
          serviceFactor,
        },
        evidence: [chart],
      },
    ],
    ductwork: { sections, discharge },
  }));
