/** Inlet and outlet of a cyclone as shares of its body's diameter [-]. */
export type CycloneProportions = {
  /** height and width of the rectangular inlet, inside diameter of the outlet pipe */
  inletHeight: number;
  inletWidth: number;
  outlet: number;
  source: string;
};

/**
 * Proportions that cyclones are built to. Sources: fixtures/reference/cyclone.json, `proportions` (handbook table, from memory).
 * A plain drum has none of its own: its inlet is the pipe, and what it loses is practice.
 */
export const CYCLONE_PROPORTIONS = {
  'general-purpose': { inletHeight: 0.5, inletWidth: 0.25, outlet: 0.5, source: 'Lapple general purpose' },
  'long-cone': { inletHeight: 0.5, inletWidth: 0.2, outlet: 0.5, source: 'Stairmand high efficiency' },
  'high-throughput': { inletHeight: 0.75, inletWidth: 0.375, outlet: 0.75, source: 'Stairmand high throughput' },
} as const satisfies Record<string, CycloneProportions>;
export type CycloneShape = keyof typeof CYCLONE_PROPORTIONS;
export const CYCLONE_SHAPES = Object.keys(CYCLONE_PROPORTIONS) as CycloneShape[];

/** Sizes [m] of a cyclone's fields. */
export type CycloneSizes = {
  bodyDiameter_m: number;
  inletHeight_m: number;
  inletWidth_m: number;
  outletDiameter_m: number;
};

const toMillimetre = (metres: number): number => Math.round(1000 * metres) / 1000;

/**
 * A cyclone of these proportions.
 * @param known its body's diameter [m], or, where there is none yet, the area of the pipe that comes in [m2]: the inlet then has that area
 * Source: definition of the proportions.
 */
export function cycloneSizes(
  shape: CycloneShape,
  known: { bodyDiameter_m: number } | { pipeArea_m2: number },
): CycloneSizes {
  const { inletHeight, inletWidth, outlet } = CYCLONE_PROPORTIONS[shape];
  const body =
    'bodyDiameter_m' in known ? known.bodyDiameter_m : Math.sqrt(known.pipeArea_m2 / (inletHeight * inletWidth));
  return {
    bodyDiameter_m: toMillimetre(body),
    inletHeight_m: toMillimetre(inletHeight * body),
    inletWidth_m: toMillimetre(inletWidth * body),
    outletDiameter_m: toMillimetre(outlet * body),
  };
}
