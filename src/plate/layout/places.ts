import type { Mark } from '../letters/marks.ts';
import { textOf } from '../letters/marks.ts';
import { isCodeBySelf } from '../tables/fields.ts';
import { isNothing } from '../tables/nothing.ts';
import type { Hit } from './hits.ts';
import { around, inOneRow, type Box } from './boxes.ts';
import type { Run } from './runs.ts';

/**
 * Where a value may stand: a word, or the figures of one that holds figures and letters. `figure` is read as a number,
 * `whole` as a code; `further` are the words close behind that may belong to the code.
 */
export type Place = Box & {
  readonly id: number;
  readonly figure: readonly Mark[] | null;
  readonly whole: readonly Mark[];
  readonly text: string;
  /** longer codes that start here: this word and the next one or two */
  readonly longer: readonly { readonly marks: readonly Mark[]; readonly box: Box }[];
  readonly capitalHeight: number;
  /** the row of print goes on close before or behind, but could not be read; or this was read on a second look only */
  readonly isDoubtful: boolean;
  /** chance that something which is neither label nor unit stands in the same word: of `200LA` the 200 is no number */
  readonly strange: number;
  /** share of the readings that saw anything here */
  readonly seen: number;
};

/** A gap inside `10.8 / 6.27` or `1 1/2`, in capital heights. */
const NUMBER_GAP = 0.75;
const CODE_GAP = 0.9;
const THOUSANDS_GAP = 1.25;
/** Behind a stroke a list goes on, even over a sign of connection that stood there. */
const BEHIND_STROKE = 2.2;
const BLANK: Mark = { options: [{ text: ' ', share: 1 }], x0: 0, x1: 0 };

/** The places of a plate: every run that no label or unit took. */
export function placesAmong(runs: readonly Run[], hits: readonly Hit[]): Place[] {
  // a lone letter may be a value as well as a label: where it stands decides
  const taken = new Set(hits.filter((hit) => !mayBeValue(hit, runs)).flatMap((hit) => hit.runs.map(({ id }) => id)));
  const free = runs.filter(({ id, word }) => !taken.has(id) && !isNothing(word.text));
  const chains = chained(free);
  const places: Place[] = [];
  for (const chain of chains) {
    for (const numbers of groupsOf(chain)) {
      const first = numbers[0]!;
      const isFigure = first.kind === 'figure';
      const own = runs.filter(({ word }) => word === first.word);
      places.push({
        ...around(numbers),
        id: places.length,
        figure: isFigure ? joined(numbers) : null,
        whole: own.flatMap(({ marks }) => marks),
        text: textOf(own.flatMap(({ marks }) => marks)),
        longer: longerFrom(
          runs,
          runs.findIndex(({ word }) => word === first.word),
        ),
        capitalHeight: first.word.capitalHeight,
        strange: isFigure ? Math.max(0, ...numbers.map((run) => strangeness(run, runs, taken))) : 0,
        isDoubtful:
          numbers.some(({ word }) => word.isSecondLook) ||
          first.word.cutBefore ||
          numbers.at(-1)!.word.cutBehind ||
          (isFigure && (goesOnInWord(numbers, runs, taken) || goesOnBehindPoint(numbers, runs))),
        seen: Math.min(...numbers.map(({ word }) => (word.passes > 0 ? word.seen / word.passes : 1))),
      });
    }
  }
  return places;
}

/** More figures stand in the same word, behind a sign nobody understood: `220#240`. */
const goesOnInWord = (numbers: readonly Run[], runs: readonly Run[], taken: ReadonlySet<number>): boolean =>
  runs.some(
    (run) =>
      run.kind === 'figure' &&
      !numbers.includes(run) &&
      !taken.has(run.id) &&
      numbers.some(({ word }) => word === run.word),
  );

/** `6, 16`: a blank behind the point of a number may be none. */
function goesOnBehindPoint(numbers: readonly Run[], runs: readonly Run[]): boolean {
  const last = numbers.at(-1)!;
  const [point, next] = [runs[last.id + 1], runs[last.id + 2]];
  return (
    point?.word === last.word &&
    /^[.,]$/.test(point.text) &&
    next?.kind === 'figure' &&
    inOneRow(last, next) &&
    next.x0 > last.x0 &&
    gapOf(last, next) < BEHIND_POINT
  );
}
const BEHIND_POINT = 1.2;

function strangeness(run: Run, runs: readonly Run[], taken: ReadonlySet<number>): number {
  const others = runs.filter(({ word, kind, id }) => word === run.word && kind === 'text' && !taken.has(id));
  const odd = others.flatMap(({ marks }) => marks).filter(({ options }) => !HARMLESS.test(options[0]!.text));
  return Math.max(0, ...odd.map(({ options }) => options[0]!.share));
}
/** Stops, brackets, strokes and specks say nothing. */
const HARMLESS = /^[-.,:;/+~'"()[\]|_=°*]$/;

/** A lone capital, unless it is the unit of the number before it. */
function mayBeValue(hit: Hit, runs: readonly Run[]): boolean {
  const [run] = hit.runs;
  if (hit.runs.length > 1 || !/^[A-Z]$/.test(run!.text) || !run!.isLast || run!.index > 0) return false;
  const before = runs[run!.id - 1];
  return !(
    before?.kind === 'figure' &&
    inOneRow(before, run!) &&
    run!.x0 > before.x0 &&
    gapOf(before, run!) < CODE_GAP
  );
}

/** `1 110`, in letters of one width. */
const areThousands = (last: Run, next: Run) => /^\d{1,3}$/.test(last.text) && /^\d{3}$/.test(next.text);

/** Runs that follow each other closely in one row. */
function chained(runs: readonly Run[]): Run[][] {
  const chains: Run[][] = [];
  for (const run of runs) {
    const last = chains.at(-1)?.at(-1);
    const isNext =
      last &&
      run.id === last.id + 1 &&
      inOneRow(last, run) &&
      run.x0 > last.x0 &&
      gapOf(last, run) < (last.text.endsWith('/') ? BEHIND_STROKE : areThousands(last, run) ? THOUSANDS_GAP : CODE_GAP);
    if (isNext) chains.at(-1)!.push(run);
    else chains.push([run]);
  }
  return chains;
}

const gapOf = (a: Run, b: Run) => (b.x0 - a.x1) / Math.max(a.word.capitalHeight, b.word.capitalHeight);

/** Figures in several words that make one list or one mixed fraction, and every other run for itself. */
function groupsOf(chain: readonly Run[]): Run[][] {
  const groups: Run[][] = [];
  for (const run of chain) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    const goesOn =
      last &&
      group![0]!.kind === 'figure' &&
      gapOf(last, run) <
        (last.text.endsWith('/') ? BEHIND_STROKE : areThousands(last, run) ? THOUSANDS_GAP : NUMBER_GAP) &&
      joins(last, run);
    if (goesOn) group!.push(run);
    else if (run.kind === 'figure' || isAllText(run, chain)) groups.push([run]);
  }
  return groups
    .map((group) => (isStroke(group.at(-1)!) ? group.slice(0, -1) : group))
    .filter((group) => group.length > 0);
}

/** A word without figures is one place; letters before or behind figures are not one of their own. */
const isAllText = (run: Run, chain: readonly Run[]) =>
  run.index === 0 && !chain.some(({ word, kind }) => word === run.word && kind === 'figure');

const isStroke = (run: Run) => /^[/-]$/.test(run.text);
const joins = (last: Run, next: Run) =>
  isStroke(next) ||
  (next.kind === 'figure' &&
    (isStroke(last) ||
      /[/-]$/.test(last.text) ||
      /^[/-]/.test(next.text) ||
      /^1\/[2-8]$|^3\/[48]$/.test(next.text) ||
      areThousands(last, next)));

function joined(numbers: readonly Run[]): Mark[] {
  return numbers.flatMap((run, i) => {
    const before = numbers[i - 1];
    const isApart = before && before.kind === 'figure' && run.kind === 'figure' && before.word !== run.word;
    return isApart ? [BLANK, ...run.marks] : run.marks;
  });
}

/** What a code is made of that has blanks in it: the words that follow, as close as words of one code do. */
function longerFrom(runs: readonly Run[], start: number): Place['longer'] {
  const chain = chained(runs.slice(start, start + MOST_RUNS))[0]!;
  const all = [...new Set(chain.map(({ word }) => word))];
  const other = all.findIndex((word, i) => i > 0 && isCodeBySelf(word.text));
  const words = other < 0 ? all : all.slice(0, other);
  return [2, 3].flatMap((count) => {
    if (words.length < count) return [];
    const own = chain.filter(({ word }) => words.slice(0, count).includes(word));
    return [{ marks: own.flatMap(({ marks }) => marks), box: around(own) }];
  });
}
const MOST_RUNS = 8;
