import { inOneRow, type Box } from '../layout/boxes.ts';
import type { FieldName, Rating } from '../reading.ts';
import type { SettledPart } from './settled.ts';

/** A field with its likeliest place and further ones that may be its too, by falling chance. */
export type Standing = {
  readonly field: FieldName;
  readonly first: SettledPart;
  readonly further: readonly SettledPart[];
};
/** The places that are the field's, in the order of reading; doubted where one seems to be missing or too many. */
export type Placed = { readonly parts: readonly SettledPart[]; readonly isDoubted: boolean };

/** Fields a rating row has. */
const RATED: readonly FieldName[] = [
  'ratedPower_W',
  'voltage_V',
  'current_A',
  'frequency_Hz',
  'speed_rpm',
  'powerFactor',
  'efficiency',
];
/** A second value next to the first, in capital heights. */
const BESIDE = 5;
/** Values of two ratings of one motor lie within this factor. */
const MOST_RATIO = 2.4;

/**
 * Which further places are further ratings: several fields must go on in the same row or column, or two values stand side by
 * side. A number that merely looks like it is none.
 */
export function withRatings(standings: readonly Standing[]): Map<FieldName, Placed> {
  const accepted = new Map(standings.map((s) => [s.field, s.further.filter((part) => isFurther(s, part, standings))]));
  const goOn = standings.filter((s) => isRated(s) && accepted.get(s.field)!.length > 0);
  return new Map(
    standings.map((standing): [FieldName, Placed] => {
      const further = accepted.get(standing.field)!;
      const isLeftOver = standing.further.some((part) => !further.includes(part));
      const isShort =
        isRated(standing) &&
        further.length === 0 &&
        goOn.filter((other) => areAligned(standing.first, other.first)).length >= 2;
      return [standing.field, { parts: inOrder([standing.first, ...further]), isDoubted: isLeftOver || isShort }];
    }),
  );
}

const isRated = ({ field }: Standing) => RATED.includes(field);

function isFurther(standing: Standing, part: SettledPart, all: readonly Standing[]): boolean {
  if (!isNear(standing.first, part)) return false;
  if (isBeside(standing.first, part)) return true;
  return all.some(
    (other) =>
      other !== standing &&
      isRated(other) &&
      areAligned(standing.first, other.first) &&
      other.further.some((theirs) => areAligned(part, theirs) && isNear(other.first, theirs)),
  );
}

const box = ({ candidate }: SettledPart): Box => candidate.place;
const height = ({ candidate }: SettledPart) => candidate.place.capitalHeight;
const areAligned = (a: SettledPart, b: SettledPart) =>
  inOneRow(box(a), box(b)) || Math.min(box(a).x1, box(b).x1) > Math.max(box(a).x0, box(b).x0);
const isBeside = (a: SettledPart, b: SettledPart) =>
  inOneRow(box(a), box(b)) &&
  Math.max(box(a).x0, box(b).x0) - Math.min(box(a).x1, box(b).x1) < BESIDE * Math.max(height(a), height(b));

/** Whether two values may be of one motor. */
function isNear(a: SettledPart, b: SettledPart): boolean {
  const [own, other] = [a, b].map(({ candidate }) => candidate.alternatives[0]!.numbers?.[0] ?? NaN) as [
    number,
    number,
  ];
  const ratio = Math.max(own / other, other / own);
  return ratio <= MOST_RATIO;
}

const inOrder = (parts: readonly SettledPart[]) =>
  parts.toSorted((a, b) => (inOneRow(box(a), box(b)) ? box(a).x0 - box(b).x0 : box(a).y0 - box(b).y0));

/** The rating rows of a plate with several, each with the values that stand in it; none where there is one rating. */
export function ratingRows(
  fields: readonly { readonly field: FieldName; readonly parts: readonly SettledPart[] }[],
): Rating[] {
  const rated = fields.filter(({ field }) => RATED.includes(field));
  const count = Math.max(...rated.map(({ parts }) => parts.length), 1);
  // one field with two places is a list; two fields with as many are ratings
  if (count < 2 || rated.filter(({ parts }) => parts.length === count).length < 2) return [];
  return Array.from({ length: count }, (_, row) =>
    Object.fromEntries(
      rated.flatMap(({ field, parts }) => {
        const part = parts.length === count ? parts[row] : parts.length === 1 ? parts[0] : undefined;
        const numbers = part?.candidate.alternatives[0]!.numbers;
        return numbers ? [[field, numbers.length > 1 ? numbers : numbers[0]!]] : [];
      }),
    ),
  );
}
