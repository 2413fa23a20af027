import type { Aim, Relation } from './pointing.ts';
import { RELATIONS } from './pointing.ts';
import type { Hit } from './hits.ts';

/** A place a label means, and how likely it is that it means this one. */
export type Claim = Aim & { readonly share: number };

type Weights = Record<Relation, number>;
/** Before a plate is known: where values stand from their labels and numbers from their units. Practice values. */
const LABEL_FIRST: Weights = { right: 0.5, below: 0.36, left: 0.06, above: 0.08 };
const UNIT_FIRST: Weights = { left: 0.62, below: 0.2, right: 0.16, above: 0.02 };
/** How many labels the first guess is worth. */
const FIRST_COUNT = 3;
/** A label whose value is nowhere: worn away, or a heading. */
const NO_VALUE = 0.02;
/** How far the fit of a value moves what its place says. */
const [LEAST_FIT, MOST_FIT] = [0.03, 8];
const ROUNDS = 4;

/**
 * Each plate places its values in its own way, mostly one way: learns which from the aims at whose end stands something that
 * fits the label, and lets that decide the rest.
 * @param fits how well what stands at a place fits what a label says, as a likelihood ratio
 * @returns for each label its aims with their chances; what is missing to one is the chance that it has no value
 * Source: expectation maximisation of a mixture (Dempster, Laird & Rubin 1977).
 */
export function claimsOf(aims: readonly Aim[], fits: (aim: Aim) => number): Claim[] {
  const byHit = new Map<Hit, Aim[]>();
  for (const aim of aims) byHit.set(aim.hit, [...(byHit.get(aim.hit) ?? []), aim]);
  const ratio = new Map(aims.map((aim) => [aim, Math.min(Math.max(fits(aim), LEAST_FIT), MOST_FIT)]));
  const weights = { label: LABEL_FIRST, unit: UNIT_FIRST };
  let claims: Claim[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    claims = [...byHit.values()].flatMap((own) =>
      shared(own, (aim) => weights[kindOf(aim)][aim.relation] * aim.fit * ratio.get(aim)!),
    );
    for (const kind of ['label', 'unit'] as const) {
      weights[kind] = learnt(
        kind === 'label' ? LABEL_FIRST : UNIT_FIRST,
        claims.filter((claim) => kindOf(claim) === kind),
      );
    }
  }
  return claims;
}

const kindOf = ({ hit }: Aim): 'label' | 'unit' => (hit.isUnit ? 'unit' : 'label');

function shared(aims: readonly Aim[], worth: (aim: Aim) => number): Claim[] {
  const sum = aims.reduce((total, aim) => total + worth(aim), NO_VALUE);
  return aims.map((aim) => ({ ...aim, share: worth(aim) / sum }));
}

function learnt(first: Weights, claims: readonly Claim[]): Weights {
  const count = (relation: Relation) =>
    claims.reduce(
      (sum, claim) => sum + (claim.relation === relation ? claim.share * claim.hit.clarity : 0),
      FIRST_COUNT * first[relation],
    );
  const sum = RELATIONS.reduce((total, relation) => total + count(relation), 0);
  return Object.fromEntries(RELATIONS.map((relation) => [relation, count(relation) / sum])) as Weights;
}
