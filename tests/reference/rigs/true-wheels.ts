/** Families of true wheels, and how their numbers spread between wheels that look alike. */
export const TRUE_FAMILIES = [
  'radial',
  'radial-tip',
  'backward-inclined',
  'backward-curved',
  'forward-curved',
  'axial',
  'through-flow-vacuum',
] as const;
export type TrueFamily = (typeof TRUE_FAMILIES)[number];

export type Range = readonly [number, number];
export type Wheel = {
  diameter_m: Range;
  /** share of the tip speed the air takes up at no flow, and blade angle against the direction opposite to rotation [°] */
  slip: Range;
  bladeAngle_deg: Range;
  /** D/(4·b): how fast the air leaves a narrow wheel */
  narrow: Range;
  /** flow the blades are made for, relative to the flow at which ψ_th of a radial wheel of this width would be used up */
  design: Range;
  friction: Range;
  shock: Range;
  /** share of the shock loss below design flow that recirculation gives back */
  softened: Range;
  /** rise of pressure towards shut-off by air that turns back in the wheel */
  lift: Range;
  stallDepth: Range;
  /** power that never reaches the air: disc friction, whirl at part load, and a factor for the rest */
  disc: Range;
  partLoad: Range;
  waste: Range;
  outletOverInlet: Range;
  /** spread of the level between wheels that look alike, in ln */
  spread: number;
};

export const CENTRIFUGAL: Record<Exclude<TrueFamily, 'axial'>, Wheel> = {
  radial: {
    diameter_m: [0.28, 0.6],
    slip: [0.64, 0.78],
    bladeAngle_deg: [80, 98],
    narrow: [0.8, 1.6],
    design: [0.05, 0.1],
    friction: [7, 20],
    shock: [8, 45],
    softened: [0.2, 0.9],
    lift: [-0.05, 0.08],
    stallDepth: [0, 0.06],
    disc: [0.012, 0.03],
    partLoad: [0.01, 0.06],
    waste: [1.08, 1.35],
    outletOverInlet: [0.7, 1.15],
    spread: 0.12,
  },
  'radial-tip': {
    diameter_m: [0.28, 0.6],
    slip: [0.66, 0.8],
    bladeAngle_deg: [66, 92],
    narrow: [0.7, 1.4],
    design: [0.08, 0.15],
    friction: [3, 8],
    shock: [5, 22],
    softened: [0.2, 0.9],
    lift: [-0.05, 0.1],
    stallDepth: [0, 0.07],
    disc: [0.01, 0.025],
    partLoad: [0.015, 0.07],
    waste: [1.05, 1.25],
    outletOverInlet: [0.7, 1.2],
    spread: 0.12,
  },
  'backward-inclined': {
    diameter_m: [0.28, 0.56],
    slip: [0.6, 0.72],
    bladeAngle_deg: [36, 54],
    narrow: [0.85, 1.35],
    design: [0.1, 0.17],
    friction: [0.3, 1.6],
    shock: [6, 24],
    softened: [0.3, 1],
    lift: [-0.08, 0.1],
    stallDepth: [0, 0.09],
    disc: [0.008, 0.02],
    partLoad: [0.03, 0.1],
    waste: [1.03, 1.18],
    outletOverInlet: [0.7, 1.2],
    spread: 0.12,
  },
  'backward-curved': {
    diameter_m: [0.28, 0.56],
    slip: [0.6, 0.72],
    bladeAngle_deg: [28, 46],
    narrow: [0.7, 1.2],
    design: [0.1, 0.18],
    friction: [0.3, 1.6],
    shock: [6, 24],
    softened: [0.3, 1],
    lift: [-0.08, 0.1],
    stallDepth: [0, 0.07],
    disc: [0.007, 0.018],
    partLoad: [0.03, 0.1],
    waste: [1.02, 1.15],
    outletOverInlet: [0.7, 1.2],
    spread: 0.12,
  },
  'forward-curved': {
    diameter_m: [0.15, 0.32],
    slip: [0.82, 1],
    bladeAngle_deg: [140, 160],
    narrow: [0.25, 0.5],
    design: [0.45, 0.85],
    friction: [0.7, 1.7],
    shock: [0.8, 2],
    softened: [0.3, 1],
    lift: [0.0, 0.45],
    stallDepth: [0, 0.3],
    disc: [0.02, 0.06],
    partLoad: [0.5, 1.6],
    waste: [1.1, 1.35],
    outletOverInlet: [1.2, 1.8],
    spread: 0.12,
  },
  'through-flow-vacuum': {
    diameter_m: [0.1, 0.14],
    slip: [0.62, 0.76],
    bladeAngle_deg: [35, 60],
    narrow: [2.2, 4],
    design: [0.012, 0.022],
    friction: [150, 420],
    shock: [150, 400],
    softened: [0.3, 0.9],
    lift: [-0.02, 0.08],
    stallDepth: [0, 0.03],
    disc: [0.006, 0.012],
    partLoad: [0.002, 0.012],
    waste: [1.1, 1.4],
    outletOverInlet: [0.8, 1.3],
    spread: 0.12,
  },
};
