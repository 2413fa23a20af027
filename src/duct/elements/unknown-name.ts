import type { ElementFault } from './element.ts';

/** A name outside the table is only a label, and needs a `k` beside it. */
export function unknownName(
  name: string | null | undefined,
  field: string,
  k: number | null | undefined,
  known: readonly string[],
): ElementFault[] {
  if (name == null || k != null || known.includes(name)) return [];
  const message = `No ${field} is called “${name}”. Use one of ${known.join(', ')}, or give its own loss coefficient as "k".`;
  return [{ code: 'not-understood', field, message }];
}
