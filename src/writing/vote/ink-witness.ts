import type { VotedGlyph } from '../written.ts';
import type { Slot } from './slots.ts';

/** A piece of the line's ink in the crop, pixels; y from the top of the crop. */
export type InkBox = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** What ink stands on the line by geometry alone: whole letters, and small marks. */
export type InkWitness = {
  readonly letters: readonly InkBox[];
  readonly marks: readonly InkBox[];
  /** base line of the letters */
  readonly base: number;
};

/** A voted slot; `slot` is null for what only the ink knows of. */
export type Placed = { readonly slot: Slot | null; readonly glyph: VotedGlyph };

/** Sizes and places of a point or a comma, shares of the capitals' height. */
const LARGEST_MARK = { width: 0.34, height: 0.46 };
const SMALLEST_MARK = 0.06;
const ON_BASE = { above: 0.34, below: 0.3 };
/** A comma is longer than wide, or hangs below the base line. */
const COMMA = { longer: 1.4, below: 0.14 };
/** Ink of a mark's shape at a mark's place, which no reading saw, is a mark about as likely as dirt. */
const UNSEEN_MARK = 0.5;
/** Votes for nothing count half where there is ink. */
const DOUBT_LEFT = 0.5;
/** What stands for a letter nobody read, and how likely it is no mere dirt. */
export const UNREAD = '?';
const UNREAD_SHARE = 0.3;
const LEAST_LETTER = 0.6;
const WIDEST_LETTER = 1.1;

const DIGIT = /^\d$/;

/**
 * Adds what stands in the ink to what was voted: decimal marks between figures that the readings dropped, and a `?`
 * for a letter that no reading shows.
 * @param capital_px height of the capitals in the crop
 */
export function askInk(placed: readonly Placed[], ink: InkWitness, capital_px: number): Placed[] {
  return withUnread(withMarks(placed, ink, capital_px), placed, ink, capital_px);
}

const middle = ({ x0, x1 }: { readonly x0: number; readonly x1: number }) => (x0 + x1) / 2;

function withMarks(placed: readonly Placed[], ink: InkWitness, capital: number): Placed[] {
  const marks = ink.marks.filter((mark) => isDecimalMark(mark, ink, capital));
  const out: Placed[] = [];
  const shown = placed.filter(({ glyph }) => glyph.text);
  shown.forEach((one, i) => {
    out.push(one);
    const next = shown[i + 1];
    if (!next || !DIGIT.test(one.glyph.text)) return;
    if (/^[.,]$/.test(next.glyph.text) && shown[i + 2] && DIGIT.test(shown[i + 2]!.glyph.text)) {
      const mark = marks.find((m) => Math.abs(middle(m) - middle(next.glyph)) < 0.4 * capital);
      if (mark) shown[i + 1] = { ...next, glyph: confirmed(next.glyph) };
      return;
    }
    if (!DIGIT.test(next.glyph.text)) return;
    const mark = marks.find(
      (m) => middle(m) > middle(one.glyph) + 0.15 * capital && middle(m) < middle(next.glyph) - 0.15 * capital,
    );
    if (mark) out.push({ slot: null, glyph: unseen(mark, ink, capital, placed) });
  });
  return out;
}

function isDecimalMark({ x0, x1, y0, y1 }: InkBox, ink: InkWitness, capital: number): boolean {
  const { base } = ink;
  const [w, h] = [x1 - x0, y1 - y0];
  return (
    w <= LARGEST_MARK.width * capital &&
    h <= LARGEST_MARK.height * capital &&
    Math.min(w, h) >= SMALLEST_MARK * capital &&
    y0 > base - ON_BASE.above * capital &&
    y1 > base - 0.1 * capital &&
    y1 < base + ON_BASE.below * capital
  );
}

/** The mark is there in the ink: who saw nothing counts less. */
function confirmed(glyph: VotedGlyph): VotedGlyph {
  const nothing = glyph.others.find(({ text }) => !text)?.share ?? 0;
  const gain = DOUBT_LEFT * nothing;
  return {
    ...glyph,
    share: glyph.share + gain,
    others: glyph.others.map((other) => (other.text ? other : { ...other, share: other.share - gain })),
  };
}

function unseen(mark: InkBox, ink: InkWitness, capital: number, placed: readonly Placed[]): VotedGlyph {
  const [w, h] = [mark.x1 - mark.x0, mark.y1 - mark.y0];
  const isComma = h > COMMA.longer * w || mark.y1 > ink.base + COMMA.below * capital;
  // a minority of readings may have seen it
  const voted = placed.find(
    ({ glyph }) => !glyph.text && Math.abs(middle(glyph) - middle(mark)) < 0.4 * capital,
  )?.glyph;
  const seen = voted?.others.find(({ text }) => /^[.,]$/.test(text));
  const share = UNSEEN_MARK + (seen ? (1 - UNSEEN_MARK) * seen.share : 0);
  return {
    text: seen?.text ?? (isComma ? ',' : '.'),
    share,
    others: [{ text: '', share: 1 - share }],
    x0: mark.x0,
    x1: mark.x1,
  };
}

function withUnread(shown: readonly Placed[], placed: readonly Placed[], ink: InkWitness, capital: number): Placed[] {
  const isAt = (letter: InkBox, { glyph }: Placed) =>
    middle(letter) > glyph.x0 - 0.2 * capital && middle(letter) < glyph.x1 + 0.2 * capital;
  const unread = ink.letters
    .filter((l) => l.y1 - l.y0 >= LEAST_LETTER * capital && l.x1 - l.x0 < WIDEST_LETTER * capital)
    .filter((l) => !shown.some((one) => isAt(l, one)))
    .map((l): Placed => {
      // a minority of readings may have seen it
      const voted = placed.find((one) => !one.glyph.text && isAt(l, one))?.glyph;
      const seen = voted?.others.find(({ text }) => text);
      const glyph = {
        text: seen?.text ?? UNREAD,
        share: UNREAD_SHARE,
        others: [{ text: '', share: 1 - UNREAD_SHARE }],
        x0: l.x0,
        x1: l.x1,
      };
      return { slot: null, glyph };
    });
  return [...shown, ...unread].sort((a, b) => middle(a.glyph) - middle(b.glyph));
}
