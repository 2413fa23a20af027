import { z } from 'zod';
import { between, fraction, nonNegative, oneOf, positive } from '../fields.ts';
import { Element } from '../duct/elements/index.ts';
import { MATERIAL_NAMES } from '../duct/materials.ts';
import { FAMILY_NAMES } from '../fan/families.ts';
import { Readings } from '../readings/schema.ts';

/** The job document: everything the program knows. The one definition; types and JSON Schema derive from it. */

const id = z.string().min(1).max(200);
const text = z.string().max(2000);

export const Site = z.strictObject({
  altitude_m: between(-450, 9000, 'altitude', 'length').nullish(),
  airTemperature_C: between(-60, 200, 'air temperature', 'temperature').nullish(),
  relativeHumidity: fraction('relative humidity').nullish(),
  barometricPressure_Pa: between(
    20_000,
    120_000,
    'barometer',
    'pressure',
    'read at the place itself, not reduced to sea level',
  ).nullish(),
});

const Phases = z.union([z.literal(1), z.literal(3)]).meta({ label: 'phases' });

export const Supply = z.strictObject({
  voltage_V: positive('mains voltage', 'voltage').nullish(),
  lowestVoltage_V: positive('lowest voltage of the day', 'voltage').nullish(),
  frequency_Hz: between(10, 400, 'mains frequency', 'frequency').nullish(),
  phases: Phases.nullish(),
  voltageUnbalance: between(
    0,
    0.2,
    'voltage unbalance',
    'fraction',
    'of the three voltages: the largest step from their mean, over the mean',
  ).nullish(),
});

export const Drive = z.strictObject({
  kind: oneOf(['belt', 'direct'], 'drive'),
  motorPulleyDiameter_m: positive('motor pulley', 'length').nullish(),
  wheelPulleyDiameter_m: positive('wheel pulley', 'length').nullish(),
  efficiency: z.number().gt(0).lte(1).meta({ label: 'drive efficiency', quantity: 'fraction' }).nullish(),
});

const motorPlate = {
  kind: oneOf(['induction', 'universal', 'dc'], 'motor kind').nullish(),
  ratedPowerMeaning: oneOf(['shaft', 'input'], 'plate watts are').nullish(),
  speed_rpm: between(1, 200_000, 'plate speed', 'speed').nullish(),
  voltage_V: positive('plate voltage', 'voltage').nullish(),
  current_A: positive('plate current', 'current').nullish(),
  powerFactor: z.number().gt(0).lte(1).meta({ label: 'power factor', quantity: 'fraction' }).nullish(),
  efficiency: z.number().gt(0).lte(1).meta({ label: 'motor efficiency', quantity: 'fraction' }).nullish(),
  serviceFactor: between(0.5, 2, 'service factor', 'fraction').nullish(),
  phases: Phases.nullish(),
  frequency_Hz: between(10, 400, 'plate frequency', 'frequency').nullish(),
  idleCurrent_A: positive('amps with the belt off', 'current', 'sharpens what amps tell of the load').nullish(),
  rewound: z.boolean().meta({ label: 'rewound', help: 'then the plate is only a claim' }).nullish(),
  fedThrough: oneOf(['capacitor', 'inverter'], 'a three-phase motor on one phase gets the others through').nullish(),
  startsBy: oneOf(
    ['start-capacitor', 'run-capacitor', 'split-phase', 'shaded-pole'],
    'what gets a one-phase motor turning',
  ).nullish(),
};
export const Motor = z.strictObject({ ratedPower_W: positive('rated power', 'power'), ...motorPlate });

export const SupplyCable = z.strictObject({
  length_m: between(0, 5000, 'cable length', 'length', 'one way, from the board to the motor').nullish(),
  crossSection_m2: between(1e-7, 1e-3, 'cable cross-section', 'area', 'of one conductor').nullish(),
  metal: oneOf(['copper', 'aluminium'], 'cable metal').nullish(),
});

export const TestedWith = z.strictObject({ drive: Drive.nullish(), motor: Motor.nullish() });

/** Points `[flow m3/s, value]` of a curve; order does not matter, one value per flow. */
const Points = z.array(z.tuple([nonNegative('flow', 'flow'), z.number().gte(-1e6).lte(1e9)])).max(2000);

export const PressureKind = oneOf(['static', 'total'], 'pressure kind');

export const ChartEvidence = z.strictObject({
  kind: z.literal('chart'),
  speed_rpm: between(1, 200_000, 'chart speed', 'speed').nullish(),
  airDensity_kg_m3: between(0.1, 5, 'chart air density', 'density').nullish(),
  pressureKind: PressureKind.nullish(),
  accuracyGrade: oneOf(['AN1', 'AN2', 'AN3', 'AN4'], 'accuracy grade', 'ISO 13348').nullish(),
  pressure: Points.min(2),
  shaftPower: Points.nullish(),
  efficiency: Points.nullish(),
  photoId: text.nullish(),
  testedWith: TestedWith.nullish(),
});

export const RatedPointEvidence = z.strictObject({
  kind: z.literal('rated-point'),
  flow_m3_s: nonNegative('flow', 'flow', '0 is shut-off'),
  pressure_Pa: nonNegative('pressure', 'pressure', '0 is free delivery'),
  pressureKind: PressureKind.nullish(),
  speed_rpm: between(1, 200_000, 'speed', 'speed').nullish(),
  airDensity_kg_m3: between(0.1, 5, 'air density', 'density').nullish(),
  shaftPower_W: positive('shaft power there', 'power').nullish(),
  photoId: text.nullish(),
  testedWith: TestedWith.nullish(),
});

export const ReadingsEvidence = Readings.extend({
  testedWith: TestedWith.nullish(),
  photoId: text.nullish(),
  morePhotoIds: z.array(text.min(1)).max(20).meta({ label: 'photos of further sheets' }).nullish(),
});

export const WheelEvidence = z.strictObject({ kind: z.literal('wheel'), testedWith: TestedWith.nullish() });

export const Evidence = z.discriminatedUnion('kind', [
  ChartEvidence,
  ReadingsEvidence,
  RatedPointEvidence,
  WheelEvidence,
]);

export const Wheel = z.strictObject({
  family: oneOf(FAMILY_NAMES, 'wheel family'),
  diameter_m: positive('wheel diameter', 'length').nullish(),
  width_m: positive('wheel width', 'length').nullish(),
  inletDiameter_m: positive('inlet diameter', 'length').nullish(),
  bladeCount: z.int().gte(1).lte(500).meta({ label: 'blades' }).nullish(),
  safeTipSpeed_m_s: positive('safe tip speed', 'velocity').nullish(),
  mass_kg: positive('wheel mass', 'mass', 'for how long the motor takes to start it').nullish(),
});

export const Blower = z.strictObject({
  id,
  label: text.nullish(),
  price: z.strictObject({ amount: nonNegative('price'), currency: z.string().max(10) }).nullish(),
  wheel: Wheel,
  outletArea_m2: positive('outlet area', 'area').nullish(),
  drive: Drive,
  runSpeed_rpm: between(1, 200_000, 'run speed', 'speed').nullish(),
  motor: Motor,
  cable: SupplyCable.nullish(),
  platePhotoIds: z.array(text.min(1)).max(20).meta({ label: 'photos of its plates' }).nullish(),
  evidence: z.array(Evidence).min(1).max(50),
});

export const Pickup = z.strictObject({
  machine: text.nullish(),
  requiredFlow_m3_s: nonNegative('flow it needs', 'flow').nullish(),
  minimumVelocity_m_s: nonNegative('lowest speed of air', 'velocity').nullish(),
  material: oneOf(MATERIAL_NAMES, 'material').nullish(),
});

export const Section = z.strictObject({
  id,
  label: text.nullish(),
  into: id,
  minimumVelocity_m_s: nonNegative('lowest speed of air', 'velocity').nullish(),
  pickup: Pickup.nullish(),
  gate: z.strictObject({ closedLeakArea_m2: nonNegative('leak of the closed gate', 'area').nullish() }).nullish(),
  elements: z.array(Element).max(500),
});

export const Ductwork = z.strictObject({
  sections: z.array(Section).min(1).max(5000),
  discharge: z.array(Element).max(500).nullish(),
  exhaust: oneOf(['outdoors', 'returned'], 'where the air goes').nullish(),
});

export const GatePlan = z.strictObject({
  name: text.min(1),
  open: z.array(id).max(5000),
  required: z.boolean().nullish(),
});

export const Requirement = z.strictObject({
  confidence: z.number().gt(0.5).lt(1).meta({ label: 'confidence wanted', quantity: 'fraction' }).nullish(),
  motorReserve: z.number().gte(0).lt(1).meta({ label: 'motor reserve', quantity: 'fraction' }).nullish(),
});

export const Job = z.strictObject({
  format: z.literal('blower-bench-job'),
  version: z.literal(1),
  name: text,
  site: Site,
  supply: Supply,
  material: oneOf(MATERIAL_NAMES, 'material'),
  blowers: z.array(Blower).max(50),
  ductwork: Ductwork,
  gatePlans: z.array(GatePlan).max(200).nullish(),
  requirement: Requirement.nullish(),
  dustRate_kg_h: nonNegative('dust collected', 'mass-flow').nullish(),
  asTyped: z.record(z.string().max(500), z.string().max(500)).nullish(),
});
