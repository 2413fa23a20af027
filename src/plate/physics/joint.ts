import type { Agreement } from './power.ts';

/** One value a quantity may have, and its chance; null: it is something else, or stands nowhere. */
export type Choice<Value> = { readonly value: Value | null; readonly share: number };
export type Choices = Readonly<Record<string, readonly Choice<unknown>[]>>;

export type Weighed<Table extends Choices> = {
  /** chances of the choices in their order, all agreement taken together */
  readonly shares: { readonly [Name in keyof Table]: readonly number[] };
  /** the chance that the values are as read and do not agree */
  readonly atOdds: readonly number[];
};

/**
 * Chances of readings when they are held against each other: every combination weighed by its readings and by how well its
 * values agree.
 * @param agreements each looks at one combination
 * Source: Bayes' rule over all combinations.
 */
export function weighedTogether<Table extends Choices>(
  choices: Table,
  agreements: (values: { readonly [Name in keyof Table]: Table[Name][number]['value'] }) => readonly Agreement[],
): Weighed<Table> {
  const names = Object.keys(choices) as (keyof Table & string)[];
  const sums = new Map(names.map((name) => [name, choices[name]!.map(() => 0)]));
  const odds: number[] = [];
  let total = 0;
  const visit = (depth: number, picked: number[], share: number) => {
    if (share < 1e-9) return;
    if (depth < names.length) {
      choices[names[depth]!]!.forEach((choice, i) => visit(depth + 1, [...picked, i], share * choice.share));
      return;
    }
    const values = Object.fromEntries(names.map((name, k) => [name, choices[name]![picked[k]!]!.value]));
    const said = agreements(values as { readonly [Name in keyof Table]: Table[Name][number]['value'] });
    const weight = share * Math.exp(said.reduce((sum, { support }) => sum + support, 0));
    total += weight;
    names.forEach((name, k) => (sums.get(name)![picked[k]!]! += weight));
    said.forEach(({ isAtOdds }, k) => (odds[k] = (odds[k] ?? 0) + (isAtOdds ? weight : 0)));
  };
  visit(0, [], 1);
  return {
    shares: Object.fromEntries(
      names.map((name) => [name, sums.get(name)!.map((sum) => sum / total)]),
    ) as unknown as Weighed<Table>['shares'],
    atOdds: odds.map((sum) => sum / total),
  };
}
