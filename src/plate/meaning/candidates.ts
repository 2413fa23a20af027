import type { Place } from '../layout/places.ts';
import type { Claim } from '../layout/relations.ts';
import { FIELD_NAMES, type FieldName } from '../reading.ts';
import { FIGURE_FORMS } from '../tables/fields.ts';
import { codesAs, figuresAs, type Alternative, type ReadPlace } from './alternatives.ts';
import { BASE, chanceOf, evidence } from './evidence.ts';
import { factorsFor, type Factor } from './factors.ts';

/** A field a place may hold: how much speaks for it, and its values. */
export type Candidate = {
  readonly place: Place;
  readonly field: FieldName;
  /** natural logarithm of the odds against a place nobody asks for, all evidence together */
  readonly score: number;
  /** the part of it that labels and units say, and what the form says alone */
  readonly labelled: number;
  readonly united: number;
  readonly formed: number;
  readonly alternatives: readonly Alternative[];
};

const MOST_ALTERNATIVES = 12;
/** Figures beside letters that nothing explains are mostly part of a code; logarithm of the odds. Practice value. */
const STRANGE = 3;

/** How well what stands at a place fits a field, as a likelihood ratio; for learning how a plate is laid out. */
export function formRatio(read: ReadPlace, field: FieldName, factor: Factor | null, units: readonly Claim[]): number {
  const alternatives = FIGURE_FORMS[field]
    ? figuresAs(field, read, factor ? [factor] : factorsFor(field, units))
    : codesAs(field, read, 1);
  const fit = alternatives.reduce((sum, a) => sum + a.share, 0);
  const strange = FIGURE_FORMS[field] ? STRANGE * read.place.strange : 0;
  return fit * Math.exp(Math.min(evidence(units, field), 0) - strange);
}

/** All candidates of a plate. */
export function candidatesOf(reads: readonly ReadPlace[], claims: readonly Claim[]): Candidate[] {
  return reads.flatMap((read) => {
    const own = claims.filter((claim) => claim.place === read.place);
    return FIELD_NAMES.flatMap((field) => {
      const candidate = candidateOf(read, field, own);
      return candidate ? [candidate] : [];
    });
  });
}

function candidateOf(read: ReadPlace, field: FieldName, claims: readonly Claim[]): Candidate | null {
  const labels = claims.filter(({ hit }) => !hit.isUnit);
  const units = claims.filter(({ hit }) => hit.isUnit);
  const labelled = evidence(labels, field);
  const united = evidence(units, field);
  const isFigure = FIGURE_FORMS[field] !== undefined;
  const found = isFigure
    ? figuresAs(field, read, factorsFor(field, units))
    : codesAs(field, read, Math.max(chanceOf(labels, field), chanceOf(units, field)));
  const sum = found.reduce((total, a) => total + a.share, 0);
  if (!(sum > 0)) return null;
  const formed = Math.log(sum) - (isFigure ? STRANGE * read.place.strange : 0);
  return {
    place: read.place,
    field,
    labelled,
    united,
    formed,
    score: Math.log(BASE) + labelled + united + formed,
    alternatives: found
      .toSorted((a, b) => b.share - a.share)
      .slice(0, MOST_ALTERNATIVES)
      .map((a) => ({ ...a, share: a.share / sum })),
  };
}
