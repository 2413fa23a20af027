import type { Hit } from '../layout/hits.ts';
import { around, type Box } from '../layout/runs.ts';
import type { Claim } from '../layout/relations.ts';
import type { Place } from '../layout/places.ts';
import { codeReadings, figureReadings, type Spelt } from '../letters/lattice.ts';
import { numbersIn } from '../letters/numbers.ts';
import { FIELD_NAMES, type FieldName } from '../reading.ts';
import { CODE_PATTERNS, FIGURE_FORMS } from '../tables/fields.ts';
import { plausibility } from './plausible.ts';

/** One value a field may have at a place. */
export type Alternative = {
  readonly numbers: readonly number[] | null;
  readonly code: string | null;
  readonly printed: string;
  /** where it stands: a code may go on behind its place */
  readonly box: Box;
  /** shares of a candidate's alternatives sum to 1 */
  readonly share: number;
};

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

/** Before anything is read, one place in about twenty-five holds a given field. */
const BASE = 0.04;
const MOST_ALTERNATIVES = 12;
/** A code pointed at by a label with at least this chance counts as labelled. */
const IS_LABELLED = 0.3;

/** Codes are rarely parted by a blank, but where two parts make one of the right form it is one; serial numbers take any form. */
const LONG_CODE = 3;
const LONGEST_CODE = 16;
const LONG_SERIAL = 0.1;

/** Readings of a place, worked out once. */
export type ReadPlace = {
  readonly place: Place;
  readonly figures: readonly Spelt[];
  readonly codes: readonly { box: Place; spelt: readonly Spelt[] }[];
};

/** Every way to read each place. */
export function readPlaces(places: readonly Place[]): ReadPlace[] {
  return places.map((place) => ({
    place,
    figures: place.figure ? figureReadings(place.figure) : [],
    codes: [
      ...place.longer.map(({ marks, box }) => ({
        box: { ...place, ...box },
        spelt: marks.length > LONGEST_CODE ? [] : codeReadings(marks),
      })),
      { box: place, spelt: place.whole.length > LONGEST_CODE ? [] : codeReadings(place.whole) },
    ],
  }));
}

/** How well what stands at a place fits a field, as a likelihood ratio; for learning how a plate is laid out. */
export function formRatio(read: ReadPlace, field: FieldName, factor: Factor | null, units: readonly Claim[]): number {
  const alternatives = FIGURE_FORMS[field]
    ? figuresAs(field, read, factor ? [factor] : factorsFor(field, units))
    : codesAs(field, read, 1);
  const fit = alternatives.reduce((sum, a) => sum + a.share, 0);
  const strange = FIGURE_FORMS[field] ? STRANGE * read.place.strange : 0;
  return fit * Math.exp(Math.min(evidence(units, field), 0) - strange);
}

/** A unit that may stand with a number, and its chance. */
export type Factor = { readonly factor: number; readonly offset: number; readonly share: number };
const BARE: Readonly<Record<string, readonly Factor[]>> = {
  efficiency: [
    { factor: 0.01, offset: 0, share: 0.75 },
    { factor: 1, offset: 0, share: 0.25 },
  ],
};
const AS_PRINTED: readonly Factor[] = [{ factor: 1, offset: 0, share: 1 }];

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

/** The chance that claims give a place to a field. */
function chanceOf(claims: readonly Claim[], field: FieldName): number {
  return (
    1 - claims.reduce((none, { hit, share }) => none * (1 - share * hit.clarity * weightOf(hit.meanings, field)), 1)
  );
}

const weightOf = (meanings: Claim['hit']['meanings'], field: FieldName) =>
  Math.min(
    1,
    meanings.reduce(
      (sum, m) =>
        sum +
        (m.field === field ||
        (m.field === 'input' && field === 'ratedPower_W') ||
        (m.field === 'shaft' && field === 'ratedPower_W')
          ? m.weight
          : 0),
      0,
    ),
  );

/** What the labels, or the units, around a place say about a field: logarithm of the likelihood ratio. */
function evidence(claims: readonly Claim[], field: FieldName): number {
  const own = chanceOf(claims, field);
  const others = claims.reduce(
    (none, { hit, share }) => none * (1 - share * hit.clarity * (1 - weightOf(hit.meanings, field))),
    1,
  );
  const chance = Math.min(own * (0.1 + 0.9 * others) + (1 - own) * others * BASE + 0.002, 0.998);
  return logit(chance) - logit(BASE);
}

const logit = (chance: number) => Math.log(chance / (1 - chance));

/** Units that claim the number; where none surely does, the number as it stands, if the field may go without. */
function factorsFor(field: FieldName, units: readonly Claim[]): Factor[] {
  const form = FIGURE_FORMS[field]!;
  const claimed = units.flatMap(({ hit, share }) =>
    hit.meanings.flatMap((m) =>
      m.field === field && m.factor !== undefined
        ? [{ factor: m.factor, offset: m.offset ?? 0, share: share * hit.clarity * m.weight }]
        : [],
    ),
  );
  const rest = Math.max(0, 1 - claimed.reduce((sum, { share }) => sum + share, 0));
  const bare = form.needsUnit
    ? []
    : (BARE[field] ?? AS_PRINTED).map((f) => ({ ...f, share: f.share * Math.max(rest, 0.02) }));
  const merged = new Map<string, Factor>();
  for (const f of [...claimed, ...bare]) {
    const key = `${f.factor} ${f.offset}`;
    merged.set(key, { ...f, share: f.share + (merged.get(key)?.share ?? 0) });
  }
  return [...merged.values()];
}

function figuresAs(field: FieldName, { place, figures }: ReadPlace, factors: readonly Factor[]): Alternative[] {
  const form = FIGURE_FORMS[field]!;
  const writing = {
    large: form.most / Math.min(...factors.map((f) => f.factor), 1) > 1500,
    fractions: field === 'ratedPower_W',
    belowOne: form.most <= 1,
  };
  const sums = new Map<string, Alternative>();
  for (const { text, share } of field === 'current_A' ? withoutSymbol(figures) : figures) {
    for (const understood of numbersIn(text, writing)) {
      for (const { factor, offset, share: likely } of factors) {
        const numbers = understood.numbers.map((n) => exact((n + offset) * factor));
        const worth = share * understood.share * likely * Math.exp(plausibility(field, numbers, text.trim(), factor));
        if (!(worth > 0)) continue;
        const key = numbers.join(' ');
        const known = sums.get(key);
        sums.set(key, {
          numbers,
          code: null,
          printed: known?.printed ?? text.trim(),
          box: place,
          share: worth + (known?.share ?? 0),
        });
      }
    }
  }
  return [...sums.values()];
}

/** The symbol I stands close before many currents, and is read as their first figure: `I 7.27` as 17.27. */
const withoutSymbol = (figures: readonly Spelt[]): readonly Spelt[] =>
  figures.flatMap((spelt) =>
    /^1\d/.test(spelt.text) ? [spelt, { text: spelt.text.slice(1), share: SYMBOL_READ * spelt.share }] : [spelt],
  );
const SYMBOL_READ = 0.03;

/** Values that stand there in words. */
export function spokenCandidates(hits: readonly Hit[], firstId: number): Candidate[] {
  return hits.flatMap((hit, i) => [
    ...(isWave(hit) ? [spoken('phases', 1, hit, WAVE_ODDS, firstId + i)] : []),
    ...hit.meanings.flatMap(({ field, value }): Candidate[] => {
      if (value === undefined || field === 'other' || field === 'input' || field === 'shaft') return [];
      const odds = Math.log(hit.clarity / (1.001 - hit.clarity)) + SPOKEN_ODDS;
      return [spoken(field, value, hit, odds, firstId + i)];
    }),
  ]);
}

function spoken(field: FieldName, value: number, hit: Hit, odds: number, id: number): Candidate {
  const alternatives = [{ numbers: [value], code: null, printed: hit.text, box: hit, share: 1 }];
  return { place: placeOf(hit, id), field, score: odds, labelled: odds, united: 0, formed: 0, alternatives };
}

/** The wave behind volts says one phase where nothing says three. */
const isWave = ({ isUnit, text, meanings }: Hit) =>
  isUnit && text.includes('~') && meanings.some(({ field }) => field === 'voltage_V');
const WAVE_ODDS = 1.5;

/** Words that say a value are seldom there for another reason. */
const SPOKEN_ODDS = 3;

/** Figures beside letters that nothing explains are mostly part of a code; logarithm of the odds. Practice value. */
const STRANGE = 3;

const placeOf = (hit: Hit, id: number): Place => ({
  ...around([hit]),
  id,
  figure: null,
  whole: hit.runs.flatMap(({ marks }) => marks),
  text: hit.text,
  longer: [],
  capitalHeight: hit.capitalHeight,
  isDoubtful: false,
  strange: 0,
  seen: 1,
});

/** Sums of binary fractions without their last digits. */
const exact = (value: number) => Number(value.toPrecision(10));

function codesAs(field: FieldName, read: ReadPlace, labelled: number): Alternative[] {
  const sums = new Map<string, Alternative>();
  for (const { box, spelt } of read.codes) {
    const asLong = box === read.place ? 1 : field !== 'serialNumber' ? LONG_CODE : read.place.figure ? LONG_SERIAL : 1;
    for (const { text, share } of spelt) {
      const worth = Math.max(
        ...CODE_PATTERNS.filter((p) => p.field === field && p.whole.test(text)).map((p) =>
          labelled > IS_LABELLED ? p.labelled : p.bySelf,
        ),
        -Infinity,
      );
      if (worth === -Infinity) continue;
      const code = nameOf(field, text);
      const known = sums.get(code);
      sums.set(code, {
        numbers: null,
        code,
        printed: text,
        box: known?.box ?? box,
        share: asLong * share * Math.exp(worth) + (known?.share ?? 0),
      });
    }
  }
  return [...sums.values()];
}

/** Codes by their usual name: `55` under a label is IP55. */
function nameOf(field: FieldName, text: string): string {
  if (field === 'ipRating') return `IP${text.replace(/^IP ?/, '')}`;
  if (field === 'efficiencyClass' && /^\d$/.test(text)) return `IE${text}`;
  if (field === 'serialNumber') return text.replace(/^N[OR]?[.:°](?=.{3})/, '').replace(/\.$/, '');
  if (field === 'frameSize') return text.replace(/^(?:FRAME|FR)\.?(?=\d)/, '');
  return text.replace(/\.$/, '');
}
