import type { Aim, Relation } from './pointing.ts';
import type { Hit } from './hits.ts';
import type { Place } from './places.ts';
import { inOneRow } from './boxes.ts';

/** A place a label means, and how likely it is that it means this one. */
export type Claim = Aim & { readonly share: number };

/** Where a value stands from its label, behind a ruling or not. */
type Way = `${Relation}${'' | ' across'}`;
type Weights = Readonly<Record<Way, number>>;
type Kind = 'label' | 'loose unit' | 'attached unit';

/** A value behind a ruling is rare until a plate shows that its boxes are made so. */
const ACROSS = 0.12;
const weights = (right: number, below: number, left: number, above: number): Weights => ({
  right,
  below,
  left,
  above,
  'right across': ACROSS * right,
  'below across': ACROSS * below,
  'left across': ACROSS * left,
  'above across': ACROSS * above,
});
/**
 * Before a plate is known: where values stand from their labels and numbers from their units. Units that stand apart may be
 * labels as well as units in a column of their own. Practice values.
 */
const FIRST: Readonly<Record<Kind, Weights>> = {
  label: weights(0.5, 0.36, 0.06, 0.08),
  'loose unit': weights(0.25, 0.3, 0.25, 0.03),
  'attached unit': weights(0.05, 0.04, 0.9, 0.01),
};
/** How many labels the first guess is worth. */
const FIRST_COUNT = 3;
/** A label whose value is nowhere: worn away, or a heading. */
const NO_VALUE = 0.02;
/** How far the fit of a value moves what its place says. */
const [LEAST_FIT, MOST_FIT] = [0.03, 3];
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
  const kinds = new Map([...byHit].map(([hit, own]) => [hit, kindOf(hit, own)]));
  let known = FIRST;
  let claims: Claim[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    claims = [...byHit].flatMap(([hit, own]) =>
      shared(own, (aim) => known[kinds.get(hit)!][wayOf(aim)] * aim.fit * ratio.get(aim)!),
    );
    known = learnt(claims, kinds);
  }
  return claims;
}

const wayOf = ({ relation, isAcross }: Aim): Way => `${relation}${isAcross ? ' across' : ''}`;

function kindOf(hit: Hit, aims: readonly Aim[]): Kind {
  if (!hit.isUnit) return 'label';
  return aims.some(({ isAttached }) => isAttached) ? 'attached unit' : 'loose unit';
}

/** What a label of no interest names often has several words: `NV 90 L/2`. A gap between them, in capital heights. */
const NEXT_WORD = 1.3;
const CARRIED_ON = 0.85;

/** Claims of labels that name what nobody asked for, carried on to the words that follow closely. */
export function carriedOn(claims: readonly Claim[], places: readonly Place[]): Claim[] {
  return claims.flatMap((claim) => {
    const isOther = claim.hit.meanings.some(({ field, weight }) => field === 'other' && weight > 0.5);
    if (!isOther || claim.hit.isUnit) return [claim];
    const carried = [claim];
    for (;;) {
      const last = carried.at(-1)!;
      const next = places.find((place) => isNext(last.place, place));
      if (!next || claims.some(({ place, share }) => place === next && share > 0.3)) return carried;
      carried.push({ ...last, place: next, share: last.share * CARRIED_ON });
    }
  });
}

const isNext = (last: Place, place: Place) =>
  place !== last && place.x0 > last.x0 && place.x0 - last.x1 < NEXT_WORD * last.capitalHeight && inOneRow(last, place);

function shared(aims: readonly Aim[], worth: (aim: Aim) => number): Claim[] {
  const sum = aims.reduce((total, aim) => total + worth(aim), NO_VALUE);
  return aims.map((aim) => ({ ...aim, share: worth(aim) / sum }));
}

/** Chances of the ways on this plate; units that stand apart go by the labels too. */
function learnt(claims: readonly Claim[], kinds: ReadonlyMap<Hit, Kind>): typeof FIRST {
  const of = (kind: Kind) => claims.filter(({ hit }) => kinds.get(hit) === kind);
  const label = counted(FIRST.label, [...of('label'), ...of('loose unit')]);
  return {
    label,
    'loose unit': counted(FIRST['loose unit'], [...of('loose unit'), ...of('label')]),
    'attached unit': counted(FIRST['attached unit'], of('attached unit')),
  };
}

function counted(first: Weights, claims: readonly Claim[]): Weights {
  const ways = Object.keys(first) as Way[];
  const count = (way: Way) =>
    claims.reduce(
      (sum, claim) => sum + (wayOf(claim) === way ? claim.share * claim.hit.clarity : 0),
      FIRST_COUNT * first[way],
    );
  const sum = ways.reduce((total, way) => total + count(way), 0);
  return Object.fromEntries(ways.map((way) => [way, count(way) / sum])) as Weights;
}
