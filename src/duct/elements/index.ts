import { z } from 'zod';
import { BranchEntry, branchEntryKind } from './branch-entry.ts';
import { Cyclone, cycloneKind } from './cyclone.ts';
import type { ElementKind } from './element.ts';
import { Entry, entryKind } from './entry.ts';
import { Exit, exitKind } from './exit.ts';
import { Filters, filtersKind } from './filters.ts';
import { Fitting, fittingKind } from './fitting.ts';
import { FixedResistance, fixedResistanceKind } from './fixed-resistance.ts';
import { GateElement, gateKind } from './gate.ts';
import { Pipe, pipeKind } from './pipe.ts';
import { Reducer, reducerKind } from './reducer.ts';

/** Any duct element of a job. */
export const Element = z.discriminatedUnion('kind', [
  Pipe,
  Entry,
  Fitting,
  BranchEntry,
  GateElement,
  Exit,
  Reducer,
  Cyclone,
  Filters,
  FixedResistance,
]);
/** Any duct element, parsed. */
export type Element = z.infer<typeof Element>;

/** The registry: every kind of duct element, in the order in which forms offer them. */
export const ELEMENT_KINDS = [
  pipeKind,
  entryKind,
  fittingKind,
  branchEntryKind,
  gateKind,
  reducerKind,
  cycloneKind,
  filtersKind,
  fixedResistanceKind,
  exitKind,
] as const;

const BY_KIND = new Map<string, ElementKind>(
  ELEMENT_KINDS.map((record) => [record.kind, record as unknown as ElementKind]),
);

/** The record of an element's kind. */
export function elementKind(kind: Element['kind']): ElementKind {
  const record = BY_KIND.get(kind);
  if (record === undefined) throw new RangeError(`elementKind: expected a known kind, received ${kind}`);
  return record;
}
