import type { FieldName } from '../reading.ts';
import { FIGURE_FORMS } from '../tables/fields.ts';
import type { Assigned } from './assign.ts';
import type { Candidate } from './candidates.ts';
import { withRatings, type Standing } from './ratings.ts';
import { withoutRepeated } from './same-power.ts';

/** What stands at one place, settled for one field. */
export type SettledPart = { readonly candidate: Candidate; readonly chance: number };
/** A field with the places that hold it: several only where a plate prints several of it. */
export type Settled = {
  readonly field: FieldName;
  readonly parts: readonly SettledPart[];
  /** a further value seems to be missing, or to be one too many */
  readonly isDoubted: boolean;
};

/** The least chance at which a place is said to hold a field at all; below it the field stays open. */
const LEAST = 0.12;
/** A further place of a field must be its own beyond doubt. */
const FURTHER = 0.5;
/** Logarithm of the evidence a label, a unit or a form of its own must give: likeliness alone claims nothing. */
const LEAST_EVIDENCE = 0.7;

/** The places of each field. */
export function settledAmong(all: readonly Assigned[]): Settled[] {
  const fields = [...new Set(all.map(({ candidate }) => candidate.field))];
  const standings = fields.flatMap((field): Standing[] => {
    const own = all
      .filter(({ candidate, chance }) => candidate.field === field && chance >= LEAST && hasEvidence(candidate))
      .toSorted((a, b) => b.chance - a.chance);
    const [first, ...rest] = field === 'ratedPower_W' ? withoutRepeated(own) : own;
    if (!first) return [];
    const isSeveral = FIGURE_FORMS[field]?.several === true;
    const further = rest.filter(({ chance, candidate }) => isSeveral && chance >= FURTHER && isPointedAt(candidate));
    return [{ field, first, further }];
  });
  const placed = withRatings(standings);
  return standings.map(({ field }) => ({ field, ...placed.get(field)! }));
}

const isPointedAt = ({ labelled, united }: Candidate) => labelled + united > 1.5;
const hasEvidence = ({ labelled, united, formed }: Candidate) =>
  labelled > LEAST_EVIDENCE || united > LEAST_EVIDENCE || formed > 2.2;
