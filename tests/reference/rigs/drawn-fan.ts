import type { Random } from './random.ts';
import { finished, openingsFor, withEfficiency, type TrueFan } from './true-fan.ts';
import { type TrueFamily } from './true-wheels.ts';

/**
 * True fans as handbooks draw them: flat with a knee, humped or dipped, with a level somewhere in the family's printed range.
 *   p/p0 = 1 − x^m + hump·x·(1−x) − dip·exp(−((x−x_d)/w)²)·4x(1−x), x = Q/Q_free; power a straight or arched line over x.
 * Ranges: ψ and φ at best efficiency, efficiency and where it lies, of fixtures/reference/fan_shapes.json `families` (handbooks, recalled).
 */
type Range = readonly [number, number];
type Drawn = {
  diameter_m: Range;
  psi: Range;
  phi: Range;
  best: Range;
  steep: Range;
  hump: Range;
  dip: Range;
  /** power at shut-off over that at free delivery, and the arch between */
  shutPower: Range;
  arch: Range;
  outletOverInlet: Range;
};

const DRAWN: Record<Exclude<TrueFamily, 'axial' | 'through-flow-vacuum'>, Drawn> = {
  radial: {
    diameter_m: [0.28, 0.6],
    psi: [1.1, 1.5],
    phi: [0.03, 0.12],
    best: [0.3, 0.45],
    steep: [1.7, 2.4],
    hump: [-0.1, 0.35],
    dip: [0, 0],
    shutPower: [0.15, 0.4],
    arch: [-0.05, 0.15],
    outletOverInlet: [0.7, 1.15],
  },
  'radial-tip': {
    diameter_m: [0.28, 0.6],
    psi: [1.1, 1.6],
    phi: [0.06, 0.2],
    best: [0.35, 0.5],
    steep: [1.8, 2.6],
    hump: [-0.1, 0.35],
    dip: [0, 0.04],
    shutPower: [0.2, 0.45],
    arch: [0, 0.35],
    outletOverInlet: [0.7, 1.2],
  },
  'backward-inclined': {
    diameter_m: [0.28, 0.56],
    psi: [0.8, 1.1],
    phi: [0.1, 0.2],
    best: [0.5, 0.65],
    steep: [1.8, 3],
    hump: [-0.2, 0.3],
    dip: [0, 0.06],
    shutPower: [0.3, 0.6],
    arch: [0.6, 1.6],
    outletOverInlet: [0.7, 1.2],
  },
  'backward-curved': {
    diameter_m: [0.28, 0.56],
    psi: [0.8, 1.1],
    phi: [0.1, 0.2],
    best: [0.5, 0.65],
    steep: [1.8, 3],
    hump: [-0.2, 0.3],
    dip: [0, 0.05],
    shutPower: [0.3, 0.6],
    arch: [0.6, 1.6],
    outletOverInlet: [0.7, 1.2],
  },
  'forward-curved': {
    diameter_m: [0.15, 0.32],
    psi: [1.8, 2.8],
    phi: [0.3, 0.8],
    best: [0.38, 0.52],
    steep: [2.6, 4.5],
    hump: [-0.15, 0.25],
    dip: [0.03, 0.16],
    shutPower: [0.12, 0.3],
    arch: [-0.35, 0],
    outletOverInlet: [1.2, 1.8],
  },
};
export const canBeDrawn = (family: TrueFamily): family is keyof typeof DRAWN => family in DRAWN;

/** A wheel whose curves look like a handbook's drawing of its family. */
export function drawnFan(family: keyof typeof DRAWN, random: Random): TrueFan {
  const d = DRAWN[family];
  const of = (range: Range) => random.uniform(range[0], range[1]);
  const diameter_m = of(d.diameter_m);
  const [steep, hump, depth] = [of(d.steep), of(d.hump), of(d.dip)];
  const dip = { at: random.uniform(0.15, 0.35), width: random.uniform(0.08, 0.16) };
  const shape = (x: number) =>
    x >= 1
      ? -(steep + hump) * (x - 1)
      : 1 - x ** steep + (hump - 4 * depth * Math.exp(-(((x - dip.at) / dip.width) ** 2))) * x * (1 - x);
  const best = of(d.best);
  const free = of(d.phi) / best;
  const { inletDiameter_m, outletArea_m2 } = openingsFor(free, diameter_m, d.outletOverInlet, random);
  const velocity = ((Math.PI / 4) * diameter_m ** 2) / outletArea_m2;
  const bestPhi = best * free;
  const top = Math.max(of(d.psi) - (bestPhi * velocity) ** 2, 0.5 * d.psi[0]) / shape(best);
  const psiTotal = (phi: number) => top * shape(phi / free) + (phi * velocity) ** 2;
  const [shutPower, arch] = [of(d.shutPower), of(d.arch)];
  const powerShape = (x: number) => shutPower + (1 - shutPower) * x + arch * x * (1 - Math.min(x, 1));
  const scale = (bestPhi * psiTotal(bestPhi)) / powerShape(best);
  const lambda = (phi: number) => scale * powerShape(phi / free);
  return withEfficiency(finished({ family, diameter_m, inletDiameter_m, outletArea_m2, psiTotal, lambda }), random);
}
