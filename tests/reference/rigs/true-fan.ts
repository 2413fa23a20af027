import type { Random } from './random.ts';

import { CENTRIFUGAL, type Range, type TrueFamily } from './true-wheels.ts';

export type { Range } from './true-wheels.ts';

/**
 * True fans, made as textbooks explain them (Euler's head with slip, less losses), not from any shape of the program:
 *   ψ_th = 2(σ − φ_w·κ·cot β), φ_w = φ + leak; ψ = ψ_th − friction·φ_w² − shock·(φ_w − φ_d)² − stall; λ = φ_w·ψ_th + disc + part load.
 * φ = Q/(π/4·D²·u), ψ = p/(ρ/2·u²), λ = P/(ρ/2·u²·π/4·D²·u). Every wheel has its own hump, dip, steepness and level.
 */
export type TrueFan = {
  family: TrueFamily;
  diameter_m: number;
  inletDiameter_m: number;
  outletArea_m2: number;
  /** static pressure coefficient, zero at `phiFree` */
  psiStatic(phi: number): number;
  psiTotal(phi: number): number;
  lambda(phi: number): number;
  phiFree: number;
};

/** A wheel of this family, its scroll and its own faults. */
export function trueFan(family: TrueFamily, random: Random): TrueFan {
  return withEfficiency(family === 'axial' ? axialFan(random) : centrifugalFan(family, random), random);
}

function centrifugalFan(family: Exclude<TrueFamily, 'axial'>, random: Random): TrueFan {
  const w = CENTRIFUGAL[family];
  const of = (range: Range) => random.uniform(range[0], range[1]);
  const diameter_m = of(w.diameter_m);
  const sigma = of(w.slip);
  const cot = 1 / Math.tan((of(w.bladeAngle_deg) * Math.PI) / 180);
  const narrow = of(w.narrow);
  const design = of(w.design);
  const friction = of(w.friction);
  const shockRight = of(w.shock);
  const shockLeft = of(w.shock) * (1 - 0.5 * of(w.softened));
  const softFlow = of(w.softened) * design;
  const dip = {
    depth: of(w.stallDepth),
    at: random.uniform(0.35, 0.75) * design,
    width: random.uniform(0.12, 0.28) * design,
  };
  const level = Math.exp(w.spread * random.normal());
  const lift = { by: of(w.lift), until: random.uniform(0.3, 0.6) * design };
  const leak = random.uniform(0.01, 0.06) * design;
  const disc = of(w.disc);
  const partLoad = of(w.partLoad);
  const waste = of(w.waste) * level;

  const head = (phi: number) => 2 * (sigma - phi * narrow * cot);
  const shock = (phi: number) => {
    const off = phi - design;
    if (off >= 0) return shockRight * off * off;
    const soft = Math.min(-off, softFlow > 0 ? softFlow * Math.tanh(-off / softFlow) : -off);
    return shockLeft * soft * soft;
  };
  const psiTotal = (phi: number) => {
    const wheel = phi + leak;
    const stall = dip.depth * Math.exp(-(((phi - dip.at) / dip.width) ** 2));
    const turnedBack = lift.by * Math.max(0, 1 - phi / lift.until) ** 2;
    return level * (head(wheel) - friction * wheel * wheel - shock(wheel) - stall + turnedBack);
  };
  const lambda = (phi: number) =>
    waste *
    ((phi + leak) * Math.max(head(phi + leak), 0.1) + disc + partLoad * Math.max(0, 1 - phi / (1.6 * design)) ** 2);
  const openings = openingsFor(halfwayDown(psiTotal) * 1.3, diameter_m, w.outletOverInlet, random);
  const atOneSpeed = finished({ family, diameter_m, ...openings, psiTotal, lambda });
  return family === 'through-flow-vacuum' ? spedUp(atOneSpeed, random) : atOneSpeed;
}

/** A brushed motor speeds up as it is throttled; some have two wheels in a row. φ and ψ stay on the speed with everything open. */
function spedUp(fan: TrueFan, random: Random): TrueFan {
  const stages = random.chance(0.4) ? 2 : 1;
  const rise = random.uniform(0.2, 0.4);
  const speed = (phi: number) => 1 + rise * Math.max(0, 1 - phi / fan.phiFree);
  return finished({
    ...fan,
    psiTotal: (phi) => stages * speed(phi) ** 2 * fan.psiTotal(phi / speed(phi)),
    lambda: (phi) => stages * speed(phi) ** 3 * fan.lambda(phi / speed(phi)),
  });
}

/** Flow at which total pressure is half of what it is at shut-off. */
function halfwayDown(psi: (phi: number) => number): number {
  let phi = 0;
  while (psi(phi) > 0.5 * psi(0) && phi < 4) phi += 0.002;
  return phi;
}

/** Inlet and outlet as makers size them: at free delivery the air's speed there is 0.55–0.8 of the wheel's tip. */
export function openingsFor(
  phiFree: number,
  diameter_m: number,
  outletOverInlet: Range,
  random: Random,
): { inletDiameter_m: number; outletArea_m2: number } {
  const speed = random.uniform(0.55, 0.8);
  const inletDiameter_m = diameter_m * Math.min(Math.max(Math.sqrt(phiFree / speed), 0.25), 0.95);
  const ratio = random.uniform(outletOverInlet[0], outletOverInlet[1]);
  return { inletDiameter_m, outletArea_m2: ratio * (Math.PI / 4) * inletDiameter_m ** 2 };
}

/** A propeller: blades grip the air above the stall flow and centrifuge it below. */
function axialFan(random: Random): TrueFan {
  const diameter_m = random.uniform(0.3, 0.6);
  const outletArea_m2 = (Math.PI / 4) * diameter_m ** 2 * random.uniform(0.9, 1.05);
  const free = random.uniform(0.22, 0.36);
  const steep = random.uniform(1.6, 3.2);
  const stallAt = random.uniform(0.5, 0.72) * free;
  const bend = random.uniform(-1, 1);
  const grip = (phi: number) => steep * (free - phi) * (1 + bend * (free - phi));
  const top = grip(stallAt);
  const shutOff = top * random.uniform(1.0, 1.7);
  const bottom = top * random.uniform(0.75, 1);
  const curl = random.uniform(1.2, 2.5);
  const stalled = (phi: number) => bottom + (shutOff - bottom) * Math.max(0, 1 - phi / stallAt) ** curl;
  const width = random.uniform(0.03, 0.08) * free;
  const gripped = (phi: number) => 1 / (1 + Math.exp(-(phi - stallAt) / width));
  const velocity = ((Math.PI / 4) * diameter_m ** 2) / outletArea_m2;
  const psiStatic = (phi: number) => gripped(phi) * grip(phi) + (1 - gripped(phi)) * stalled(phi);
  const psiTotal = (phi: number) => psiStatic(phi) + (phi * velocity) ** 2;
  const best = random.uniform(0.5, 0.75);
  const bestPhi = 0.8 * free;
  const bestPower = (bestPhi * psiTotal(bestPhi)) / best;
  const shutPower = bestPower * random.uniform(1.05, 1.5);
  const lambda = (phi: number) =>
    bestPower * (1 - 0.12 * ((phi - bestPhi) / free)) + (shutPower - bestPower) * Math.max(0, 1 - phi / stallAt) ** 1.5;
  return finished({
    family: 'axial',
    diameter_m,
    inletDiameter_m: diameter_m,
    outletArea_m2,
    psiTotal,
    lambda,
  });
}

/** Total efficiency at the best point of wheels found second-hand: from the handbooks' range for new ones down to a sixth below it. */
const EFFICIENCY: Record<TrueFamily, Range> = {
  radial: [0.43, 0.65],
  'radial-tip': [0.55, 0.75],
  'backward-inclined': [0.63, 0.84],
  'backward-curved': [0.65, 0.85],
  'forward-curved': [0.46, 0.71],
  axial: [0.52, 0.8],
  'through-flow-vacuum': [0.3, 0.55],
};

/** The same wheel with its power set so that its best efficiency is one that wheels of its family have. */
export const withEfficiency = (fan: TrueFan, random: Random): TrueFan =>
  withBestEfficiency(fan, random.uniform(EFFICIENCY[fan.family][0], EFFICIENCY[fan.family][1]));

/** The same wheel with its power set so that its best total efficiency is this. */
export function withBestEfficiency(fan: TrueFan, efficiency: number): TrueFan {
  const best = Math.max(
    ...Array.from({ length: 60 }, (_, i) => ((i + 1) / 60) * fan.phiFree).map(
      (phi) => (phi * fan.psiTotal(phi)) / fan.lambda(phi),
    ),
  );
  const factor = best / efficiency;
  return { ...fan, lambda: (phi) => factor * fan.lambda(phi) };
}

/** A fan with its static curve and free delivery worked out. */
export function finished(fan: Omit<TrueFan, 'psiStatic' | 'phiFree'>): TrueFan {
  const velocity = ((Math.PI / 4) * fan.diameter_m ** 2) / fan.outletArea_m2;
  const psiStatic = (phi: number) => fan.psiTotal(phi) - (phi * velocity) ** 2;
  return { ...fan, psiStatic, phiFree: lastZero(psiStatic) };
}

/** Largest flow at which static pressure still is above nothing. */
function lastZero(psi: (phi: number) => number): number {
  let high = 0.001;
  while (psi(high) > 0 && high < 4) high *= 1.03;
  let low = high / 1.03;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (psi(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

/** The wheel at a speed in an air: pressures [Pa] and shaft power [W] at a flow [m3/s]. */
export type Spinning = {
  static_Pa(flow_m3_s: number): number;
  total_Pa(flow_m3_s: number): number;
  shaftPower_W(flow_m3_s: number): number;
  freeFlow_m3_s: number;
};

export function spinning(fan: TrueFan, speed_rpm: number, density_kg_m3: number): Spinning {
  const u = (Math.PI * fan.diameter_m * speed_rpm) / 60;
  const flow = (Math.PI / 4) * fan.diameter_m ** 2 * u;
  const pressure = (density_kg_m3 / 2) * u * u;
  return {
    static_Pa: (q) => pressure * fan.psiStatic(q / flow),
    total_Pa: (q) => pressure * fan.psiTotal(q / flow),
    shaftPower_W: (q) => pressure * flow * fan.lambda(q / flow),
    freeFlow_m3_s: fan.phiFree * flow,
  };
}
