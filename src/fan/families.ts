/** Wheel families by the shape of their blades. Source: definition (the job format's names). */
export const FAMILY_NAMES = [
  'radial',
  'radial-tip',
  'backward-inclined',
  'backward-curved',
  'forward-curved',
  'axial',
  'through-flow-vacuum',
  'unknown',
] as const;

/** One of `FAMILY_NAMES`. */
export type Family = (typeof FAMILY_NAMES)[number];

/** A guess with its spread: centre, and one standard deviation of its logarithm [-]. */
export type LogPrior = { centre: number; lnSd: number };
/** Low and high end. */
export type Range = readonly [low: number, high: number];
/** Points of a shape, x rising from 0 to 1. */
export type Knots = readonly (readonly [x: number, value: number])[];

/** What a wheel's family says about a blower before anything is measured. Dimensionless unless said; u is the tip speed. */
export type FamilyShape = {
  label: string;
  /** how to know the wheel by looking at it */
  lookFor: string;
  /** p_total/(ρ/2·u²) at best efficiency */
  psiAtBest: Range;
  /** Q/(π/4·D²·u) at best efficiency */
  phiAtBest: Range;
  /** total efficiency at the best point, as handbooks have it for new fans */
  peakTotalEfficiencyRange: Range;
  /** middle of that range; a small old blower stays somewhat below */
  peakTotalEfficiency: number;
  /** range and middle of where the best point lies, as a share of free delivery */
  bestFlowShare: Range;
  bestAt: number;
  /** greatest total efficiency along the family's shapes over that at `bestAt`: handbooks print both as ranges of their own */
  peakOverBest: number;
  /** tip speed [m/s]: below the low figure no doubt, above the high one no wheel of this family should turn */
  tipSpeedLimit_m_s: Range;
  /** shaft power keeps rising up to free delivery: the motor's worst is everything open */
  overloading: boolean;
  /** pressure dips left of its peak (stall): several operating points are possible */
  stallDip: boolean;
  /** the motor speeds up when the flow is throttled: speed is not a constant of the curve */
  speedRisesWhenThrottled: boolean;
  /** `[share of free delivery, static pressure over its shut-off value]`: 1 at 0, 0 at 1 */
  staticShape: Knots;
  /** `[share of free delivery, shaft power over its greatest value]` */
  powerShape: Knots;
  /** static p/(ρ/2·u²) at shut-off */
  psiShutOff: LogPrior;
  /** Q/(π/4·D²·u) at free delivery (static pressure zero) */
  phiFree: LogPrior;
  /** smooth deviation from the shape: standard deviation relative to shut-off pressure, and length as a share of free delivery */
  deviation: { sd: number; length: number };
  source: string;
  grade: 'memory';
};

/**
 * Smooth shapes drawn to carry each family's features (hump, dip, overloading), not measured data. The curve's own
 * deviation and every piece of evidence are free to bend them. At 0, 0.1 … 1 of free delivery: pressure over shut-off, power over power at free delivery.
 */
const SHAPES = {
  backward: {
    pressure: [1, 1.0098, 1.0064, 0.9856, 0.9432, 0.875, 0.7768, 0.6444, 0.4736, 0.2602, 0],
    power: [0.45, 0.6265, 0.776, 0.8985, 0.994, 1.0625, 1.104, 1.1185, 1.106, 1.0665, 1],
  },
  radial: {
    pressure: [1, 1.017, 1.008, 0.973, 0.912, 0.825, 0.712, 0.573, 0.408, 0.217, 0],
    power: [0.25, 0.325, 0.4, 0.475, 0.55, 0.625, 0.7, 0.775, 0.85, 0.925, 1],
  },
  forward: {
    pressure: [1, 0.96525, 0.96, 0.96775, 0.972, 0.95625, 0.904, 0.79875, 0.624, 0.36325, 0],
    power: [0.22, 0.2548, 0.2992, 0.3532, 0.4168, 0.49, 0.5728, 0.6652, 0.7672, 0.8788, 1],
  },
  // Dip at 40–60 % of free delivery, steep beyond; power highest when shut, flat or falling with flow.
  axial: {
    pressure: [1, 0.9, 0.8, 0.72, 0.68, 0.68, 0.71, 0.7, 0.6, 0.36, 0],
    power: [1.35, 1.27, 1.2, 1.15, 1.12, 1.11, 1.12, 1.13, 1.12, 1.07, 1],
  },
  vacuum: {
    pressure: [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0],
    power: [0.62, 0.658, 0.696, 0.734, 0.772, 0.81, 0.848, 0.886, 0.924, 0.962, 1],
  },
} as const;

type Shape = { pressure: readonly number[]; power: readonly number[] };

/** Radial tips sit between a paddle and a backward wheel; a wheel nobody could name is the mean of what is found in scrap. */
const mean = (...shapes: Shape[]): Shape => {
  const average = (pick: (s: Shape) => readonly number[]) =>
    pick(shapes[0]!).map((_, i) => shapes.reduce((sum, s) => sum + pick(s)[i]!, 0) / shapes.length);
  return { pressure: average((s) => s.pressure), power: average((s) => s.power) };
};

type Handbook = Pick<
  FamilyShape,
  | 'label'
  | 'lookFor'
  | 'psiAtBest'
  | 'phiAtBest'
  | 'peakTotalEfficiencyRange'
  | 'bestFlowShare'
  | 'tipSpeedLimit_m_s'
  | 'overloading'
  | 'stallDip'
> & {
  shape: Shape;
  /** static over total pressure at the best point; from the static and total efficiencies that one source gives */
  staticShareAtBest: number;
  speedRisesWhenThrottled?: boolean;
  doubt?: Partial<{ psi: number; phi: number; deviation: number; length: number }>;
};

/**
 * From handbook ranges at best efficiency to the priors of a curve in static pressure.
 * φ at free delivery = φ at best ÷ where best lies; ψ static at shut-off = ψ total at best × static share ÷ shape there.
 * Centres of ranges are geometric means. Spreads are those that held their promise on simulated test rigs: 16 % on ψ or what
 * the handbook range needs as a 90 % range, a factor on φ that leaves it almost free, deviation 0.10 over 0.30 of the flow.
 */
function facts({
  shape,
  staticShareAtBest,
  doubt = {},
  speedRisesWhenThrottled = false,
  ...handbook
}: Handbook): FamilyShape {
  const bestAt = centre(handbook.bestFlowShare);
  const topPower = Math.max(...shape.power);
  return {
    ...handbook,
    speedRisesWhenThrottled,
    peakTotalEfficiency: (handbook.peakTotalEfficiencyRange[0] + handbook.peakTotalEfficiencyRange[1]) / 2,
    bestAt,
    peakOverBest: peakOverBest(shape, bestAt, staticShareAtBest),
    staticShape: knots(shape.pressure),
    powerShape: knots(shape.power.map((p) => p / topPower)),
    psiShutOff: {
      centre: (centre(handbook.psiAtBest) * staticShareAtBest) / at(shape.pressure, bestAt),
      lnSd: doubt.psi ?? Math.max(0.16, spread90(handbook.psiAtBest)),
    },
    phiFree: { centre: centre(handbook.phiAtBest) / bestAt, lnSd: doubt.phi ?? 0.6 },
    deviation: { sd: doubt.deviation ?? 0.1, length: doubt.length ?? 0.3 },
    source: 'handbook ranges after Eck, Bleier, Cory and the Cordier diagram; shapes drawn for their features',
    grade: 'memory',
  };
}

const knots = (values: readonly number[]): Knots => values.map((value, i) => [i / 10, value] as const);
const centre = ([low, high]: Range) => Math.sqrt(low * high);
const spread90 = ([low, high]: Range) => Math.log(high / low) / (2 * 1.645);
const at = (shape: readonly number[], x: number) => {
  const i = Math.min(Math.floor(x * 10), 9);
  return shape[i]! + (x * 10 - i) * (shape[i + 1]! - shape[i]!);
};

/** Total efficiency x·p_total/P along the shapes, velocity pressure growing with the square of the flow. Source: definition. */
function peakOverBest(shape: Shape, bestAt: number, staticShare: number): number {
  const velocity = (at(shape.pressure, bestAt) * (1 - staticShare)) / staticShare / bestAt ** 2;
  const efficiency = (x: number) => (x * (at(shape.pressure, x) + velocity * x * x)) / at(shape.power, x);
  return Math.max(...Array.from({ length: 101 }, (_, i) => efficiency(i / 100))) / efficiency(bestAt);
}

/** One row per family; `fixtures/reference/fan_shapes.json` has the ranges with their sources. */
export const FAMILY: Readonly<Record<Family, FamilyShape>> = {
  radial: facts({
    label: 'radial (paddle)',
    lookFor: 'few flat blades standing straight out, like a paddle wheel',
    psiAtBest: [1.1, 1.5],
    phiAtBest: [0.02, 0.15],
    peakTotalEfficiencyRange: [0.5, 0.65],
    bestFlowShare: [0.3, 0.45],
    tipSpeedLimit_m_s: [60, 130],
    overloading: true,
    stallDip: false,
    shape: SHAPES.radial,
    staticShareAtBest: 0.6 / 0.65,
  }),
  'radial-tip': facts({
    label: 'radial-tip',
    lookFor: 'blades curved at the root that end straight out',
    psiAtBest: [1.1, 1.6],
    phiAtBest: [0.05, 0.25],
    peakTotalEfficiencyRange: [0.65, 0.75],
    bestFlowShare: [0.35, 0.5],
    tipSpeedLimit_m_s: [60, 120],
    overloading: true,
    stallDip: false,
    // nearer to a paddle: blades that end straight out give the air as much at every flow
    shape: mean(SHAPES.radial, SHAPES.radial, SHAPES.backward),
    staticShareAtBest: 0.73 / 0.75,
  }),
  'backward-inclined': facts({
    label: 'backward-inclined',
    lookFor: 'few flat blades that lean away from the turning direction',
    psiAtBest: [0.8, 1.1],
    phiAtBest: [0.08, 0.25],
    peakTotalEfficiencyRange: [0.75, 0.84],
    bestFlowShare: [0.5, 0.65],
    tipSpeedLimit_m_s: [60, 100],
    overloading: false,
    stallDip: false,
    shape: SHAPES.backward,
    staticShareAtBest: 0.82 / 0.85,
  }),
  'backward-curved': facts({
    label: 'backward-curved',
    lookFor: 'few curved blades that lean away from the turning direction',
    psiAtBest: [0.8, 1.1],
    phiAtBest: [0.08, 0.25],
    peakTotalEfficiencyRange: [0.78, 0.85],
    bestFlowShare: [0.5, 0.65],
    tipSpeedLimit_m_s: [60, 105],
    overloading: false,
    stallDip: false,
    shape: SHAPES.backward,
    staticShareAtBest: 0.82 / 0.85,
  }),
  'forward-curved': facts({
    label: 'forward-curved (squirrel cage)',
    lookFor: 'a drum of many shallow cups that lean into the turning direction',
    psiAtBest: [1.8, 2.8],
    phiAtBest: [0.3, 1.2],
    peakTotalEfficiencyRange: [0.55, 0.71],
    bestFlowShare: [0.4, 0.5],
    tipSpeedLimit_m_s: [20, 40],
    overloading: true,
    stallDip: true,
    shape: SHAPES.forward,
    staticShareAtBest: 0.63 / 0.71,
    doubt: { deviation: 0.15, length: 0.2 },
  }),
  axial: facts({
    label: 'axial (propeller in a ring or tube)',
    lookFor: 'a propeller: the air goes straight through along the shaft',
    psiAtBest: [0.1, 0.6],
    phiAtBest: [0.15, 0.4],
    peakTotalEfficiencyRange: [0.65, 0.85],
    bestFlowShare: [0.7, 0.9],
    tipSpeedLimit_m_s: [60, 120],
    overloading: false,
    stallDip: true,
    shape: SHAPES.axial,
    // all air leaves through the wheel's own circle, so the velocity pressure there is φ²: 0.06 of 0.24
    staticShareAtBest: 0.75,
    doubt: { deviation: 0.15, length: 0.2 },
  }),
  'through-flow-vacuum': facts({
    label: 'vacuum-cleaner motor',
    lookFor: 'a thin closed wheel on a fast brushed motor that the sucked air cools',
    psiAtBest: [1.0, 1.4],
    phiAtBest: [0.005, 0.03],
    peakTotalEfficiencyRange: [0.35, 0.55],
    bestFlowShare: [0.4, 0.55],
    tipSpeedLimit_m_s: [100, 200],
    overloading: true,
    stallDip: false,
    speedRisesWhenThrottled: true,
    shape: SHAPES.vacuum,
    staticShareAtBest: 1,
    // the straight line holds the rise in speed of 20–40 % towards shut-off, and one or two stages are not told apart
    doubt: { psi: 0.45 },
  }),
  // Anything a scrap market sells in a scroll; the tip speed is that of the weakest family.
  unknown: facts({
    label: 'not known',
    lookFor: 'cannot be seen',
    psiAtBest: [0.8, 2.8],
    phiAtBest: [0.02, 1.2],
    peakTotalEfficiencyRange: [0.5, 0.85],
    bestFlowShare: [0.3, 0.65],
    tipSpeedLimit_m_s: [20, 40],
    overloading: true,
    stallDip: false,
    shape: mean(SHAPES.radial, SHAPES.backward, SHAPES.forward),
    staticShareAtBest: 0.92,
    doubt: { psi: 0.32, phi: 0.9, deviation: 0.17 },
  }),
};
