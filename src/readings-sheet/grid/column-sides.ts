import type { TextRow } from './text-rows.ts';
import type { WrittenWord } from './written-words.ts';

/**
 * A blank strip parts two columns when it is so wide, figure heights, and no more than this share of the rows write into
 * it, or one of many: what was struck out, a stain.
 */
const LEAST_GAP = 0.5;
const CROSSED = 0.08;
const MANY_ROWS = 6;
/** A ruling that words of more than this share of the rows run across is a fold, a paper's own line, a stem of figures. */
const RUN_OVER = 0.2;
/** Ink reaches over a ruling by this much at least to run across it, figure heights: figures touch rulings. */
const OVER = 0.2;
/** Between rulings a blank strip parts two only where so many rows have something on both sides of it. */
const BOTH_SIDES = 0.6;
/** A column has words in this share of the rows, and in two at least: less is what was struck out beside one. */
const FILLED = 0.25;
/** Beside the rulings it must be fuller, and look like figures: there lies the table the sheet lies on. */
const FILLED_OUTSIDE = 0.5;
const LIKE_FIGURES = 0.5;
/** Slimmer pieces, figure heights, standing under each other this exactly, are what is left of an upright line. */
const SLIM = 0.3;
const EXACTLY = 0.12;

/** Beyond the first and the last column's writing by this much, figure heights, lies nothing of them. */
const OUTSIDE = 2.5;

type Span = { readonly from: number; readonly to: number };

/**
 * The sides of the columns, from the left: by the blanks between what is written, and by the rulings nothing is written
 * across. @param rows the rows of readings @param rulings upright ones, drawn, flat pixels @param outer where the table ends
 */
export function columnSides(
  rows: readonly TextRow[],
  rulings: readonly number[],
  outer: readonly [number, number],
  digit: number,
): number[] {
  const valid = rulings.filter((x) => shareAcross(rows, x, OVER * digit) <= RUN_OVER);
  const written = spansOf(rows, valid, digit).filter((span) => isColumn(span, rows, outer, digit));
  const spans = joinedWithin(written, rows, valid);
  if (!spans.length) return [];
  const inner = spans.slice(1).map((span, i) => sideBetween(spans[i]!, span, valid));
  const [first, last] = [spans[0]!, spans.at(-1)!];
  const beside = (limit: number, sign: 1 | -1, end: number) => {
    const near = [...valid, end]
      .map((x) => sign * (x - limit))
      .filter((away) => away > -0.4 * digit && away < OUTSIDE * digit);
    return limit + sign * (near.length ? Math.min(...near) : digit);
  };
  const [left, right] = [beside(first.from, -1, outer[0]), beside(last.to, 1, outer[1])];
  return [left, ...inner, right];
}

/** Share of the rows with a word that a ruling goes through. */
function shareAcross(rows: readonly TextRow[], x: number, over: number): number {
  return rows.filter(({ words }) => words.some((w) => w.x0 < x - over && w.x1 > x + over)).length / rows.length;
}

/** Strips in which something is written, parted by blanks and by rulings. */
function spansOf(rows: readonly TextRow[], rulings: readonly number[], digit: number): Span[] {
  const all = rows.flatMap(({ words }) => words);
  const [from, to] = [
    Math.floor(Math.min(...all.map(({ x0 }) => x0))),
    Math.ceil(Math.max(...all.map(({ x1 }) => x1))),
  ];
  const count = new Uint16Array(to - from + 1);
  for (const { words } of rows) {
    const seen = new Uint8Array(count.length);
    for (const { x0, x1 } of words) seen.fill(1, Math.max(0, Math.round(x0) - from), Math.round(x1) - from);
    seen.forEach((v, i) => (count[i]! += v));
  }
  const spans: { from: number; to: number }[] = [];
  const most = Math.max(CROSSED * rows.length, rows.length >= MANY_ROWS ? 1 : 0);
  for (let i = 0; i < count.length; i++) {
    if (count[i]! <= most) continue;
    const last = spans.at(-1);
    const x = from + i;
    const isParted = !last || x - last.to > LEAST_GAP * digit || rulings.some((r) => r >= last.to && r <= x);
    if (isParted) spans.push({ from: x, to: x + 1 });
    else last.to = x + 1;
  }
  return spans;
}

/** Where columns are ruled, strips no ruling parts are one column unless most rows have something in both. */
function joinedWithin(spans: readonly Span[], rows: readonly TextRow[], rulings: readonly number[]): Span[] {
  const parted = spans.slice(1).filter((span, i) => rulings.some((x) => isBetween(x, spans[i]!, span))).length;
  if (parted < 0.5 * (spans.length - 1) || !parted) return [...spans];
  const out: Span[] = [];
  for (const span of spans) {
    const last = out.at(-1);
    const isRuled = last && rulings.some((x) => isBetween(x, last, span));
    if (last && !isRuled && !haveBoth(rows, last, span)) out[out.length - 1] = { from: last.from, to: span.to };
    else out.push(span);
  }
  return out;
}

const middleOf = ({ x0, x1 }: WrittenWord): number => (x0 + x1) / 2;
const isBetween = (x: number, a: Span, b: Span): boolean => x >= (a.from + a.to) / 2 && x <= (b.from + b.to) / 2;
const isIn = (word: WrittenWord, { from, to }: Span): boolean => middleOf(word) >= from && middleOf(word) <= to;

function haveBoth(rows: readonly TextRow[], a: Span, b: Span): boolean {
  const seen = rows.map(({ words }) => [words.some((w) => isIn(w, a)), words.some((w) => isIn(w, b))] as const);
  const both = seen.filter(([left, right]) => left && right).length;
  return both >= 3 && both >= BOTH_SIDES * seen.filter(([left, right]) => left || right).length;
}

/** Whether enough is written in a strip, and more than the pieces of a fold. */
function isColumn(
  span: Span,
  rows: readonly TextRow[],
  [left, right]: readonly [number, number],
  digit: number,
): boolean {
  const own = rows.map(({ words }) => words.filter((w) => isIn(w, span))).filter((words) => words.length > 0);
  if (own.length < Math.max(2, FILLED * rows.length)) return false;
  const all = own.flat();
  const isOutside = span.to < left || span.from > right;
  if (isOutside) {
    const figures = all.reduce((sum, w) => sum + w.figures, 0) / all.length;
    if (own.length < FILLED_OUTSIDE * rows.length || figures < LIKE_FIGURES) return false;
  }
  if (all.some(({ x0, x1 }) => x1 - x0 > SLIM * digit)) return true;
  const middles = all.map(middleOf);
  return Math.max(...middles) - Math.min(...middles) > EXACTLY * digit * 2;
}

/** The ruling between two columns nearest the middle of the blank, else that middle. */
function sideBetween(a: Span, b: Span, rulings: readonly number[]): number {
  const middle = (a.to + b.from) / 2;
  const away = (x: number) => Math.abs(x - middle);
  return rulings.filter((x) => isBetween(x, a, b)).toSorted((x, y) => away(x) - away(y))[0] ?? middle;
}
