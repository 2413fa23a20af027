import type { Box } from '../layout/boxes.ts';
import type { Place } from '../layout/places.ts';
import { codeReadings, figureReadings, type Spelt } from '../letters/lattice.ts';
import { numbersIn } from '../letters/numbers.ts';
import type { FieldName } from '../reading.ts';
import { CODE_PATTERNS, FIGURE_FORMS } from '../tables/fields.ts';
import type { Factor } from './factors.ts';
import { plausibility } from './plausible.ts';

/** One value a field may have at a place. */
export type Alternative = {
  readonly numbers: readonly number[] | null;
  readonly code: string | null;
  readonly printed: string;
  /** the unit it is printed in: what brings its figures to the field's own unit; null for codes */
  readonly factor: number | null;
  /** where it stands: a code may go on behind its place */
  readonly box: Box;
  /** shares of a candidate's alternatives sum to 1 */
  readonly share: number;
};

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

/** The symbol I stands close before many currents, and is read as their first figure: `I 7.27` as 17.27. */
const withoutSymbol = (figures: readonly Spelt[]): readonly Spelt[] =>
  figures.flatMap((spelt) =>
    /^1\d/.test(spelt.text) ? [spelt, { text: spelt.text.slice(1), share: SYMBOL_READ * spelt.share }] : [spelt],
  );
const SYMBOL_READ = 0.06;

/** What a place may be as a number of a field, in the field's own unit, each with its likelihood ratio. */
export function figuresAs(field: FieldName, { place, figures }: ReadPlace, factors: readonly Factor[]): Alternative[] {
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
          factor: known?.factor ?? factor,
          box: place,
          share: worth + (known?.share ?? 0),
        });
      }
    }
  }
  return [...sums.values()];
}

/** Sums of binary fractions without their last digits. */
const exact = (value: number) => Number(value.toPrecision(10));

/** What a place may be as a code of a field, each with its likelihood ratio. @param labelled chance that a label says so */
export function codesAs(field: FieldName, read: ReadPlace, labelled: number): Alternative[] {
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
        factor: null,
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
