import type { Mark } from '../letters/marks.ts';
import { isCodeBySelf } from '../tables/fields.ts';
import { isNothing } from '../tables/nothing.ts';
import { around, inOneRow, type Box } from './boxes.ts';
import { bestOf, SHORT_UNIT } from './likeness.ts';
import { LONGEST, type Meaning } from './phrases.ts';
import type { Run } from './runs.ts';

/** Words that were recognised. One thing may be both: `kW` behind a number is its unit, above it the label. */
export type Hit = Box & {
  readonly text: string;
  readonly runs: readonly Run[];
  readonly capitalHeight: number;
  /** the chance that these words stand here, 0..1 */
  readonly clarity: number;
  readonly isUnit: boolean;
  readonly meanings: readonly Meaning[];
};

/** A gap within a label, in capital heights. */
const WORD_GAP = 1.3;

/** A longer wording that is nearly as likely is what was printed: `1/min` and not `/min`, `rotor Ø` and not `rotor`. */
const NEARLY = { unit: 1, label: 2.5 };

/** Finds labels and units among the runs of a plate; no run belongs to two. */
export function hitsAmong(runs: readonly Run[]): Hit[] {
  const found = runs.flatMap((_, start) => hitsFrom(runs, start)).toSorted((a, b) => b.margin - a.margin);
  const taken = new Set<number>();
  const isFree = ({ hit }: Found) => hit.runs.every(({ id }) => !taken.has(id));
  return found.flatMap((one) => {
    if (!isFree(one)) return [];
    const { hit } = found.find((other) => goesFurther(other, one) && isFree(other)) ?? one;
    for (const { id } of hit.runs) taken.add(id);
    return [hit];
  });
}

function goesFurther(a: Found, b: Found): boolean {
  const [long, short] = [a.hit.runs, b.hit.runs];
  const contains = long.length > short.length && long[0]!.id <= short[0]!.id && long.at(-1)!.id >= short.at(-1)!.id;
  if (!contains || a.hit.isUnit !== b.hit.isUnit) return false;
  return a.hit.isUnit
    ? a.margin > b.margin - NEARLY.unit
    : isDiameterSign(long.at(-1)!) && a.margin > b.margin - NEARLY.label;
}

/** What a reader of words makes of the sign Ø behind a label. */
const isDiameterSign = ({ word: { text } }: Run) => /^[08]$/.test(text);

/** Codes that stand for themselves are no labels, however like. */
const isCode = ({ word }: Run) => isNothing(word.text) || isCodeBySelf(word.text);

type Found = { readonly hit: Hit; readonly margin: number };

function hitsFrom(runs: readonly Run[], start: number): Found[] {
  const found: Found[] = [];
  const taken: Run[] = [];
  let marks: Mark[] = [];
  for (let i = start; i < runs.length; i++) {
    const run = runs[i]!;
    const last = taken.at(-1);
    if (isCode(run) || (last && !isClose(last, run))) break;
    taken.push(run);
    marks = [...marks, ...run.marks];
    if (marks.length > LONGEST + 4) break;
    if (!taken.some(({ kind }) => kind === 'text') || !areOwn(taken)) continue;
    const isBehind = isBehindFigure(runs[start - 1], taken[0]!);
    // a lone letter is a word of its own, or the unit of the number before it
    if (marks.length === 1 && !isBehind && !(run.index === 0 && run.isLast)) continue;
    const best = bestOf(marks, isBehind, isOneWord(taken));
    if (best && !(best.hit.isUnit && isAmidCode(taken, marks.length)))
      found.push({
        margin: best.margin,
        hit: {
          ...best.hit,
          ...around(taken),
          runs: [...taken],
          capitalHeight: run.word.capitalHeight,
          text: taken.map((r) => r.text).join(' '),
        },
      });
  }
  return found;
}

const isClose = (a: Run, b: Run) => {
  const gap = b.x0 - a.x1;
  const height = Math.max(a.word.capitalHeight, b.word.capitalHeight);
  return inOneRow(a, b) && gap < WORD_GAP * height && gap > -height;
};

/** Figures belong to a unit or label only within a word, `min-1`, `P2`, or as the number of phases, `3 ~ Mot.` */
const areOwn = ([first, ...rest]: readonly Run[]) =>
  areInWords(/^[13]~?$/.test(first!.text) ? rest : [first!, ...rest]);
const areInWords = (runs: readonly Run[]) =>
  runs.every(
    (run, i) =>
      run.kind === 'text' ||
      (i > 0 && i === runs.length - 1 && isDiameterSign(run)) ||
      runs.some(({ kind, word }) => kind === 'text' && word === run.word),
  );

/** Letters with figures before and behind in one word are part of a code, `5467W44`; so are a few before figures. */
const isAmidCode = (runs: readonly Run[], letters: number) =>
  !runs.at(-1)!.isLast && (runs[0]!.index > 0 || letters < SHORT_UNIT);

const isOneWord = (runs: readonly Run[]) => runs.every(({ word }) => word === runs[0]!.word);

const isBehindFigure = (before: Run | undefined, run: Run) => before?.kind === 'figure' && isClose(before, run);
