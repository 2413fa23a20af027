import type { Method } from './schema.ts';

/**
 * How far home-made instruments are off, one standard deviation each, and on what grounds. Nothing else in this folder holds a doubt.
 * Where a source gives limits they are taken as 95 % limits (divided by 2); ± limits of a tape, a rule or a hand-cut edge as a
 * rectangular distribution (divided by √3). Source: JCGM 100:2008 (GUM) 4.3 for the conversions; grounds in each row.
 */
export type Doubt = { label: string; sd: number; unit: '1' | 's' | 'm'; ground: string };

/** Doubt of the flow itself, shared by all rows of a rig: coefficient, edge, shape of the device, profile of the air. */
export const FLOW_DOUBT: Record<Method, Doubt> = {
  'orifice-cap': {
    label: 'flow through the hole',
    sd: 0.025,
    unit: '1',
    ground: 'coefficient 1 %, hand-cut edge ± 3 %, hole set ± 0.5 mm on 75 mm',
  },
  'conical-inlet': { label: 'flow through the cone', sd: 0.025, unit: '1', ground: 'home-made cone ± 4–5 % at 95 %' },
  'bell-mouth': {
    label: 'flow through the bell-mouth',
    sd: 0.025,
    unit: '1',
    ground: 'home-made rounding ± 4–5 % at 95 %',
  },
  'orifice-in-pipe': {
    label: 'flow through the orifice plate',
    sd: 0.02,
    unit: '1',
    ground: 'ISO 5167-2 and home assembly',
  },
  'pitot-traverse': {
    label: 'mean of the traverse',
    sd: 0.035,
    unit: '1',
    ground: 'between ISO 3966 (± 2 %) and a short pipe (± 10–15 %)',
  },
  'vane-traverse': { label: 'mean of the anemometer', sd: 0.05, unit: '1', ground: 'in real ducts ± 10–15 % at 95 %' },
  'bag-fill': { label: 'volume of the bag', sd: 0.05, unit: '1', ground: '± 10 % at a fill of 10 s' },
};

export const DOUBTS = {
  outletCap: {
    label: 'flow through a cap on the outlet',
    sd: 0.045,
    unit: '1',
    ground: 'swirl and uneven speed from the blower: ± 8–10 % at 95 %',
  },
  hole: { label: 'diameter of one hole', sd: 0.0003, unit: 'm', ground: 'rule ± 0.5 mm' },
  openEnd: {
    label: 'entry loss of a plain pipe end',
    sd: 0.12,
    unit: '1',
    ground: 'handbooks give 0.72–1.0 of the velocity pressure',
  },
  openEndNear: {
    label: 'entry loss of a plain pipe end, tap near the end',
    sd: 0.8,
    unit: '1',
    ground: 'so near the end the air still contracts: up to 3.9 velocity pressures instead of 1.9',
  },
  manometerScale: {
    label: 'manometer, all readings together',
    sd: 0.008,
    unit: '1',
    ground: 'tilt of the board, density of the water',
  },
  manometerShare: { label: 'manometer, one reading', sd: 0.005, unit: '1', ground: 'swinging level' },
  airDensity: { label: 'air at the test', sd: 0.005, unit: '1', ground: '± 1 °C, ± 2 hPa' },
  pipeDiameter: { label: 'inside of the test pipe', sd: 0.005, unit: '1', ground: 'tape' },
  friction: { label: 'friction of the test pipe', sd: 0.3, unit: '1', ground: 'roughness and joints' },
  frictionNear: {
    label: 'friction of the test pipe, tap near the cap',
    sd: 2,
    unit: '1',
    ground: 'the length from tap to blower is not given and may be several diameters more',
  },
  speed: { label: 'speed of a row', sd: 0.0025, unit: '1', ground: 'tachometer or sound, 0.15–0.5 %' },
  speedUnmeasured: { label: 'speed of a row, not measured', sd: 0.004, unit: '1', ground: 'slip changes with load' },
  vanePoint: { label: 'anemometer, one point', sd: 0.02, unit: '1', ground: 'instrument ± 2–5 % in good hands' },
  bagTime: { label: 'time of one fill', sd: 0.2, unit: 's', ground: 'reaction at both ends' },
  clampScale: { label: 'clamp meter, all readings together', sd: 0.015, unit: '1', ground: '± 3 % at 95 %' },
  clampReading: { label: 'clamp meter, one reading', sd: 0.005, unit: '1', ground: 'last digit, drift of the load' },
  wattScale: { label: 'watt meter, all readings together', sd: 0.012, unit: '1', ground: '± 1–3 % at 95 %' },
  wattReading: {
    label: 'watt meter, one reading',
    sd: 0.012,
    unit: '1',
    ground: 'counting flashes, drift of the load',
  },
  voltScale: { label: 'volt meter, all readings together', sd: 0.01, unit: '1', ground: 'hand-held meter ± 1–2 %' },
  voltReading: { label: 'volt meter, one reading', sd: 0.005, unit: '1', ground: 'drift of the mains' },
} as const satisfies Record<string, Doubt>;

/** Eye on a water tube: ± 0.5 mm on each of two legs [Pa]. */
const EYE_Pa = 4;
/** Steps people read to: whole pascals and their multiples, and millimetres of water [Pa]. */
const STEPS_Pa = [50, 5 * 9.80665, 25, 2 * 9.80665, 20, 10, 9.80665, 5, 2, 1];

/**
 * Standard deviation of one pressure reading [Pa]: the step it was read to, the eye, and 0.5 % of the reading.
 * @param stepOfReadings  from `readingStep` over all readings of one manometer [Pa]
 * @param stretch         pressure of a length on this tube over that of upright water [-]: a leaning tube is read more finely
 */
export const pressureReadingSd = (reading_Pa: number, stepOfReadings: number, stretch = 1): number =>
  Math.hypot(stepOfReadings / Math.sqrt(12), stretch * EYE_Pa, DOUBTS.manometerShare.sd * reading_Pa);

/** The coarsest step [Pa] that all readings are whole multiples of; 1 where they are few or odd. */
export function readingStep(readings_Pa: readonly number[]): number {
  const told = readings_Pa.filter((p) => p !== 0).map(Math.abs);
  if (told.length < 3) return 1;
  const fits = (step: number): boolean =>
    told.every((p) => Math.abs(p - step * Math.round(p / step)) <= 1e-6 * p + 0.005 * step);
  return STEPS_Pa.find((step) => fits(step)) ?? 1;
}
