import type { Claim } from '../layout/relations.ts';
import type { FieldName } from '../reading.ts';
import { FIGURE_FORMS } from '../tables/fields.ts';

/** A unit that may stand with a number, and its chance. */
export type Factor = { readonly factor: number; readonly offset: number; readonly share: number };
const BARE: Readonly<Record<string, readonly Factor[]>> = {
  efficiency: [
    { factor: 0.01, offset: 0, share: 0.75 },
    { factor: 1, offset: 0, share: 0.25 },
  ],
};
const AS_PRINTED: readonly Factor[] = [{ factor: 1, offset: 0, share: 1 }];

/** Units that claim the number; where none surely does, the number as it stands, if the field may go without. */
export function factorsFor(field: FieldName, units: readonly Claim[]): Factor[] {
  const form = FIGURE_FORMS[field]!;
  const claimed = units.flatMap(({ hit, share }) =>
    hit.meanings.flatMap((m) =>
      m.field === field && m.factor !== undefined
        ? [{ factor: m.factor, offset: m.offset ?? 0, share: share * hit.clarity * m.weight }]
        : [],
    ),
  );
  const rest = Math.max(0, 1 - claimed.reduce((sum, { share }) => sum + share, 0));
  const bare = form.needsUnit
    ? []
    : (BARE[field] ?? AS_PRINTED).map((f) => ({ ...f, share: f.share * Math.max(rest, 0.02) }));
  const merged = new Map<string, Factor>();
  for (const f of [...claimed, ...bare]) {
    const key = `${f.factor} ${f.offset}`;
    merged.set(key, { ...f, share: f.share + (merged.get(key)?.share ?? 0) });
  }
  return [...merged.values()];
}
