import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Random } from './random.ts';
import { finished, withBestEfficiency, type Range, type TrueFan } from './true-fan.ts';

/**
 * True fans by a third recipe: the schematic curves of a handbook table with bumps of their own, levels anywhere in the printed
 * ranges at best efficiency. Source: fixtures/reference/fan_shapes.json, `schematic_curves` and `families` (recalled).
 */
type Anchors = {
  shape: 'backward' | 'radial' | 'forward-curved';
  psi: Range;
  phi: Range;
  best: Range;
  efficiency: Range;
  diameter_m: Range;
};
const HANDBOOK = {
  radial: {
    shape: 'radial',
    psi: [1.1, 1.5],
    phi: [0.02, 0.15],
    best: [0.3, 0.45],
    efficiency: [0.5, 0.65],
    diameter_m: [0.28, 0.6],
  },
  'radial-tip': {
    shape: 'radial',
    psi: [1.1, 1.6],
    phi: [0.05, 0.25],
    best: [0.35, 0.5],
    efficiency: [0.65, 0.75],
    diameter_m: [0.28, 0.6],
  },
  'backward-inclined': {
    shape: 'backward',
    psi: [0.8, 1.1],
    phi: [0.08, 0.25],
    best: [0.5, 0.65],
    efficiency: [0.75, 0.84],
    diameter_m: [0.28, 0.56],
  },
  'backward-curved': {
    shape: 'backward',
    psi: [0.8, 1.1],
    phi: [0.08, 0.25],
    best: [0.5, 0.65],
    efficiency: [0.78, 0.85],
    diameter_m: [0.28, 0.56],
  },
  'forward-curved': {
    shape: 'forward-curved',
    psi: [1.8, 2.8],
    phi: [0.3, 0.8],
    best: [0.4, 0.5],
    efficiency: [0.55, 0.71],
    diameter_m: [0.15, 0.32],
  },
} as const satisfies Record<string, Anchors>;
export type HandbookFamily = keyof typeof HANDBOOK;
export const HANDBOOK_FAMILIES = Object.keys(HANDBOOK) as HandbookFamily[];

type Schematic = { family: string; p_over_p0: number[]; P_over_Pfree: number[] };
const fixture = fileURLToPath(new URL('../../../fixtures/reference/fan_shapes.json', import.meta.url));
const schematic: Schematic[] = JSON.parse(readFileSync(fixture, 'utf8')).sections.schematic_curves.rows;

/** Wear and poor copies take up to so much of a new fan's efficiency. */
const LOST: Range = [0.85, 1];
/** Velocity pressure in the outlet over total pressure, at best efficiency: static efficiencies are printed so much below total ones. */
const VELOCITY_SHARE: Range = [0.03, 0.14];
const OUTLET_OVER_INLET: Range = [0.7, 1.3];

/** A wheel of this family with bumps nobody printed. */
export function handbookFan(family: HandbookFamily, random: Random): TrueFan {
  const a: Anchors = HANDBOOK[family];
  const of = (range: Range) => random.uniform(range[0], range[1]);
  const drawn = schematic.find((s) => s.family === a.shape)!;
  const bumps = Array.from({ length: 3 }, () => ({
    by: 0.05 * random.normal(),
    at: random.uniform(0.1, 0.9),
    width: random.uniform(0.12, 0.35),
  }));
  const bumped = (x: number) => bumps.reduce((s, b) => s + b.by * Math.exp(-(((x - b.at) / b.width) ** 2)), 0);
  const slope = random.uniform(-0.08, 0.08);
  const shape = (x: number) =>
    x >= 1 ? -2.6 * (x - 1) : through(drawn.p_over_p0, x) + 4 * x * (1 - x) * (bumped(x) + slope * (1 - 2 * x));
  const [powerSlope, powerArch] = [0.2 * random.normal(), 0.08 * random.normal()];
  const power = (x: number) =>
    through(drawn.P_over_Pfree, Math.min(x, 1)) *
    Math.exp(powerSlope * (1 - x) + 4 * powerArch * x * (1 - Math.min(x, 1)));

  const diameter_m = of(a.diameter_m);
  const best = of(a.best);
  const bestPhi = a.phi[0] * (a.phi[1] / a.phi[0]) ** random.uniform();
  const free = bestPhi / best;
  const psi = of(a.psi);
  const velocityShare = of(VELOCITY_SHARE);
  const velocity = Math.sqrt(velocityShare * psi) / bestPhi;
  const outletArea_m2 = ((Math.PI / 4) * diameter_m ** 2) / velocity;
  const inletDiameter_m = Math.sqrt(outletArea_m2 / of(OUTLET_OVER_INLET) / (Math.PI / 4));
  const top = ((1 - velocityShare) * psi) / shape(best);
  const fan = finished({
    family,
    diameter_m,
    inletDiameter_m,
    outletArea_m2,
    psiTotal: (phi) => top * shape(phi / free) + (phi * velocity) ** 2,
    lambda: (phi) => power(phi / free),
  });
  return withBestEfficiency(fan, of(a.efficiency) * of(LOST));
}

/** Value between eleven printed ones: cubic with the slopes of the neighbours. */
function through(values: readonly number[], x: number): number {
  const i = Math.min(Math.max(Math.floor(10 * x), 0), 9);
  const t = 10 * x - i;
  const at = (k: number) => values[Math.min(Math.max(k, 0), 10)]!;
  const rise = (k: number) => (at(k + 1) - at(k - 1)) / (k <= 0 || k >= 10 ? 1 : 2);
  const [a, b, m, n] = [at(i), at(i + 1), rise(i), rise(i + 1)];
  return a * (1 + 2 * t) * (1 - t) ** 2 + m * t * (1 - t) ** 2 + b * t * t * (3 - 2 * t) - n * t * t * (1 - t);
}
