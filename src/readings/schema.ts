import { z } from 'zod';
import { between, fraction, nonNegative, oneOf, positive } from '../fields.ts';
import { SURFACE_NAMES } from '../pipe/surfaces.ts';

/** Methods of finding the flow in a test pipe; each has a file of its own in `methods/`. */
export const METHOD_NAMES = [
  'orifice-cap',
  'conical-inlet',
  'bell-mouth',
  'orifice-in-pipe',
  'pitot-traverse',
  'vane-traverse',
  'bag-fill',
] as const;

/** One standard uncertainty each; what is left out takes the stated default of home-made instruments. */
export const Uncertainty = z.strictObject({
  pressure_Pa: nonNegative('pressure reading', 'pressure').nullish(),
  speed_rpm: nonNegative('speed reading', 'speed').nullish(),
  current_A: nonNegative('current reading', 'current').nullish(),
  flowRelative: z.number().gte(0).lte(1).meta({ label: 'flow, relative', quantity: 'fraction' }).nullish(),
});

/** The tube as it stands, where it is no upright tube of water; rows still hold pressures [Pa]. */
export const TubeShape = z.strictObject({
  angle_deg: between(
    2,
    90,
    'tube leans, from level',
    'angle',
    '90 is upright; below 5 the level can hardly be read',
  ).nullish(),
  liquidDensity_kg_m3: between(500, 14_000, 'liquid in the tube', 'density', 'water 998, paraffin about 800').nullish(),
  tubeOverPot: z
    .number()
    .gte(0)
    .lte(0.5)
    .meta({
      label: 'area of the tube over that of its pot',
      quantity: 'fraction',
      help: '0 where both legs are counted, or the pot is wide',
    })
    .nullish(),
});

export const Rig = z.strictObject({
  method: oneOf(METHOD_NAMES, 'method'),
  side: oneOf(['inlet', 'outlet'], 'side of the blower').nullish(),
  pipeDiameter_m: positive('test pipe, inside', 'length').nullish(),
  pipeOutsideDiameter_m: positive('test pipe, outside', 'length', 'for the drawing of the cap').nullish(),
  hubDiameter_m: positive('hub', 'length', 'a hub or a motor in the middle, where the air is measured').nullish(),
  width_m: positive('channel width', 'length').nullish(),
  height_m: positive('channel height', 'length').nullish(),
  tap: oneOf(['far', 'near'], 'pressure tap').nullish(),
  throatDiameter_m: positive('throat', 'length').nullish(),
  tappings: oneOf(['corner', 'flange', 'D-and-half-D'], 'tappings').nullish(),
  bagVolume_m3: positive('bag volume', 'volume').nullish(),
  lengthToTap_m: nonNegative('free end to tap', 'length').nullish(),
  lengthTapToBlower_m: nonNegative('tap to blower', 'length').nullish(),
  straightBefore_m: nonNegative('straight pipe before the measuring place', 'length').nullish(),
  straightAfter_m: nonNegative('straight pipe after the measuring place', 'length').nullish(),
  anemometerDiameter_m: positive('head of the anemometer', 'length').nullish(),
  tube: TubeShape.nullish(),
  surface: oneOf(SURFACE_NAMES, 'surface of the test pipe').nullish(),
  sameDrive: z.boolean().meta({ label: "turned by the job's own motor and drive" }).nullish(),
  uncertainty: Uncertainty.nullish(),
});

export const Row = z.strictObject({
  staticPressure_Pa: z.number().gte(-200_000).lte(200_000).meta({ label: 'pressure at the tap', quantity: 'pressure' }),
  speed_rpm: between(1, 200_000, 'speed', 'speed').nullish(),
  current_A: positive('current', 'current').nullish(),
  voltage_V: positive('voltage', 'voltage').nullish(),
  inputPower_W: positive('input power', 'power').nullish(),
  orificeDiameter_m: nonNegative('hole diameter', 'length').nullish(),
  throatPressure_Pa: z
    .number()
    .gte(-200_000)
    .lte(200_000)
    .meta({ label: 'pressure at the throat', quantity: 'pressure' })
    .nullish(),
  differentialPressure_Pa: z
    .number()
    .gte(-200_000)
    .lte(200_000)
    .meta({ label: 'pressure across the orifice', quantity: 'pressure' })
    .nullish(),
  velocityPressures_Pa: z.array(nonNegative('velocity pressure', 'pressure')).max(500).nullish(),
  velocities_m_s: z.array(nonNegative('velocity', 'velocity')).max(500).nullish(),
  fillTime_s: positive('time to fill', 'time').nullish(),
});

export const Readings = z.strictObject({
  kind: z.literal('readings'),
  rig: Rig,
  air: z
    .strictObject({
      temperature_C: between(-60, 200, 'air temperature', 'temperature').nullish(),
      barometricPressure_Pa: between(20_000, 120_000, 'barometer', 'pressure').nullish(),
      relativeHumidity: fraction('relative humidity').nullish(),
    })
    .nullish(),
  rows: z.array(Row).max(500),
});

export type Readings = z.infer<typeof Readings>;
export type Rig = z.infer<typeof Rig>;
export type Row = z.infer<typeof Row>;
export type Method = Rig['method'];
