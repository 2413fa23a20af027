import fc from 'fast-check';
import type { Ductwork, Element, Section } from '../../src/duct/index.ts';

/** Ductworks nobody would build, all of them possible: any tree, any mixture of elements, gates nearly shut, leaks of any size. */

const diameter_m = fc.constantFrom(0.03, 0.05, 0.075, 0.1, 0.125, 0.16, 0.2, 0.315, 0.6);
const exponent = fc.double({ min: 0.5, max: 3, noNaN: true });

const element: fc.Arbitrary<Element> = fc.oneof(
  fc.record({
    kind: fc.constant('pipe' as const),
    length_m: fc.double({ min: 0, max: 60, noNaN: true }),
    diameter_m,
    roughness_m: fc.constantFrom(0, 1e-5, 1.5e-4, 3e-3),
  }),
  fc.record({ kind: fc.constant('entry' as const), diameter_m, k: fc.double({ min: 0, max: 5, noNaN: true }) }),
  fc.record({
    kind: fc.constant('fitting' as const),
    fitting: fc.constantFrom('elbow-90', 'mitre-45', 'hose-bend-90', 'inlet-swirl', 'tee-through'),
    diameter_m,
    count: fc.integer({ min: 0, max: 4 }),
  }),
  fc.record({ kind: fc.constant('gate' as const), diameter_m, opening: fc.constantFrom(0, 0.001, 0.01, 0.1, 0.5, 1) }),
  fc.record({ kind: fc.constant('reducer' as const), fromDiameter_m: diameter_m, toDiameter_m: diameter_m }),
  fc.record({ kind: fc.constant('cyclone' as const), inletDiameter_m: diameter_m, outletDiameter_m: diameter_m }),
  fc.record({
    kind: fc.constant('filters' as const),
    count: fc.integer({ min: 1, max: 12 }),
    each: fc.record({
      cleanFlow_m3_s: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
      cleanPressure_Pa: fc.double({ min: 0, max: 800, noNaN: true }),
      exponent,
    }),
  }),
  fc.record({
    kind: fc.constant('fixed-resistance' as const),
    flow_m3_s: fc.double({ min: 0.001, max: 1, noNaN: true }),
    pressure_Pa: fc.double({ min: 0, max: 3000, noNaN: true }),
    exponent,
  }),
);

const gate = fc.oneof(
  fc.constant(null),
  fc.record({ closedLeakArea_m2: fc.constantFrom(null, 0, 1e-13, 1e-11, 1e-8, 1e-5, 1e-3) }),
);

type Seed = { into: number; elements: Element[]; gate: Section['gate']; deadEnd: boolean };

const seed: fc.Arbitrary<Seed> = fc.record({
  // Where in the sections before this one it flows; 0 is the blower. Squared, so that both combs and bushes come up.
  into: fc.double({ min: 0, max: 1, noNaN: true }),
  elements: fc.array(element, { maxLength: 5 }),
  gate,
  deadEnd: fc.boolean(),
});

function plant(seeds: Seed[], comb: boolean): Ductwork {
  const parents = seeds.map(({ into }, i) =>
    i === 0 ? 0 : Math.min(i, Math.floor((comb ? 1 - (1 - into) ** 8 : into) * (i + 1))),
  );
  const fed = new Set(parents);
  return {
    sections: seeds.map((each, i) => ({
      id: `s${i + 1}`,
      into: parents[i] === 0 ? 'blower' : `s${parents[i]}`,
      pickup: fed.has(i + 1) || (each.deadEnd && i > 0) ? null : {},
      gate: each.gate,
      elements: each.elements,
    })),
  };
}

/** A possible ductwork of up to `most` sections. */
export const randomDuctwork = (most: number): fc.Arbitrary<Ductwork> =>
  fc
    .tuple(fc.array(seed, { minLength: 1, maxLength: most, size: 'max' }), fc.boolean())
    .map(([seeds, comb]) => plant(seeds, comb))
    .filter(({ sections }) => sections.some(({ pickup }) => pickup != null));

/** Ids of some of the machines. */
export const someOpen = ({ sections }: Ductwork, pick: number): string[] =>
  sections.filter(({ pickup }, i) => pickup != null && ((i * 2654435761) ^ pick) % 3 !== 0).map(({ id }) => id);
