import { inOneRow, middle, type Box } from '../layout/boxes.ts';
import { FIGURE_FORMS } from '../tables/fields.ts';
import type { Candidate } from './candidates.ts';

/** A candidate with its chance when all places and fields are settled together. */
export type Assigned = { readonly candidate: Candidate; readonly chance: number };

const ROUNDS = 30;

/**
 * As `settleAll`, where codes of several words, once they are likely, take the places of all their words.
 */
export function assigned(candidates: readonly Candidate[]): Assigned[] {
  const first = settleAll(candidates);
  const long = first.filter(({ candidate, chance }) => chance > 0.5 && boxOf(candidate).x1 > candidate.place.x1);
  if (!long.length) return first;
  return settleAll(
    candidates.filter(
      ({ place }) => !long.some(({ candidate }) => candidate.place !== place && covers(boxOf(candidate), place)),
    ),
  );
}

const boxOf = ({ alternatives }: Candidate) => alternatives[0]!.box;
const covers = (box: Box, place: Box) => inOneRow(box, place) && middle(place)[0] > box.x0 && middle(place)[0] < box.x1;

/**
 * Gives each place one meaning at most and each field one place at most, all at once; fields a plate prints several of may
 * have more places.
 * @returns the chance of every candidate
 * Source: scaling of rows and columns in turn (Sinkhorn 1964), with a row and a column for nobody.
 */
function settleAll(candidates: readonly Candidate[]): Assigned[] {
  const odds = candidates.map(({ score }) => Math.exp(Math.min(Math.max(score, -20), 20)));
  const [byPlace, byField] = [groups(candidates, (c) => c.place.id), groups(candidates, (c) => c.field)];
  const rows = new Map([...byPlace.keys()].map((key) => [key, 1]));
  const columns = new Map([...byField.keys()].map((key) => [key, 1]));
  for (let round = 0; round < ROUNDS; round++) {
    for (const [place, own] of byPlace)
      rows.set(
        place,
        1 /
          (1 +
            own.reduce(
              (sum, i) => sum + odds[i]! * (standsAgain(candidates[i]!) ? 1 : columns.get(candidates[i]!.field)!),
              0,
            )),
      );
    for (const [field, own] of byField) {
      columns.set(
        field,
        Math.min(1, 1 / own.reduce((sum, i) => sum + odds[i]! * rows.get(candidates[i]!.place.id)!, 1e-12)),
      );
    }
  }
  return candidates.map((candidate, i) => ({
    candidate,
    chance: odds[i]! * rows.get(candidate.place.id)! * (standsAgain(candidate) ? 1 : columns.get(candidate.field)!),
  }));
}

/** A further voltage or current has a label or unit of its own. */
const standsAgain = ({ field, labelled, united }: Candidate) =>
  FIGURE_FORMS[field]?.several === true && labelled + united > 1.5;

function groups<Key>(candidates: readonly Candidate[], key: (candidate: Candidate) => Key): Map<Key, number[]> {
  const found = new Map<Key, number[]>();
  candidates.forEach((candidate, i) => found.set(key(candidate), [...(found.get(key(candidate)) ?? []), i]));
  return found;
}
