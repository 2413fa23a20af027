import { alongRows, type Coefficient, type Rows } from './coefficient.ts';

/**
 * Elbows, on the velocity pressure of the pipe. Rows and sources: fixtures/reference/fittings.json, sections
 * `elbows_computed`, `elbows_handbook`, `mitre_computed`.
 */

/** Angles elbows are made in [degrees]. */
export type ElbowAngle = 90 | 60 | 45 | 30;
/** How a bend is made: inside diameter [m], centre-line radius / diameter [-], number of gores (0 or none: smooth), vanes. */
export type ElbowShape = {
  diameter_m: number;
  radiusRatio?: number | null;
  gores?: number | null;
  vanes?: boolean | null;
};

/** Smooth bends of 125 mm, by centre-line radius / diameter. Row 0.5 is recalled from a stamped-elbow table. */
// prettier-ignore
export const SMOOTH_ELBOWS: Record<ElbowAngle, Rows> = {
  90: [[0.5, 0.71], [0.75, 0.449402], [1, 0.313435], [1.25, 0.254298], [1.5, 0.225404], [2, 0.203782], [2.5, 0.201368], [3, 0.206514]],
  60: [[0.5, 0.473333], [0.75, 0.296186], [1, 0.233854], [1.25, 0.201662], [1.5, 0.183391], [2, 0.166209], [2.5, 0.160988], [3, 0.161292]],
  45: [[0.5, 0.355], [0.75, 0.224009], [1, 0.187892], [1.25, 0.167635], [1.5, 0.155309], [2, 0.142552], [2.5, 0.137725], [3, 0.136863]],
  30: [[0.5, 0.236667], [0.75, 0.154596], [1, 0.137674], [1.25, 0.127426], [1.5, 0.120788], [2, 0.113356], [2.5, 0.110128], [3, 0.109175]],
};

/** 90° elbows of 3 and 4 gores, by radius ratio. Of 3 gores the first and last row are recalled from ACGIH, which has the others as well. */
// prettier-ignore
export const GORED_ELBOWS_BY_RADIUS: Record<3 | 4, Rows> = {
  3: [[0.5, 0.9], [0.75, 0.54], [1, 0.42], [1.5, 0.34], [2, 0.33], [2.5, 0.33]],
  4: [[0.75, 0.5], [1, 0.37], [1.5, 0.27], [2, 0.24], [2.5, 0.23]],
};

/** 90° elbow of 5 gores and radius ratio 1.5, by diameter [m]. */
// prettier-ignore
export const FIVE_GORES_BY_DIAMETER: Rows = [
  [0.075, 0.51], [0.15, 0.28], [0.23, 0.21], [0.3, 0.18], [0.38, 0.16], [0.45, 0.15], [0.53, 0.14], [0.6, 0.13],
];

/** 90° elbow of 7 gores and radius ratio 2.5, by diameter [m]. */
// prettier-ignore
export const SEVEN_GORES_BY_DIAMETER: Rows = [
  [0.075, 0.16], [0.15, 0.12], [0.23, 0.1], [0.3, 0.08], [0.38, 0.07], [0.45, 0.06], [0.69, 0.05], [1.5, 0.03],
];

/** Pleated (crimped) elbows of radius ratio 1.5, by diameter [m]. */
// prettier-ignore
export const PLEATED_ELBOWS: Record<90 | 45, Rows> = {
  90: [[0.1, 0.57], [0.15, 0.43], [0.2, 0.34], [0.25, 0.28], [0.3, 0.26], [0.35, 0.25], [0.4, 0.25]],
  45: [[0.1, 0.34], [0.15, 0.26], [0.2, 0.21], [0.25, 0.17], [0.3, 0.16], [0.35, 0.15], [0.4, 0.15]],
};

/** 90° elbow of 5 pieces by radius ratio (recalled); only its shape is used, to move the rows above to other radii. */
// prettier-ignore
export const FIVE_PIECES_BY_RADIUS: Rows = [[0.75, 0.46], [1, 0.33], [1.5, 0.24], [2, 0.19], [2.5, 0.17]];

/** Share of the 90° loss that a gored elbow of less than 90° has. */
export const ANGLE_SHARE: Record<ElbowAngle, number> = { 90: 1, 60: 2 / 3, 45: 1 / 2, 30: 1 / 3 };

/** Single mitres without vanes, and with. */
export const MITRES: Record<'plain' | 'vaned', Record<90 | 45, Coefficient>> = {
  plain: {
    90: { k: 1.20208, doubt: 0.15, source: 'Rennels, single mitre of 90° (Miller 1.14, Blevins 1.15, Crane 0.93)' },
    45: { k: 0.304196, doubt: 0.15, source: 'Rennels, single mitre of 45° (Miller 0.304, Blevins 0.288, Crane 0.233)' },
  },
  vaned: {
    90: { k: 0.6, doubt: 0.35, source: 'ACGIH Industrial Ventilation (recalled): mitre with turning vanes' },
    45: { k: 0.3, doubt: 0.5, source: 'half of the vaned 90° mitre, by the angle shares of a velocity-pressure sheet' },
  },
};

/** Bends of flexible hose by radius ratio: only ranges are published. */
export const HOSE_BENDS: readonly { upToRadiusRatio: number; coefficient: Coefficient }[] = [
  {
    upToRadiusRatio: 1.25,
    coefficient: {
      k: 0.9,
      doubt: 0.3,
      source: 'flexible-duct tests and practice (recalled): 0.5–1.5 at radius ratio 1',
    },
  },
  {
    upToRadiusRatio: 2.25,
    coefficient: {
      k: 0.5,
      doubt: 0.3,
      source: 'flexible-duct tests and practice (recalled): 0.3–0.9 at radius ratio 1.5–2',
    },
  },
  {
    upToRadiusRatio: Infinity,
    coefficient: { k: 0.42, doubt: 0.3, source: 'ACGIH (recalled): twice a smooth elbow, 0.25–0.7' },
  },
];

/** Radius ratio taken where none is given: the ordinary bought elbow. */
export const USUAL_RADIUS_RATIO = 1.5;

/** Loss coefficient of an elbow of given angle, made smooth (stamped, moulded) or of gores. */
export function elbow(angle: ElbowAngle, shape: ElbowShape): Coefficient {
  const known = shape.radiusRatio != null;
  const radiusRatio = shape.radiusRatio ?? USUAL_RADIUS_RATIO;
  const gores = shape.gores ?? 0;
  if (gores < 3) {
    const source =
      'Rennels, smooth bends of 125 mm (Miller, Crane, Ito within 20 %; stamped elbows of 75–250 mm 0.30–0.11)';
    return { k: alongRows(SMOOTH_ELBOWS[angle], radiusRatio), doubt: known ? 0.26 : 0.4, source };
  }
  const doubt = known ? 0.2 : 0.35;
  if (gores === 3 || gores === 4) {
    const source =
      gores === 3 ? 'ASHRAE Fundamentals 2009, CD3-12' : 'ACGIH Industrial Ventilation (recalled), 4 pieces';
    return { k: alongRows(GORED_ELBOWS_BY_RADIUS[gores], radiusRatio) * ANGLE_SHARE[angle], doubt, source };
  }
  const [rows, atRadius, name] =
    gores >= 7
      ? ([SEVEN_GORES_BY_DIAMETER, 2.5, 'CD3-10'] as const)
      : ([FIVE_GORES_BY_DIAMETER, 1.5, 'CD3-9'] as const);
  const radiusShare = alongRows(FIVE_PIECES_BY_RADIUS, radiusRatio) / alongRows(FIVE_PIECES_BY_RADIUS, atRadius);
  return {
    k: alongRows(rows, shape.diameter_m) * radiusShare * ANGLE_SHARE[angle],
    doubt: doubt + (radiusRatio === atRadius ? 0 : 0.1),
    source: `ASHRAE Fundamentals 2009, ${name}, by diameter; other radii after the 5-piece table of ACGIH`,
  };
}

/** Loss coefficient of a pleated elbow. */
export const pleatedElbow = (angle: 90 | 45, { diameter_m }: ElbowShape): Coefficient => ({
  k: alongRows(PLEATED_ELBOWS[angle], diameter_m),
  doubt: 0.25,
  source: `ASHRAE Fundamentals 2009, ${angle === 90 ? 'CD3-5' : 'CD3-7'}, by diameter, radius 1.5`,
});

/** Loss coefficient of a single mitre. */
export function mitre(angle: 90 | 45, shape: ElbowShape): Coefficient {
  return MITRES[shape.vanes ? 'vaned' : 'plain'][angle];
}

/** Loss coefficient of a 90° bend pulled into flexible hose. */
export function hoseBend(shape: ElbowShape): Coefficient {
  const radiusRatio = shape.radiusRatio ?? USUAL_RADIUS_RATIO;
  const row = HOSE_BENDS.find((bend) => radiusRatio < bend.upToRadiusRatio) ?? HOSE_BENDS[HOSE_BENDS.length - 1]!;
  return shape.radiusRatio == null ? { ...row.coefficient, doubt: 0.45 } : row.coefficient;
}
