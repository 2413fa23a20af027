import type { Claim } from '../layout/relations.ts';
import type { FieldName } from '../reading.ts';

/** Before anything is read, one place in about twenty-five holds a given field. */
export const BASE = 0.04;

/** The chance that claims give a place to a field. */
export function chanceOf(claims: readonly Claim[], field: FieldName): number {
  return (
    1 - claims.reduce((none, { hit, share }) => none * (1 - share * hit.clarity * weightOf(hit.meanings, field)), 1)
  );
}

const weightOf = (meanings: Claim['hit']['meanings'], field: FieldName) =>
  Math.min(
    1,
    meanings.reduce(
      (sum, m) =>
        sum +
        (m.field === field ||
        (m.field === 'input' && field === 'ratedPower_W') ||
        (m.field === 'shaft' && field === 'ratedPower_W')
          ? m.weight
          : 0),
      0,
    ),
  );

/** What the labels, or the units, around a place say about a field: logarithm of the likelihood ratio. */
export function evidence(claims: readonly Claim[], field: FieldName): number {
  const own = chanceOf(claims, field);
  const others = claims.reduce(
    (none, { hit, share }) => none * (1 - share * hit.clarity * (1 - weightOf(hit.meanings, field))),
    1,
  );
  const chance = Math.min(own * (0.1 + 0.9 * others) + (1 - own) * others * BASE + 0.002, 0.998);
  return logit(chance) - logit(BASE);
}

const logit = (chance: number) => Math.log(chance / (1 - chance));
