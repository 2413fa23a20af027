import type { TextRow } from './text-rows.ts';

/** A word counts for its figures as far as they are likelier figures than this, and against as far as they are less. */
const HALF = 0.35;
/** No number has more letters than this; what has more is text, and counts wholly against. */
const MOST_LETTERS = 7;
/** Rows further apart than this many usual steps are not of one table. */
const FAR = 3.4;

const worthOf = ({ words }: TextRow): number =>
  words.reduce(
    (sum, { letters, figures }) => sum + (letters > MOST_LETTERS ? -letters : letters * (figures - HALF)),
    0,
  );

/**
 * The rows of readings among all rows of words: the run of rows that holds most figures and least letters, and what goes
 * on in step above and below it. @param heads level rulings, flat pixels: where rows are not ruled one parts the header
 * Source: J. Bentley, Programming pearls: algorithm design techniques, Comm. ACM 27 (1984) 865.
 */
export function bodyRows(rows: readonly TextRow[], heads: readonly number[]): TextRow[] {
  const steps = rows.slice(1).map((row, i) => row.y - rows[i]!.y);
  const usual = steps.toSorted((a, b) => a - b)[steps.length >> 1] ?? 0;
  let best = { from: 0, to: 0, worth: 0 };
  let [from, sum] = [0, 0];
  rows.forEach((row, i) => {
    if (sum <= 0 || (i > 0 && steps[i - 1]! > FAR * usual)) [from, sum] = [i, 0];
    sum += worthOf(row);
    if (sum > best.worth) best = { from, to: i + 1, worth: sum };
  });
  return goneOn(rows, withoutUnits(rows, belowHead(rows, withinRulings(rows, best, heads), heads)));
}

/** Rows are ruled when so many steps between them have a ruling. A row further above the first, usual steps, is another's. */
const RULED = 0.6;
const FIRST_REACH = 1.2;

/** Where rows are ruled, the values of the sheet's head stand above all rulings. One row there may be the table's: its top may be lost. */
function withinRulings(rows: readonly TextRow[], { from, to }: Run, rulings: readonly number[]): Run {
  const run = rows.slice(from, to);
  const parted = run.slice(1).filter(({ y }, i) => rulings.some((at) => at > run[i]!.y && at < y));
  if (parted.length < RULED * (run.length - 1)) return { from, to };
  const top = Math.min(...rulings) - FIRST_REACH * pitchOf(run);
  return { from: from + run.filter(({ y }) => y < top).length, to };
}

type Run = { readonly from: number; readonly to: number };

/** Where hardly any rows are parted by rulings, one near the top is that under the header. */
function belowHead(rows: readonly TextRow[], { from, to }: Run, heads: readonly number[]): Run {
  const isParted = (i: number) => heads.some((y) => y > rows[i]!.y && y < rows[i + 1]!.y);
  const parted = Array.from({ length: Math.max(0, to - from - 1) }, (_, k) => from + k).filter(isParted);
  if (!parted.length || parted.length > 0.3 * (to - from)) return { from, to };
  const head = parted.find((i) => i - from < MOST_HEADER_ROWS);
  if (head === undefined) return { from, to };
  const [above, below] = [rows.slice(from, head + 1), rows.slice(head + 1, to)].map((some) => some.map(figuresOf));
  // a fold lies between rows of figures
  const isHeader = Math.max(...above!) < LITTLE_LESS * below!.sort((a, b) => a - b)[below!.length >> 1]!;
  return { from: isHeader ? head + 1 : from, to };
}

/** A first row that looks less like figures than this share of the middle one is the header's last: units. */
const LESS = 0.42;
/** So is one that holds this many times the letters and looks a little less like figures: names in pieces. */
const MORE_LETTERS = 1.5;
const LITTLE_LESS = 0.8;
/** A header has no more rows than this. */
const MOST_HEADER_ROWS = 3;

function withoutUnits(rows: readonly TextRow[], { from, to }: Run): Run {
  const middle = (of: (row: TextRow) => number) =>
    rows
      .slice(from, to)
      .map(of)
      .sort((a, b) => a - b)[(to - from) >> 1] ?? 0;
  const [usual, letters] = [middle(figuresOf), middle(lettersOf)];
  const isHeader = (row: TextRow) =>
    figuresOf(row) < LESS * usual || (figuresOf(row) < LITTLE_LESS * usual && lettersOf(row) > MORE_LETTERS * letters);
  const last = rows.slice(from, Math.min(to, from + MOST_HEADER_ROWS)).findLastIndex(isHeader);
  return { from: from + last + 1, to };
}

const lettersOf = ({ words }: TextRow): number => words.reduce((sum, w) => sum + w.letters, 0);

/** How much a row looks like figures, letter by letter. */
const figuresOf = (row: TextRow): number =>
  row.words.reduce((sum, w) => sum + w.letters * w.figures, 0) / lettersOf(row);

/** Rows in step with others: the step is off by no more than this share. */
const IN_STEP = 0.3;
/** Words of such a row lie in the others' columns by this share, and look like figures at least so much. */
const WITHIN = 0.8;
const LIKE_FIGURES = 0.15;

/** A run with the rows before and behind it that go on in its step and its columns: figures that hardly read as such. */
function goneOn(rows: readonly TextRow[], { from, to }: Run): TextRow[] {
  const run = rows.slice(from, to);
  if (run.length < 2) return run;
  const pitch = pitchOf(run);
  const spans = run.flatMap(({ words }) => words.map(({ x0, x1 }) => [x0, x1] as const));
  const usual = run.map(({ words }) => words.length).sort((a, b) => a - b)[run.length >> 1] ?? 0;
  const goesOn = (row: TextRow | undefined, step: number): boolean => {
    if (!row || Math.abs(step / pitch - 1) > IN_STEP || row.words.length < 0.5 * usual) return false;
    if (row.words.some(({ letters }) => letters > MOST_LETTERS)) return false;
    const within = row.words.filter((w) =>
      spans.some(([x0, x1]) => w.x0 > x0 - 0.3 * pitch && w.x1 < x1 + 0.3 * pitch),
    );
    return figuresOf(row) > LIKE_FIGURES && within.length >= WITHIN * row.words.length;
  };
  while (goesOn(rows[to], (rows[to]?.y ?? 0) - rows[to - 1]!.y)) to++;
  return rows.slice(from, to);
}

/** Usual height of a row: the middle of the steps between them. */
export function pitchOf(rows: readonly TextRow[]): number {
  const steps = rows.slice(1).map((row, i) => row.y - rows[i]!.y);
  return steps.toSorted((a, b) => a - b)[steps.length >> 1] ?? 0;
}
