import type { Hit } from './hits.ts';
import type { Place } from './places.ts';
import type { Claim } from './relations.ts';
import { inOneRow, middle, type Box } from './boxes.ts';

/** Several ratings stand in rows under one row of labels, or in columns beside one column of labels. */
type Direction = 'below' | 'right';

/** So many labels must go on in one row or column before it counts as one more rating. */
const LEAST_CELLS = 3;
/** A label has told its first value surely enough to tell its second. */
const LEAST_SHARE = 0.4;
const CARRIED_ON = 0.92;
/** Distance of one row from the next, in capital heights. */
const MOST_ROW_GAP = 4;

/** Claims with those that labels of a table have on the further rows or columns of ratings. */
export function withFurtherRatings(claims: readonly Claim[], places: readonly Place[], hits: readonly Hit[]): Claim[] {
  return [...claims, ...further('below', claims, places, hits), ...further('right', claims, places, hits)];
}

function further(
  direction: Direction,
  claims: readonly Claim[],
  places: readonly Place[],
  hits: readonly Hit[],
): Claim[] {
  const found: Claim[] = [];
  let last = claims.filter((claim) => claim.relation === direction && claim.share > LEAST_SHARE && !isOther(claim));
  while (last.length >= LEAST_CELLS) {
    const next = last.flatMap((claim) => {
      const place = nextCell(direction, claim, places, hits);
      const isTaken = !place || claims.some((c) => c.place === place && c.share > LEAST_SHARE && !c.hit.isUnit);
      return isTaken ? [] : [{ ...claim, place, share: claim.share * CARRIED_ON }];
    });
    // one rating is one row: those that do not stand in it are something else
    last = next.filter(
      (claim) => next.filter((other) => isAligned(direction, claim.place, other.place)).length >= LEAST_CELLS,
    );
    found.push(...last);
  }
  return found;
}

const isOther = ({ hit }: Claim) => hit.meanings.every(({ field }) => field === 'other');

const isAligned = (direction: Direction, a: Place, b: Place) =>
  direction === 'below' ? inOneRow(a, b) : overlaps(a, b);
const overlaps = (a: Box, b: Box) => Math.min(a.x1, b.x1) > Math.max(a.x0, b.x0);

function nextCell(
  direction: Direction,
  { place, hit }: Claim,
  places: readonly Place[],
  hits: readonly Hit[],
): Place | undefined {
  const ahead = (box: Box) =>
    direction === 'below'
      ? box.y0 > place.y1 - 0.3 * place.capitalHeight && (overlaps(box, place) || overlaps(box, hit))
      : box.x0 > place.x1 - 0.3 * place.capitalHeight && inOneRow(box, place);
  const distance = (box: Box) => (direction === 'below' ? middle(box)[1] : middle(box)[0]);
  const next = places.filter((other) => other.figure && ahead(other)).toSorted((a, b) => distance(a) - distance(b))[0];
  if (!next) return undefined;
  if (direction === 'below' && next.y0 - place.y1 > MOST_ROW_GAP * place.capitalHeight) return undefined;
  // a label between begins something new; so does a unit over a box, as labels of other scripts have it
  const isBetween = (other: Hit) => (direction === 'below' ? other.y1 < next.y0 : other.x1 < next.x0);
  const beginsNew = (other: Hit) => ahead(other) && distance(other) < distance(next);
  return hits.some((other) => beginsNew(other) && (!other.isUnit || isBetween(other))) ? undefined : next;
}
