import { contradicted } from '../doubts/column-witness.ts';
import type { NamedColumn } from '../heads/name-columns.ts';
import type { Weighed } from './weigh-column.ts';

/** What is left of the sureness of names that were exchanged. */
const EXCHANGED = 0.5;

/**
 * Columns with the names of the two pressures exchanged where all others contradict both: their names differ by a word, and
 * one rises as the other falls. To be checked. @param values the columns' readings, row by row
 */
export function exchanged(
  columns: readonly NamedColumn[],
  values: readonly (readonly (Weighed | null)[])[],
): readonly NamedColumn[] {
  const at = (['staticPressure_Pa', 'velocityPressure_Pa'] as const).map((name) =>
    columns.findIndex(({ quantity }) => quantity === name),
  );
  if (at.some((c) => c < 0)) return columns;
  const against = contradicted(columns.map(({ quantity }, c) => ({ quantity, values: values[c]! })));
  if (!at.every((c) => against[c])) return columns;
  const [suction, velocity] = at as [number, number];
  const named = (c: number, other: number): NamedColumn => ({
    ...columns[c]!,
    quantity: columns[other]!.quantity,
    sureness: EXCHANGED * columns[c]!.sureness,
  });
  return columns.map((column, c) =>
    c === suction ? named(suction, velocity) : c === velocity ? named(velocity, suction) : column,
  );
}
