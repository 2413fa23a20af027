import type { FieldName } from '../reading.ts';
import { FIGURE_FORMS } from '../tables/fields.ts';
import type { Assigned } from './assign.ts';
import type { Alternative, Candidate } from './candidates.ts';

/** What stands at one place, settled for one field. */
export type SettledPart = { readonly candidate: Candidate; readonly chance: number };
/** A field with the places that hold it: several only where a plate prints several of it. */
export type Settled = { readonly field: FieldName; readonly parts: readonly SettledPart[] };

/** The least chance at which a place is said to hold a field at all; below it the field stays open. */
const LEAST = 0.12;
/** A further place of a field must be its own beyond doubt. */
const FURTHER = 0.6;
/** Logarithm of the evidence a label, a unit or a form of its own must give: likeliness alone claims nothing. */
const LEAST_EVIDENCE = 0.7;

/** The places of each field. */
export function settledAmong(all: readonly Assigned[]): Settled[] {
  const fields = [...new Set(all.map(({ candidate }) => candidate.field))];
  return fields.flatMap((field) => {
    const own = all
      .filter(({ candidate, chance }) => candidate.field === field && chance >= LEAST && hasEvidence(candidate))
      .toSorted((a, b) => b.chance - a.chance);
    const first = own[0];
    if (!first) return [];
    const further = FIGURE_FORMS[field]?.several
      ? own.slice(1).filter(({ chance, candidate }) => chance >= FURTHER && isPointedAt(candidate))
      : [];
    const parts = [first, ...further].toSorted(
      (a, b) => a.candidate.place.y0 - b.candidate.place.y0 || a.candidate.place.x0 - b.candidate.place.x0,
    );
    return [{ field, parts }];
  });
}

const isPointedAt = ({ labelled, united }: Candidate) => labelled + united > 1.5;
const hasEvidence = ({ labelled, united, formed }: Candidate) =>
  labelled > LEAST_EVIDENCE || united > LEAST_EVIDENCE || formed > 2.2;

/** The likeliest value at a place. */
export const bestOf = (candidate: Candidate): Alternative => candidate.alternatives[0]!;
