import { tables, type Element } from '../../src/duct/index.ts';
import type { Job } from '../../src/job/types.ts';
import { withValueAt } from '../state/pointer.ts';
import { typedWithout } from './duct-typed.ts';

type Cyclone = Extract<Element, { kind: 'cyclone' }>;

/** The proportions that a cyclone is built to, to the millimetre; null for a plain drum and sizes of its own. */
export function shapeOf(cyclone: Cyclone): tables.CycloneShape | null {
  const { bodyDiameter_m, inletHeight_m, inletWidth_m, outletDiameter_m } = cyclone;
  if (bodyDiameter_m == null) return null;
  const sizes = { inletHeight_m, inletWidth_m, outletDiameter_m };
  const fits = (shape: tables.CycloneShape) => {
    const meant = tables.cycloneSizes(shape, { bodyDiameter_m });
    return Object.entries(sizes).every(
      ([name, size]) => size != null && Math.abs(size - meant[name as keyof typeof sizes]) < 0.0015,
    );
  };
  return tables.CYCLONE_SHAPES.find(fits) ?? null;
}

/** Builds the cyclone at this place to proportions: about its own body, or, where that is a drum or not known, with an inlet as wide as the pipe. */
export function withCycloneShape(job: Job, pointer: string, cyclone: Cyclone, shape: tables.CycloneShape): Job {
  const { bodyDiameter_m, inletDiameter_m, drum } = cyclone;
  // a body as wide as its drum is the drum: the cyclone that takes its place is sized by the pipe
  const isDrum = drum?.diameter_m != null && drum.diameter_m === bodyDiameter_m && inletDiameter_m != null;
  const known =
    bodyDiameter_m != null && !isDrum
      ? { bodyDiameter_m }
      : inletDiameter_m != null
        ? { pipeArea_m2: (Math.PI / 4) * inletDiameter_m ** 2 }
        : null;
  if (known === null) return job;
  const sizes = tables.cycloneSizes(shape, known);
  const changed = new Set([...Object.keys(sizes), 'k'].map((field) => `${pointer}/${field}`));
  return {
    ...withValueAt(job, pointer, { ...cyclone, ...sizes, k: null }),
    asTyped: typedWithout(job, (at) => changed.has(at)),
  };
}
