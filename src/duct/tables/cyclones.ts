import type { Coefficient } from './coefficient.ts';

/** Velocity heads lost by a cyclone with tangential inlet, by inlet area / outlet pipe squared (a·b/De²). */
export type CycloneModel = { name: string; velocityHeads(areaRatio: number): number; source: string };

/** Sources: fixtures/reference/cyclone.json, `velocity_heads`. */
export const CYCLONE_MODELS: readonly [CycloneModel, CycloneModel] = [
  {
    name: 'Shepherd–Lapple',
    velocityHeads: (areaRatio) => 16 * areaRatio,
    source: 'Shepherd & Lapple, Ind. Eng. Chem. 31 (1939) 972: 16·a·b/De²',
  },
  {
    name: 'Casal–Martínez',
    velocityHeads: (areaRatio) => 11.3 * areaRatio * areaRatio + 2.33,
    source: 'Casal & Martínez-Benet, Chem. Eng. 90 (1983) 99 (recalled): 11.3·(a·b/De²)² + 2.33',
  },
];

/** A drum or cyclone of which only the inlet is known. */
export const UNKNOWN_CYCLONE: Coefficient = {
  k: 3,
  doubt: 0.4,
  source: 'practice: a plain drum with tangential inlet loses 1.5–5 velocity pressures of its inlet. Measure it',
};

/**
 * Loss coefficient of a cyclone on the velocity pressure of its inlet: the geometric middle of two published models,
 * their spread as doubt (never below 15 %: models differ by up to 2.6 among standard cyclones).
 * @param inletArea_m2     area of the inlet [m2]
 * @param outletDiameter_m inside diameter of the outlet pipe [m]; unknown: the middle of what drums lose
 */
export function cycloneCoefficient(inletArea_m2: number, outletDiameter_m: number | null | undefined): Coefficient {
  if (outletDiameter_m == null) return UNKNOWN_CYCLONE;
  const areaRatio = inletArea_m2 / (outletDiameter_m * outletDiameter_m);
  const [a, b] = CYCLONE_MODELS;
  const [headsA, headsB] = [a.velocityHeads(areaRatio), b.velocityHeads(areaRatio)];
  return {
    k: Math.sqrt(headsA * headsB),
    doubt: Math.max(0.15, Math.abs(Math.log(headsA / headsB)) / 2),
    source: `middle of ${a.source}; ${b.source}`,
  };
}
