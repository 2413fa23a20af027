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
  /** a further value seems to be missing, or to be one too many; or nothing but its look says that it is one */
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
    if (!first) return byLook(field, all);
    const isSeveral = FIGURE_FORMS[field]?.several === true;
    const further = rest.filter(({ chance, candidate }) => isSeveral && chance >= FURTHER && isPointedAt(candidate));
    return [{ field, first, further }];
  });
  const placed = withRatings(standings);
  return standings.map(({ field, first }) => {
    const { parts, isDoubted } = placed.get(field)!;
    return { field, parts, isDoubted: isDoubted || !hasEvidence(first.candidate) };
  });
}

/** A number that looks like a field nearly every plate has, and the chance it has at least. Its form says as much, see `formed`. */
const TELLING_LOOK: { readonly [Name in FieldName]?: { readonly formed: number; readonly chance: number } } = {
  speed_rpm: { formed: 0.9, chance: 0.02 },
};

/** Where nothing points at a field, the number that looks most like it: whoever checks it has something to check. */
function byLook(field: FieldName, all: readonly Assigned[]): Standing[] {
  const look = TELLING_LOOK[field];
  if (!look) return [];
  const [first] = all
    .filter(({ candidate }) => candidate.field === field && candidate.formed > look.formed)
    .toSorted((a, b) => b.chance - a.chance);
  return first && first.chance > look.chance ? [{ field, first, further: [] }] : [];
}

const isPointedAt = ({ labelled, united }: Candidate) => labelled + united > 1.5;
const hasEvidence = ({ labelled, united, formed }: Candidate) =>
  labelled > LEAST_EVIDENCE || united > LEAST_EVIDENCE || formed > 2.2;
