import type { Element } from '../../src/duct/index.ts';
import type { Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';
import { elementsOf, elementsPointer, mainDiameter_m, withElements } from './duct-run.ts';
import { typedMoved } from './duct-typed.ts';

type Kind = Element['kind'];

/** A new piece as it most often is, as wide as the run it goes into; everything about it can be changed in place. */
export function newElement(kind: Kind, diameter_m: number): Element {
  const usual: { [K in Kind]: Extract<Element, { kind: K }> } = {
    pipe: { kind: 'pipe', surface: 'drain-pipe', length_m: 1, diameter_m },
    entry: { kind: 'entry', entry: 'machine-port', diameter_m },
    fitting: { kind: 'fitting', fitting: 'elbow-90', radiusRatio: 1.5, diameter_m, count: 1 },
    'branch-entry': { kind: 'branch-entry', angle_deg: 45, diameter_m },
    gate: { kind: 'gate', diameter_m },
    reducer: { kind: 'reducer', fromDiameter_m: diameter_m, toDiameter_m: diameter_m * 1.25 },
    cyclone: {
      kind: 'cyclone',
      inletDiameter_m: diameter_m,
      outletDiameter_m: diameter_m,
      bodyDiameter_m: 0.58,
      drum: { diameter_m: 0.58, height_m: 0.88 },
    },
    filters: {
      kind: 'filters',
      count: 2,
      each: { cleanFlow_m3_s: 0.08, cleanPressure_Pa: 250, loadedPressure_Pa: 1000 },
    },
    'fixed-resistance': { kind: 'fixed-resistance', flow_m3_s: 0.2, pressure_Pa: 200 },
    exit: { kind: 'exit', diameter_m },
  };
  return usual[kind];
}

/** Where a new piece belongs: an entry in front, an exit and a branch's entry at the end, the rest before the end piece. */
function usualPlace(elements: readonly Element[], kind: Kind): number {
  if (kind === 'entry') return 0;
  const ends = elements.at(-1)?.kind;
  return (ends === 'exit' || ends === 'branch-entry') && kind !== 'exit' ? elements.length - 1 : elements.length;
}

/** Adds a piece to a run; answers where it went. */
export function addElement(job: Job, run: string, element: Element, at?: number): Edited & { index: number } {
  const elements = elementsOf(job, run);
  const index = at ?? usualPlace(elements, element.kind);
  const pointer = elementsPointer(job, run);
  const asTyped = typedMoved(job, pointer, (i) => (i < index ? i : i + 1));
  return { job: { ...withElements(job, run, elements.toSpliced(index, 0, element)), asTyped }, note: 'element', index };
}

/** A new piece of a kind, as wide as its run. */
export const addKind = (job: Job, run: string, kind: Kind): Edited & { index: number } =>
  addElement(job, run, newElement(kind, mainDiameter_m(elementsOf(job, run)) ?? 0.1));

export function removeElement(job: Job, run: string, index: number): Edited {
  const pointer = elementsPointer(job, run);
  const asTyped = typedMoved(job, pointer, (i) => (i === index ? null : i < index ? i : i - 1));
  return { job: { ...withElements(job, run, elementsOf(job, run).toSpliced(index, 1)), asTyped }, note: 'element' };
}

/** Swaps a piece with its neighbour, against the air (−1) or with it (+1). */
export function moveElement(job: Job, run: string, index: number, by: -1 | 1): Edited {
  const elements = [...elementsOf(job, run)];
  const to = index + by;
  const [here, there] = [elements[index], elements[to]];
  if (!here || !there) return { job, note: 'element' };
  elements[to] = here;
  elements[index] = there;
  const asTyped = typedMoved(job, elementsPointer(job, run), (i) => (i === index ? to : i === to ? index : i));
  return { job: { ...withElements(job, run, elements), asTyped }, note: 'element' };
}
