import { z } from 'zod';
import { branchEntryKind } from './branch-entry.ts';
import { cycloneKind } from './cyclone.ts';
import type { ElementKind } from './element.ts';
import { entryKind } from './entry.ts';
import { exitKind } from './exit.ts';
import { filtersKind } from './filters.ts';
import { fittingKind } from './fitting.ts';
import { fixedResistanceKind } from './fixed-resistance.ts';
import { gateKind } from './gate.ts';
import { pipeKind } from './pipe.ts';
import { reducerKind } from './reducer.ts';

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

type FieldsOf<Records> = {
  readonly [I in keyof Records]: Records[I] extends { fields: infer Fields } ? Fields : never;
};

/** Any duct element of a job: one of the registry's kinds. */
export const Element = z.discriminatedUnion(
  'kind',
  ELEMENT_KINDS.map((record) => record.fields) as unknown as FieldsOf<typeof ELEMENT_KINDS>,
);
/** Any duct element, parsed. */
export type Element = z.infer<typeof Element>;

const BY_KIND = new Map<string, ElementKind>(
  ELEMENT_KINDS.map((record) => [record.kind, record as unknown as ElementKind]),
);

/** The record of an element's kind. */
export function elementKind(kind: Element['kind']): ElementKind {
  const record = BY_KIND.get(kind);
  if (record === undefined) throw new RangeError(`elementKind: expected a known kind, received ${kind}`);
  return record;
}
