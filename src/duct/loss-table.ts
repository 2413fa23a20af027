import type { Air } from '../air/air.ts';
import { blendEnd } from '../pipe/index.ts';
import { circleArea_m2, type LossTerm } from './elements/element.ts';

/**
 * Losses of all rows of a network in flat arrays. A row's loss at flow Q is
 *   quadratic·Q² + Σ friction items f(Re)·scale·Q² + Σ power items coefficient·Q^exponent.
 * Equal pipes of a row are one item, square-law power items are part of `quadratic`.
 */
export type LossTable = {
  /** [Pa/(m3/s)²] */
  readonly quadratic: Float64Array;
  /** first friction item of each row; one longer than the rows */
  readonly frictionStart: Int32Array;
  /** ρ/2 · L/D / A² [Pa/(m3/s)²]: times f gives the loss at 1 m3/s */
  readonly frictionScale: Float64Array;
  /** Reynolds number at 1 m3/s [s/m3] */
  readonly reynoldsScale: Float64Array;
  /** ε/D/3.7 [-] */
  readonly roughTerm: Float64Array;
  /** end of the laminar blend: ln f and its slope at Re 4000 */
  readonly blendLogF: Float64Array;
  readonly blendExponent: Float64Array;
  /** first power item of each row; one longer than the rows */
  readonly powerStart: Int32Array;
  /** [Pa/(m3/s)^exponent] */
  readonly powerCoefficient: Float64Array;
  readonly powerExponent: Float64Array;
};

type Row = { terms: readonly { term: LossTerm }[]; leak: number };
type FrictionItem = { diameter_m: number; roughness_m: number; length_m: number };

/**
 * A machine opening without any loss would take all the air at no suction at all, and two of them would share it in no
 * particular way. This much [Pa/(m3/s)²], under a thousandth of a pascal at any workshop's flow, settles it.
 */
const LEAST_OPENING_LOSS = 1e-3;

/** Quadratic coefficient of k on a velocity pressure [Pa/(m3/s)²]. */
export const quadraticCoefficient = (k: number, area_m2: number, density_kg_m3: number): number =>
  (k * density_kg_m3) / (2 * area_m2 * area_m2);

/** Friction factor of the smoothest pipes at any flow of a workshop [-]. */
const SMOOTHEST_FACTOR = 0.01;

/** Loss of a pipe at 1 m3/s, over its friction factor [Pa]. */
const frictionScale = ({ length_m, diameter_m }: FrictionItem, density_kg_m3: number): number =>
  quadraticCoefficient(length_m / diameter_m, circleArea_m2(diameter_m), density_kg_m3);

/** Adds a pipe to the items, joining it to an equal one. */
function addPipe(items: FrictionItem[], pipe: FrictionItem): void {
  const same = items.find((item) => item.diameter_m === pipe.diameter_m && item.roughness_m === pipe.roughness_m);
  if (same) same.length_m += pipe.length_m;
  else items.push({ ...pipe });
}

/** Gathers the losses of every row. `leaf` marks the rows that start at the room (rows beyond its end do not). */
export function compileLosses(rows: readonly Row[], air: Air, leaf: Uint8Array): LossTable {
  const density = air.density_kg_m3;
  const quadratic = new Float64Array(rows.length);
  const frictionStart = new Int32Array(rows.length + 1);
  const powerStart = new Int32Array(rows.length + 1);
  const friction: FrictionItem[] = [];
  const power: { coefficient: number; exponent: number }[] = [];
  rows.forEach(({ terms, leak }, row) => {
    const pipes: FrictionItem[] = [];
    let sum = leak;
    for (const { term } of terms) {
      if (term.law === 'friction') {
        if (term.length_m > 0) addPipe(pipes, term);
      } else if (term.law === 'velocity-pressure') sum += quadraticCoefficient(term.k, term.area_m2, density);
      else if (term.exponent === 2) sum += term.pressure_Pa / (term.flow_m3_s * term.flow_m3_s);
      else if (term.pressure_Pa > 0) {
        power.push({ coefficient: term.pressure_Pa * term.flow_m3_s ** -term.exponent, exponent: term.exponent });
      }
    }
    friction.push(...pipes);
    frictionStart[row + 1] = friction.length;
    powerStart[row + 1] = power.length;
    const others =
      pipes.reduce((total, pipe) => total + SMOOTHEST_FACTOR * frictionScale(pipe, density), 0) +
      power.slice(powerStart[row]).reduce((total, { coefficient }) => total + coefficient, 0);
    quadratic[row] = leaf[row] === 1 && sum + others < LEAST_OPENING_LOSS ? LEAST_OPENING_LOSS : sum;
  });
  const ends = friction.map(({ roughness_m, diameter_m }) => blendEnd(roughness_m / diameter_m / 3.7));
  return {
    quadratic,
    frictionStart,
    frictionScale: Float64Array.from(friction, (pipe) => frictionScale(pipe, density)),
    reynoldsScale: Float64Array.from(
      friction,
      ({ diameter_m }) => (density * diameter_m) / (circleArea_m2(diameter_m) * air.viscosity_Pa_s),
    ),
    roughTerm: Float64Array.from(friction, ({ roughness_m, diameter_m }) => roughness_m / diameter_m / 3.7),
    blendLogF: Float64Array.from(ends, ({ logF }) => logF),
    blendExponent: Float64Array.from(ends, ({ exponent }) => exponent),
    powerStart,
    powerCoefficient: Float64Array.from(power, ({ coefficient }) => coefficient),
    powerExponent: Float64Array.from(power, ({ exponent }) => exponent),
  };
}
