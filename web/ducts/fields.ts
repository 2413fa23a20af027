import type { z } from 'zod';
import { ELEMENT_KINDS, elementKind, tables } from '../../src/duct/index.ts';
import type { Element } from '../../src/duct/index.ts';
import { SURFACES } from '../../src/pipe/index.ts';
import type { Quantity } from '../../src/units/index.ts';

/** One row of the editor, read off the element's own schema: a new kind of element needs nothing here. */
export type FieldRow = {
  /** path below the element: "length_m", "drum/height_m" */
  path: string;
  label: string;
  help?: string;
  required: boolean;
} & (
  | { input: 'quantity'; quantity: Quantity }
  | { input: 'number' }
  | { input: 'choice'; options: string[] }
  | { input: 'flag' }
);

type Schema = z.core.$ZodType & {
  def?: { type: string; innerType?: Schema; shape?: Record<string, Schema> };
  meta?: () => Record<string, unknown> | undefined;
  options?: string[];
};

/** Takes `nullish` and its like off a schema; what is optional is not required. */
function unwrapped(schema: Schema): { inner: Schema; required: boolean } {
  let inner = schema;
  let required = true;
  while (inner.def?.innerType && (inner.def.type === 'optional' || inner.def.type === 'nullable')) {
    required = false;
    inner = inner.def.innerType;
  }
  return { inner, required };
}

function rowsOf(shape: Record<string, Schema>, prefix: string, allRequired: boolean): FieldRow[] {
  return Object.entries(shape).flatMap(([name, schema]): FieldRow[] => {
    if (name === 'kind') return [];
    const { inner, required } = unwrapped(schema);
    const path = prefix + name;
    if (inner.def?.type === 'object') return rowsOf(inner.def.shape ?? {}, `${path}/`, allRequired && required);
    const meta = (inner.meta?.() ?? {}) as { label?: string; help?: string; quantity?: string; examples?: string[] };
    const common = { path, label: meta.label ?? name, help: meta.help, required: required && allRequired };
    if (inner.def?.type === 'enum') return [{ ...common, input: 'choice', options: inner.options ?? [] }];
    if (inner.def?.type === 'string') return [{ ...common, input: 'choice', options: meta.examples ?? [] }];
    if (inner.def?.type === 'boolean') return [{ ...common, input: 'flag' }];
    if (meta.quantity) return [{ ...common, input: 'quantity', quantity: meta.quantity as Quantity }];
    return [{ ...common, input: 'number' }];
  });
}

/** The rows of an element's form, in the order of its schema. */
export const fieldsOf = (kind: Element['kind']): FieldRow[] =>
  rowsOf((elementKind(kind).fields as Schema).def?.shape ?? {}, '', true);

/** Rows that most people need; the rest waits behind "more about it". */
const EVERYDAY: readonly string[] = [
  'surface',
  'length_m',
  'diameter_m',
  'count',
  'fitting',
  'entry',
  'opening',
  'angle_deg',
  'fromDiameter_m',
  'toDiameter_m',
  'inletDiameter_m',
  'bodyDiameter_m',
  'each/cleanFlow_m3_s',
  'each/cleanPressure_Pa',
  'each/loadedPressure_Pa',
  'drum/material',
  'drum/wallThickness_m',
  'drum/height_m',
  'drum/diameter_m',
  'flow_m3_s',
  'pressure_Pa',
];
export const isEveryday = (row: FieldRow): boolean => row.required || EVERYDAY.includes(row.path);

/** Kinds of elements in the order forms offer them, with their English labels. */
export const KINDS = ELEMENT_KINDS.map(({ kind, label }) => ({ kind: kind as Element['kind'], label }));

const LABELS: Record<string, Record<string, { label: string }>> = {
  surface: SURFACES,
  fitting: tables.FITTINGS,
  entry: tables.ENTRIES,
};

/** What a name of the schema is called: "flexible-hose" → "ribbed flexible hose". */
export const nameLabel = (path: string, name: string): string =>
  LABELS[path]?.[name]?.label ?? name.replaceAll('-', ' ');
