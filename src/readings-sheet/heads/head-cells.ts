import { stepAt } from '../table/table-surface.ts';

/** A word as far as its place matters, flat pixels. */
type Placed = { readonly text: string; readonly x0: number; readonly x1: number; readonly capitalHeight: number };
type Phrase = { x0: number; x1: number; text: string };
type Sides = { readonly xs: readonly number[]; readonly drawn: readonly number[] };

/** Words of one heading stand nearer than this, capital heights; headings of neighbours further apart than the least. */
const NEAR = 1.05;
const LEAST_APART = 0.55;
/** A heading may stand off its column by this share of the column's width. */
const BESIDE = 0.35;

/**
 * What a row of words says over each column. Between rulings a word belongs where it stands; else headings, which may be
 * wider than what stands under them, are parted by the widest blanks.
 * @param words from left to right
 */
export function headCells(words: readonly Placed[], { xs, drawn }: Sides): string[] {
  const inner = xs.slice(1, -1);
  const isDrawn = inner.every((x) => drawn.some((d) => Math.abs(d - x) < 1));
  const own = words.filter(
    ({ x0, x1 }) => x1 > xs[0]! - (xs[1]! - xs[0]!) && x0 < xs.at(-1)! + (xs.at(-1)! - xs.at(-2)!),
  );
  if (isDrawn) return byPlace(own, xs);
  const parted = phrases(own, xs.length - 1);
  if (parted && parted.every((phrase, c) => isOver(phrase, xs[c]!, xs[c + 1]!))) return parted.map(({ text }) => text);
  return byPlace(joined(own), xs);
}

function byPlace(words: readonly { x0: number; x1: number; text: string }[], xs: readonly number[]): string[] {
  const cells: string[][] = xs.slice(1).map(() => []);
  for (const { text, x0, x1 } of words) {
    // the outer columns reach as far out as their headings do
    const middle = Math.min(Math.max((x0 + x1) / 2, xs[0]! + 1), xs.at(-1)! - 1);
    cells[stepAt(xs, middle)]!.push(text);
  }
  return cells.map((texts) => texts.join(' '));
}

/** Words parted at the widest blanks into so many headings; null where the blanks do not tell. */
function phrases(words: readonly Placed[], count: number): Phrase[] | null {
  if (words.length < count) return null;
  const blanks = words.slice(1).map((word, i) => (word.x0 - words[i]!.x1) / word.capitalHeight);
  const widest = blanks.toSorted((a, b) => b - a);
  const least = widest[count - 2] ?? 0;
  if (least < LEAST_APART || least < 1.25 * Math.max(0, widest[count - 1] ?? 0)) return null;
  return grouped(words, (i) => blanks[i - 1]! >= least);
}

const joined = (words: readonly Placed[]): Phrase[] =>
  grouped(words, (i) => words[i]!.x0 - words[i - 1]!.x1 > NEAR * words[i]!.capitalHeight);

function grouped(words: readonly Placed[], isNew: (i: number) => boolean): Phrase[] {
  const out: Phrase[] = [];
  words.forEach(({ x0, x1, text }, i) => {
    const last = out.at(-1);
    if (!last || isNew(i)) out.push({ x0, x1, text });
    else out[out.length - 1] = { x0: last.x0, x1, text: `${last.text} ${text}` };
  });
  return out;
}

function isOver({ x0, x1 }: Phrase, left: number, right: number): boolean {
  const reach = BESIDE * (right - left);
  return x1 > left - reach && x0 < right + reach;
}
