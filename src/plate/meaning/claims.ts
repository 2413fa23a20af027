import type { Ruling } from '../../writing/written.ts';
import type { Hit } from '../layout/hits.ts';
import type { Place } from '../layout/places.ts';
import { aimsOf, type Aim } from '../layout/pointing.ts';
import { carriedOn, claimsOf, type Claim } from '../layout/relations.ts';
import { middle } from '../layout/boxes.ts';
import { withFurtherRatings } from '../layout/tables.ts';
import type { FieldName } from '../reading.ts';
import type { ReadPlace } from './alternatives.ts';
import { formRatio } from './candidates.ts';
import type { Factor } from './factors.ts';

/** A lone letter that a label means with this chance is a value, and no label itself. */
const IS_VALUE = 0.4;

/** Which places the labels and units of a plate mean. */
export function claimsAmong(
  hits: readonly Hit[],
  places: readonly Place[],
  reads: readonly ReadPlace[],
  rulings: readonly Ruling[],
): Claim[] {
  const pointing = hits.filter(({ meanings }) => meanings.every(({ value }) => value === undefined));
  const first = claimsFrom(aimsOf(pointing, places, rulings), reads);
  const values = first
    .filter(({ hit, share }) => !hit.isUnit && share * hit.clarity > IS_VALUE)
    .map(({ place }) => place);
  const labels = pointing.filter((hit) => !values.some((place) => isOn(hit, place)));
  const claims = labels.length === pointing.length ? first : claimsFrom(aimsOf(labels, places, rulings), reads);
  return withFurtherRatings(carriedOn(claims, places), places, labels);
}

const isOn = (hit: Hit, place: Place) => {
  const [x, y] = middle(hit);
  return x > place.x0 && x < place.x1 && y > place.y0 && y < place.y1;
};

function claimsFrom(aims: readonly Aim[], reads: readonly ReadPlace[]): Claim[] {
  const units = claimsOf(
    aims.filter(({ hit }) => hit.isUnit),
    fitOf(reads, []),
  );
  const labels = claimsOf(
    aims.filter(({ hit }) => !hit.isUnit),
    fitOf(reads, units),
  );
  return [...units, ...labels];
}

/** How well what stands at the end of an aim fits what the label or unit says, with the units already known. */
function fitOf(reads: readonly ReadPlace[], units: readonly Claim[]): (aim: Aim) => number {
  const byPlace = new Map(reads.map((read) => [read.place, read]));
  return ({ hit, place }) => {
    const beside = units.filter((claim) => claim.place === place && claim.hit !== hit);
    const ratios = hit.meanings.map(({ field, weight, factor, offset }) => {
      if (field === 'other') return weight;
      const name: FieldName = field === 'input' || field === 'shaft' ? 'ratedPower_W' : field;
      const own: Factor | null = factor === undefined ? null : { factor, offset: offset ?? 0, share: 1 };
      return weight * formRatio(byPlace.get(place)!, name, own, beside);
    });
    return Math.max(...ratios);
  };
}
