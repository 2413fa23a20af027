import type { Ruling } from '../../writing/written.ts';
import { FIGURE_FORMS } from '../tables/fields.ts';
import { stripOf } from './clear-rulings.ts';
import type { Hit } from './hits.ts';
import type { Place } from './places.ts';
import { inOneRow, middle, type Box } from './boxes.ts';

/** Where a value stands, seen from its label. */
const RELATIONS = ['right', 'left', 'below', 'above'] as const;
export type Relation = (typeof RELATIONS)[number];

/** A place a label may mean, and how well it lies for that. */
export type Aim = {
  readonly hit: Hit;
  readonly place: Place;
  readonly relation: Relation;
  readonly fit: number;
  /** a ruling runs between them: the side of a box or a cell */
  readonly isAcross: boolean;
  /** a unit right behind its number */
  readonly isAttached: boolean;
};

/** Gaps in capital heights over which a place grows a third less likely. Values stand far from labels in wide tables. */
const REACH: Readonly<Record<Relation, number>> = { right: 14, left: 2.2, below: 3.2, above: 2.5 };
/** A unit belongs to the number right before it; one in a column of its own stands further off. */
const UNIT_REACH: Readonly<Record<Relation, number>> = { right: 5, left: 2.2, below: 3.2, above: 2.5 };
/** Boxes of words are as wide as their reader thinks: they may overlap by this, in capital heights. */
const SLACK = 0.7;
/** Rulings are found in pieces and with two edges; a value behind more of them than this is another box's. */
const SIDES = 4;
const BEHIND_MORE = 0.2;

/** Every place each label may mean: the next one in each direction, as far as nothing stands between. */
export function aimsOf(hits: readonly Hit[], places: readonly Place[], rulings: readonly Ruling[]): Aim[] {
  return hits.flatMap((hit) =>
    RELATIONS.flatMap((relation) => {
      const isAlong = relation === 'right' || relation === 'left';
      const seen = wantsFigures(hit) ? places.filter(({ figure }) => figure) : places;
      const found = isAlong ? alongRow(hit, relation, hits, seen) : inColumn(hit, relation, hits, seen, rulings);
      return found.map(({ place, gap }): Aim => {
        const isAttached = hit.isUnit && relation === 'left' && gap < ATTACHED;
        const crossed = rulings.filter((ruling) => parts(ruling, hit, place)).length;
        const near = Math.exp(-Math.max(gap, 0) / (2.5 * (hit.isUnit ? UNIT_REACH : REACH)[relation]));
        return {
          hit,
          place,
          relation,
          fit: near * (crossed > SIDES ? BEHIND_MORE : 1) * (isOfSize(hit, place) ? 1 : ODD_SIZE),
          isAcross: crossed > 0,
          isAttached,
        };
      });
    }),
  );
}
/** A label of a number passes words over on its way to it; so does every unit. */
const wantsFigures = ({ isUnit, meanings }: Hit) =>
  isUnit ||
  meanings.every(({ field }) => field !== 'other' && (field === 'input' || field === 'shaft' || FIGURE_FORMS[field]));

/** Values are printed about as large as their labels, or larger. */
const isOfSize = (hit: Hit, place: Place) => {
  const ratio = place.capitalHeight / hit.capitalHeight;
  return ratio > 0.62 && ratio < 3.6;
};
const ODD_SIZE = 0.12;

/** A unit this near to its number belongs to it, in capital heights. */
const ATTACHED = 1.2;

type Found = { place: Place; gap: number };

/** The next place to one side in the row. Labels between are passed over where they say the same. */
function alongRow(hit: Hit, relation: 'right' | 'left', hits: readonly Hit[], places: readonly Place[]): Found[] {
  const sign = relation === 'right' ? 1 : -1;
  const [from, edge] = sign > 0 ? [hit.x1, (box: Box) => box.x0] : [hit.x0, (box: Box) => box.x1];
  const height = hit.capitalHeight;
  const ahead = (box: Box) => sign * (edge(box) - from) > -SLACK * height && inOneRow(hit, box);
  const items = [
    ...hits
      .filter(
        (other) =>
          other !== hit && !sharesRun(other, hit) && ahead(other) && !places.some((place) => isOn(place, other)),
      )
      .map((other) => ({ box: other as Box, hit: other, place: null })),
    ...places
      .filter((place) => ahead(place) && !isOn(place, hit))
      .map((place) => ({ box: place as Box, hit: null, place })),
  ].toSorted((a, b) => sign * (edge(a.box) - edge(b.box)));
  for (const item of items) {
    if (item.place)
      return [
        { place: item.place, gap: (sign * (edge(item.place) - from)) / Math.max(height, item.place.capitalHeight) },
      ];
    if (item.hit && !agree(item.hit, hit)) return [];
  }
  return [];
}

const sharesRun = (a: Hit, b: Hit) => a.runs.some(({ id }) => b.runs.some((run) => run.id === id));
/** A lone letter is a place and a label at once. */
const isOn = (place: Place, hit: Hit) => {
  const [x] = middle(hit);
  return place.x0 < x && place.x1 > x && inOneRow(place, hit);
};
const agree = (a: Hit, b: Hit) =>
  a.meanings.some((m) => b.meanings.some((n) => n.field === m.field || n.field === 'input' || m.field === 'input'));

/** How far to the right of a label's end its value may stand below it, in capital heights: wide boxes have small labels. */
const WIDEST_STRIP = 24;

/**
 * The next place straight below or above: in the label's own column where rulings make one, else under the label itself or
 * in the strip up to the next label of its row.
 */
function inColumn(
  hit: Hit,
  relation: 'below' | 'above',
  hits: readonly Hit[],
  places: readonly Place[],
  rulings: readonly Ruling[],
): Found[] {
  const sign = relation === 'below' ? 1 : -1;
  const height = hit.capitalHeight;
  const gapTo = (box: Box) => (sign > 0 ? box.y0 - hit.y1 : hit.y0 - box.y1);
  const [left, right] = stripOf(hit, rulings);
  const next = Math.min(
    ...hits.filter((other) => inOneRow(other, hit) && other.x0 > hit.x1).map(({ x0 }) => x0),
    hit.x1 + WIDEST_STRIP * height,
  );
  // the unit behind a label has its label's width too
  const start = Math.min(
    hit.x0,
    ...hits
      .filter(
        (other) =>
          inOneRow(other, hit) && other.x0 < hit.x0 && hit.x0 - other.x1 < SAME_LABEL * height && agree(other, hit),
      )
      .map(({ x0 }) => x0),
  );
  const isUnder = (box: Box) => {
    const [x] = middle(box);
    if (x < left || x > right) return false;
    const isCell = Number.isFinite(left) && Number.isFinite(right);
    return aside(box, hit) === 0 || isCell || (x > start && (Number.isFinite(right) || x < next));
  };
  // what stands right under the label comes before what stands beside that
  const distance = (box: Box) => gapTo(box) + ASIDE * aside(box, hit);
  const under = places
    .filter((place) => !isOn(place, hit) && isUnder(place) && gapTo(place) > -0.5 * height)
    .toSorted((a, b) => distance(a) - distance(b));
  const nearest = under[0];
  if (!nearest) return [];
  const blocked = hits.some(
    (other) =>
      other !== hit &&
      gapTo(other) > 0 &&
      gapTo(other) < gapTo(nearest) - 0.2 * height &&
      isUnder(other) &&
      !agree(other, hit),
  );
  // without the sides of a cell, what stands far to the side is hardly meant
  const isCell = Number.isFinite(left) && Number.isFinite(right);
  const gap = isCell ? gapTo(nearest) : distance(nearest);
  return blocked ? [] : [{ place: nearest, gap: gap / Math.max(height, nearest.capitalHeight) }];
}

/** A unit follows its label this closely, in capital heights. */
const SAME_LABEL = 2;

/** How far one box lies to the side of another, 0 where they overlap. */
const aside = (box: Box, other: Box) => Math.max(0, box.x0 - other.x1, other.x0 - box.x1);
/** What a step to the side counts against a step down. */
const ASIDE = 0.6;

/** Whether a ruling runs between a label and a place: across the line from one to the other. */
function parts(ruling: Ruling, from: Box, to: Box): boolean {
  const [a, b] = [middle(from), middle(to)];
  const side = ([x, y]: readonly [number, number]) =>
    (ruling.x1 - ruling.x0) * (y - ruling.y0) - (ruling.y1 - ruling.y0) * (x - ruling.x0);
  const between = (x: number, y: number) => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
  return side(a) * side(b) < 0 && between(ruling.x0, ruling.y0) * between(ruling.x1, ruling.y1) < 0;
}
