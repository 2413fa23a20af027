import type { Mark } from '../letters/marks.ts';
import { VOLTS } from '../tables/fields.ts';

/** The characters of a word without the sides of its box and signs of connection, ranges with their stroke. */
export const cleaned = (marks: readonly Mark[]): readonly Mark[] =>
  withoutConnections(withRanges(withoutSides(marks.filter((mark) => mark.options[0]!.text.trim() !== ''))));

/** What the side of a box beside a word is read as. */
const SIDES = new Set('|[]{}\\_=«»');
const isSide = (mark: Mark | undefined) => mark !== undefined && SIDES.has(mark.options[0]!.text);

function withoutSides(marks: readonly Mark[]): readonly Mark[] {
  const first = marks.findIndex((mark) => !isSide(mark));
  const last = marks.findLastIndex((mark) => !isSide(mark));
  return first < 0 ? [] : marks.slice(first, last + 1);
}

/** What the division sign of a range is read as: `220÷240`. */
const AS_RANGE = new Set([':', '=', '»', '*']);
const RANGE: Mark['options'] = [{ text: '-', share: 0.9 }];

function withRanges(marks: readonly Mark[]): readonly Mark[] {
  const isDigitAt = (i: number) => /^\d$/.test(marks[i]?.options[0]!.text ?? '');
  return marks.map((mark, i) =>
    AS_RANGE.has(mark.options[0]!.text) && [-2, -1, 1, 2].every((d) => isDigitAt(i + d))
      ? { ...mark, options: RANGE }
      : mark,
  );
}

/** Star and delta behind a voltage say nothing more than the list does, and a delta is read as an A or a 4: `220Δ/380Y`. */
function withoutConnections(marks: readonly Mark[]): readonly Mark[] {
  const isSignOf = (text: string | undefined) => text !== undefined && 'AΔDYλ'.includes(text);
  const texts = marks.map((mark) => mark.options[0]!.text);
  const delta = deltaAsFigure(texts.join(''));
  return marks.filter((_, i) => {
    if (i === delta) return false;
    if (!isSignOf(texts[i])) return true;
    const before = /(\d{3})$/.exec(texts.slice(0, i).join(''))?.[1];
    if (before !== undefined)
      return !VOLTS.includes(Number(before)) || !(i === marks.length - 1 || texts[i + 1] === '/');
    return !(texts[i - 1] === '/' && /^\d{3}\/$/.test(texts.slice(0, i).join('')));
  });
}

/** Where the 4 of `2304/400Y` or of `220-2404` stands: no voltage has four figures, and without it there are two. */
function deltaAsFigure(text: string): number | null {
  const [, first, delta, second] = /^(\d{3})(4?)[/-](\d{3})/.exec(text) ?? [];
  if (!first || !second || ![first, second].every((volts) => VOLTS.includes(Number(volts)))) return null;
  if (delta) return first.length;
  return /^\d{3}[/-]\d{3}4$/.test(text) ? text.length - 1 : null;
}
