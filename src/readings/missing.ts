import { pointer, type Warning } from '../issues/result.ts';
import type { Method } from './methods/index.ts';
import { Rig, Row, type Rig as RigType, type Row as RowType } from './schema.ts';

/** What a field is called, from the schema itself. */
function labelOf(field: unknown): string {
  let schema = field as { meta?: () => { label?: string } | undefined; unwrap?: () => unknown } | undefined;
  while (schema !== undefined) {
    const label = schema.meta?.()?.label;
    if (label !== undefined) return label;
    schema = schema.unwrap?.() as typeof schema;
  }
  return 'value';
}

const isEmpty = (value: unknown): boolean => value == null || (Array.isArray(value) && value.length === 0);

/** What the rig leaves open that its method can't do without: then none of its rows can be used. */
export function missingInRig(method: Method, rig: RigType, path: string): Warning[] {
  if (method.rigNeeds.some((set) => set.every((field) => rig[field] != null))) return [];
  const open = method.rigNeeds.map((set) => set.filter((field) => rig[field] == null));
  const fewest = open.reduce((least, set) => (set.length < least.length ? set : least));
  const names = fewest.map((field) => labelOf(Rig.shape[field])).join(' and ');
  return [
    {
      code: 'rig-incomplete',
      path: path + pointer('rig', fewest[0]!),
      text: `These readings can't be used yet: ${names} missing.`,
    },
  ];
}

/** What a row leaves open that its method can't do without: then the row is left out. */
export function missingInRow(method: Method, row: RowType, path: string): Warning[] {
  return method.rowFields
    .filter((field) => isEmpty(row[field]))
    .map((field) => ({
      code: 'row-incomplete',
      path: path + pointer(field),
      text: `This row is left out: ${labelOf(Row.shape[field])} missing.`,
    }));
}
