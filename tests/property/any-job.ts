import fc from 'fast-check';
import { FAMILY_NAMES } from '../../src/fan/families.ts';
import { MATERIAL_NAMES } from '../../src/duct/index.ts';
import { METHOD_NAMES } from '../../src/readings/index.ts';

/** Jobs as people leave them: anything optional may be missing, evidence of every kind, sizes from toy to mill. */

/** Evenly spread, ends included, now and then next to nothing. */
const number = (min: number, max: number) =>
  fc.oneof(
    { weight: 40, arbitrary: fc.nat(10_000).map((i) => min + ((max - min) * i) / 10_000) },
    { weight: 1, arbitrary: fc.constant(Math.max(min, Math.min(max, 1e-12))) },
  );
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 3 });

const curve = (top: number) =>
  fc
    .uniqueArray(number(0, 2), { minLength: 2, maxLength: 12, selector: (q) => Math.round(q * 1e4) })
    .chain((flows) => fc.tuple(...flows.map((q) => fc.tuple(fc.constant(q), number(0, top)))));

const drive = fc.oneof(
  fc.record({ kind: fc.constant('direct' as const) }),
  fc.record({
    kind: fc.constant('belt' as const),
    motorPulleyDiameter_m: maybe(number(0.05, 0.3)),
    wheelPulleyDiameter_m: maybe(number(0.05, 0.3)),
    efficiency: maybe(number(0.7, 1)),
  }),
);
const motor = fc.record({
  kind: maybe(fc.constantFrom('induction', 'universal', 'dc')),
  ratedPower_W: number(50, 30_000),
  ratedPowerMeaning: maybe(fc.constantFrom('shaft', 'input')),
  speed_rpm: maybe(number(500, 30_000)),
  voltage_V: maybe(number(12, 690)),
  current_A: maybe(number(0.2, 90)),
  powerFactor: maybe(number(0.3, 1)),
  efficiency: maybe(number(0.3, 0.97)),
  serviceFactor: maybe(number(1, 1.25)),
  phases: maybe(fc.constantFrom(1, 3)),
  frequency_Hz: maybe(fc.constantFrom(50, 60)),
  idleCurrent_A: maybe(number(0.01, 0.3)),
  rewound: maybe(fc.boolean()),
});

const row = fc.record({
  staticPressure_Pa: number(-3000, 3000),
  speed_rpm: maybe(number(500, 4000)),
  current_A: maybe(number(0.1, 30)),
  voltage_V: maybe(number(100, 450)),
  inputPower_W: maybe(number(20, 20_000)),
  orificeDiameter_m: maybe(number(0, 0.08)),
  throatPressure_Pa: maybe(number(0, 2000)),
  differentialPressure_Pa: maybe(number(0, 2000)),
  velocityPressures_Pa: maybe(fc.array(number(0, 500), { maxLength: 6 })),
  velocities_m_s: maybe(fc.array(number(0, 40), { maxLength: 6 })),
  fillTime_s: maybe(number(0.5, 60)),
});
const readings = fc.record({
  kind: fc.constant('readings' as const),
  rig: fc.record({
    method: fc.constantFrom(...METHOD_NAMES),
    side: maybe(fc.constantFrom('inlet', 'outlet')),
    pipeDiameter_m: maybe(number(0.1, 0.3)),
    throatDiameter_m: maybe(number(0.08, 0.2)),
    tap: maybe(fc.constantFrom('far', 'near')),
    tappings: maybe(fc.constantFrom('corner', 'flange', 'D-and-half-D')),
    bagVolume_m3: maybe(number(0.05, 3)),
    sameDrive: maybe(fc.boolean()),
  }),
  air: maybe(
    fc.record({ temperature_C: maybe(number(-10, 45)), barometricPressure_Pa: maybe(number(70_000, 103_000)) }),
  ),
  rows: fc.array(row, { maxLength: 6 }),
  testedWith: maybe(fc.record({ drive: maybe(drive), motor: maybe(motor) })),
});
const speed = maybe(number(500, 4000));
const density = maybe(number(0.8, 1.3));
const pressureKind = maybe(fc.constantFrom('static', 'total'));
const evidence = fc.oneof(
  fc.record({
    kind: fc.constant('chart' as const),
    speed_rpm: speed,
    airDensity_kg_m3: density,
    pressureKind,
    accuracyGrade: maybe(fc.constantFrom('AN1', 'AN2', 'AN3', 'AN4')),
    pressure: curve(5000),
    shaftPower: maybe(curve(6000)),
    efficiency: maybe(curve(0.8)),
    photoId: maybe(fc.constantFrom('one', 'two')),
  }),
  fc.record({
    kind: fc.constant('rated-point' as const),
    flow_m3_s: number(0, 2),
    pressure_Pa: number(0, 5000),
    pressureKind,
    speed_rpm: speed,
    airDensity_kg_m3: density,
  }),
  readings,
  fc.record({ kind: fc.constant('wheel' as const) }),
);

const blower = (id: string) =>
  fc.record({
    id: fc.constant(id),
    price: maybe(fc.record({ amount: number(0, 1e5), currency: fc.constant('KES') })),
    wheel: fc.record({
      family: fc.constantFrom(...FAMILY_NAMES),
      diameter_m: maybe(number(0.08, 1)),
      inletDiameter_m: maybe(number(0.05, 0.5)),
      safeTipSpeed_m_s: maybe(number(20, 120)),
      mass_kg: maybe(number(0.1, 200)),
    }),
    outletArea_m2: maybe(number(0.002, 0.3)),
    drive,
    runSpeed_rpm: maybe(number(300, 20_000)),
    motor,
    cable: maybe(
      fc.record({
        length_m: maybe(number(0, 500)),
        crossSection_m2: maybe(number(2e-7, 5e-5)),
        metal: maybe(fc.constantFrom('copper', 'aluminium')),
      }),
    ),
    evidence: fc.array(evidence, { minLength: 1, maxLength: 4 }),
  });

const diameter = number(0.04, 0.4);
const element = fc.oneof(
  fc.record({
    kind: fc.constant('entry'),
    entry: maybe(fc.constantFrom('plain', 'flanged', 'bell-mouth')),
    diameter_m: diameter,
  }),
  fc.record({
    kind: fc.constant('pipe'),
    surface: maybe(fc.constantFrom('flexible-hose', 'drain-pipe', 'cement')),
    length_m: number(0, 30),
    diameter_m: diameter,
    roughness_m: maybe(number(0, 0.002)),
    rise_m: maybe(number(-5, 5)),
  }),
  fc.record({
    kind: fc.constant('fitting'),
    fitting: fc.constantFrom('elbow-90', 'mitre-90', 'hose-bend-90', 'inlet-swirl'),
    diameter_m: diameter,
    k: maybe(number(0, 4)),
    count: maybe(fc.nat(5)),
  }),
  fc.record({ kind: fc.constant('branch-entry'), angle_deg: maybe(number(0, 90)), diameter_m: diameter }),
  fc.record({ kind: fc.constant('gate'), diameter_m: diameter, opening: maybe(number(0.1, 1)) }),
  fc.record({ kind: fc.constant('reducer'), fromDiameter_m: diameter, toDiameter_m: diameter }),
  fc.record({
    kind: fc.constant('cyclone'),
    inletDiameter_m: diameter,
    bodyDiameter_m: maybe(number(0.3, 1)),
    k: maybe(number(0, 10)),
  }),
  fc.record({
    kind: fc.constant('filters'),
    count: fc.integer({ min: 1, max: 12 }),
    each: fc.record({
      cleanFlow_m3_s: number(0.01, 0.5),
      cleanPressure_Pa: number(0, 500),
      loadedPressure_Pa: maybe(number(500, 3000)),
      exponent: maybe(number(0.8, 2)),
    }),
    airDensity_kg_m3: density,
  }),
);
const section = (id: string, into: string, machine: boolean) =>
  fc.record({
    id: fc.constant(id),
    into: fc.constant(into),
    minimumVelocity_m_s: maybe(number(0, 30)),
    pickup: machine
      ? fc.record({
          machine: maybe(fc.constant(`machine ${id}`)),
          requiredFlow_m3_s: maybe(number(0, 1)),
          material: maybe(fc.constantFrom(...MATERIAL_NAMES)),
        })
      : fc.constant(null),
    gate: maybe(fc.record({ closedLeakArea_m2: maybe(number(0, 1e-3)) })),
    elements: fc.array(element, { maxLength: 5 }),
  });
const ductwork = fc.integer({ min: 1, max: 4 }).chain((machines) =>
  fc.record({
    sections: fc.tuple(
      ...Array.from({ length: machines }, (_, i) => section(`m${i}`, i % 2 ? 'blower' : 'main', true)),
      section('main', 'blower', false),
    ),
    discharge: maybe(fc.array(element, { maxLength: 3 })),
    exhaust: maybe(fc.constantFrom('outdoors', 'returned')),
  }),
);

export const anyJob = fc.record({
  format: fc.constant('blower-bench-job'),
  version: fc.constant(1),
  name: fc.constant('any shop'),
  site: fc.record({
    altitude_m: maybe(number(0, 4000)),
    airTemperature_C: maybe(number(-20, 60)),
    relativeHumidity: maybe(number(0, 1)),
    barometricPressure_Pa: maybe(number(60_000, 104_000)),
  }),
  supply: fc.record({
    voltage_V: maybe(fc.constantFrom(230, 400)),
    lowestVoltage_V: maybe(number(150, 229)),
    voltageUnbalance: maybe(number(0, 0.2)),
    frequency_Hz: maybe(fc.constantFrom(50, 60)),
    phases: maybe(fc.constantFrom(1, 3)),
  }),
  material: fc.constantFrom(...MATERIAL_NAMES),
  blowers: fc.tuple(blower('a'), blower('b')),
  ductwork,
  requirement: maybe(fc.record({ confidence: maybe(number(0.6, 0.99)), motorReserve: maybe(number(0, 0.5)) })),
});
