import type { Element } from '../../../../src/duct/index.ts';
import type { Ductwork, Job, Section } from '../../../../src/job/types.ts';

/** Small shops for the drawing's tests, written as one would tell them. */

export const branch = (id: string, into: string, machine = id, diameter_m = 0.1): Section => ({
  id,
  into,
  pickup: { machine },
  gate: {},
  elements: [
    { kind: 'entry', entry: 'machine-port', diameter_m },
    { kind: 'pipe', surface: 'flexible-hose', length_m: 1.5, diameter_m },
    { kind: 'pipe', surface: 'drain-pipe', length_m: 3, diameter_m },
    { kind: 'branch-entry', angle_deg: 45, diameter_m },
  ],
});

export const pipe = (id: string, into: string, diameter_m = 0.15, behind: Element[] = []): Section => ({
  id,
  into,
  elements: [{ kind: 'pipe', surface: 'spiral-duct', length_m: 3, diameter_m }, ...behind],
});

export const DRUM_AND_FILTERS: Element[] = [
  { kind: 'cyclone', inletDiameter_m: 0.15, outletDiameter_m: 0.15, drum: { diameter_m: 0.58 } },
  { kind: 'pipe', surface: 'drain-pipe', length_m: 2, diameter_m: 0.15 },
  { kind: 'filters', count: 6, each: { cleanFlow_m3_s: 0.08, cleanPressure_Pa: 250 } },
];

export const ducts = (
  sections: Section[],
  discharge: Element[] = [
    { kind: 'pipe', length_m: 3, diameter_m: 0.15 },
    { kind: 'exit', diameter_m: 0.15 },
  ],
): Ductwork => ({ sections, discharge, exhaust: 'outdoors' });

/** Three machines on one main with drum and filters, as most shops begin. */
export const threeMachines = (): Ductwork =>
  ducts([
    branch('planer', 'main', 'thickness planer', 0.125),
    branch('saw', 'main', 'table saw'),
    branch('band', 'main', 'band saw'),
    pipe('main', 'blower', 0.1036, DRUM_AND_FILTERS),
  ]);

/** A comb: each machine joins the next piece of the main. */
export const comb = (machines: number): Ductwork =>
  ducts([
    ...Array.from({ length: machines }, (_, i) => branch(`m${i}`, `s${Math.max(1, i)}`, `machine ${i}`)),
    ...Array.from({ length: machines - 1 }, (_, i) =>
      pipe(`s${i + 1}`, i === machines - 2 ? 'blower' : `s${i + 2}`, 0.1 + 0.005 * i),
    ),
  ]);

/** Mains under mains: four levels and twelve machines. */
export const fourLevels = (): Ductwork =>
  ducts([
    ...['a1', 'a2'].map((id) => branch(id, 'a', 'drill')),
    ...['b1', 'b2'].map((id) => branch(id, 'b', 'belt sander')),
    pipe('a', 'ab'),
    pipe('b', 'ab'),
    ...['c1', 'c2'].map((id) => branch(id, 'c', 'lathe')),
    pipe('ab', 'abc'),
    pipe('c', 'abc'),
    ...['d1', 'd2', 'd3'].map((id) => branch(id, 'd', 'router')),
    pipe('abc', 'main', 0.18),
    pipe('d', 'main'),
    ...['e1', 'e2', 'e3'].map((id) => branch(id, 'main', 'carding engine')),
    pipe('main', 'blower', 0.2, DRUM_AND_FILTERS),
  ]);

/** A valid job round some ducts, with one blower known by its wheel alone. */
export const jobWith = (ductwork: Ductwork, more: Partial<Job> = {}): Job => ({
  format: 'blower-bench-job',
  version: 1,
  name: 'Shop',
  site: {},
  supply: {},
  material: 'wood-dust',
  blowers: [
    {
      id: 'b1',
      label: 'green one',
      wheel: { family: 'radial', diameter_m: 0.4 },
      drive: { kind: 'direct' },
      motor: { ratedPower_W: 2200, speed_rpm: 2850, frequency_Hz: 50 },
      evidence: [{ kind: 'wheel' }],
    },
  ],
  ductwork,
  ...more,
});
