import type { Field } from '../../writing/crop/filters.ts';
import { NO_DIGIT, type DigitReader } from '../digits/digit-network.ts';
import type { Blot } from '../ink/blots.ts';
import { cutApart, footOf, patchOf, together, topOf, type Slice } from './strokes.ts';

/** One way to read a cell: digits with at most one point, and the logarithm of how likely it is. */
export type Spelling = { readonly text: string; readonly logLikelihood: number };

const BEAM = 24;
const MOST_SPELLINGS = 12;
/** Pieces of one digit put together again. */
const MOST_JOINED = 4;
/** A digit is at most this wide, usual digit heights. */
const WIDEST = 1.25;
/** Pieces of different blots make one digit only this near, usual digit heights. */
const NEAR = 0.12;
/** Connected ink so wide may well be two figures, and is nearly always one where it is no wider than this; usual digit heights. */
const TWO_WIDE = 1;
const ONE_WIDE = 0.65;
const CUT = Math.log(0.003);
/** Marks are points up to this size, usual digit heights. */
const POINT = { high: 0.42, wide: 0.4, least: 0.07 };
/** A comma reaches below the line, and may be so high; higher still, and wider, where it begins low enough. */
const COMMA = 0.62;
const LOW_COMMA = { high: 0.8, begins: 0.48, wide: 0.6 };
/** A second point, a point at the end or the beginning, a point passed over. */
const UNUSUAL = Math.log(0.02);
const LEAST = 1e-5;

/**
 * Reads the digits of one cell: every sensible way to cut its ink into digits, each piece read by the digit reader.
 * @param blots the cell's ink from left to right @param digit usual height of a digit, flat pixels
 * @returns the likeliest spellings, best first; none where there is no digit
 */
export function readNumber(blots: readonly Blot[], field: Field, digit: number, read: DigitReader): Spelling[] {
  const { slices, points } = elementsOf(blots, field, digit);
  if (!slices.length) return [];
  const shares = new Map<string, Float32Array>();
  const sharesOf = (from: number, to: number): Float32Array => {
    const key = `${from} ${to}`;
    const known = shares.get(key);
    if (known) return known;
    const found = read(patchOf(together(slices.slice(from, to)), field));
    shares.set(key, found);
    return found;
  };
  const beams: Spelling[][] = slices.map(() => []);
  beams.push([]);
  beams[0] = withPoint([{ text: '', logLikelihood: 0 }], pointBefore(0));
  for (let i = 0; i < slices.length; i++) {
    beams[i] = best(beams[i]!, BEAM);
    for (let to = i + 1; to <= Math.min(slices.length, i + MOST_JOINED); to++) {
      if (to > i + 1 && !mayJoin(i, to)) break;
      const likely = sharesOf(i, to);
      const whole = cutCost(to);
      const next: Spelling[] = [];
      for (const { text, logLikelihood } of beams[i]!)
        for (let d = 0; d < NO_DIGIT; d++)
          if (likely[d]! > 1e-4)
            next.push({ text: text + d, logLikelihood: logLikelihood + whole + Math.log(Math.max(LEAST, likely[d]!)) });
      beams[to]!.push(...withPoint(next, pointBefore(to)));
    }
  }
  const ends = beams[slices.length]!.map(({ text, logLikelihood }) =>
    // a point behind the last digit is a speck, and says nothing
    text.endsWith('.') ? { text: text.slice(0, -1), logLikelihood: logLikelihood + UNUSUAL } : { text, logLikelihood },
  );
  return best(
    ends.filter(({ text }) => /^\d*\.?\d+$/.test(text)),
    MOST_SPELLINGS,
  );

  /** How likely a point stands before piece `i`. */
  function pointBefore(i: number): number {
    const from = i === 0 ? -Infinity : middle(slices[i - 1]!);
    const to = i === slices.length ? Infinity : middle(slices[i]!);
    return Math.max(0, ...points.filter(({ x }) => x > from && x <= to).map(({ likely }) => likely));
  }

  /** What it costs that a figure ends before piece `i` where the ink goes on: connected ink no wider than one figure hardly is two. */
  function cutCost(i: number): number {
    const [last, next] = [slices[i - 1]!, slices[i]];
    if (last.blots !== next?.blots) return 0;
    const wide = Math.max(...last.blots.map(({ x1 }) => x1)) - Math.min(...last.blots.map(({ x0 }) => x0));
    return CUT * Math.min(1, Math.max(0, (TWO_WIDE - wide / digit) / (TWO_WIDE - ONE_WIDE)));
  }

  function mayJoin(from: number, to: number): boolean {
    const [last, next] = [slices[to - 2]!, slices[to - 1]!];
    const all = together(slices.slice(from, to));
    if (all.x1 - all.x0 > WIDEST * digit || pointBefore(to - 1) > 0.5) return false;
    return last.blots === next.blots || next.x0 - last.x1 < NEAR * digit;
  }
}

const middle = ({ x0, x1 }: Slice): number => (x0 + x1) / 2;

/** Every spelling with a point after it and without. */
function withPoint(spellings: readonly Spelling[], likely: number): Spelling[] {
  if (likely <= 0) return [...spellings];
  return spellings.flatMap(({ text, logLikelihood }) => {
    const isUnusual = text === '' || text.includes('.');
    return [
      { text: `${text}.`, logLikelihood: logLikelihood + Math.log(likely) + (isUnusual ? UNUSUAL : 0) },
      { text, logLikelihood: logLikelihood + Math.log(Math.max(0.01, 1 - likely)) },
    ];
  });
}

/** The likeliest spellings; the same text found in two ways counts once, as its likelier one. */
function best(spellings: readonly Spelling[], count: number): Spelling[] {
  const by = new Map<string, Spelling>();
  for (const s of spellings) if (s.logLikelihood > (by.get(s.text)?.logLikelihood ?? -Infinity)) by.set(s.text, s);
  return [...by.values()].sort((a, b) => b.logLikelihood - a.logLikelihood).slice(0, count);
}

/** Ink that may be digits, cut where digits may touch; and small marks that may be points. */
function elementsOf(blots: readonly Blot[], field: Field, digit: number) {
  const feet = blots.filter((b) => b.y1 - b.y0 > COMMA * digit).map(({ y1 }) => y1);
  const foot = feet.sort((a, b) => a - b)[feet.length >> 1] ?? Infinity;
  const isMark = (b: Blot) => {
    const isLow = b.y1 > foot + 0.04 * digit && b.cy > foot - 0.3 * digit;
    const isComma = isLow && b.y0 > foot - LOW_COMMA.begins * digit;
    const highest = isComma ? LOW_COMMA.high : isLow ? COMMA : POINT.high;
    return b.y1 - b.y0 < highest * digit && b.x1 - b.x0 < (isComma ? LOW_COMMA : POINT).wide * digit;
  };
  const slices = joinedUpright(blots.filter((b) => !isMark(b))).flatMap((s) => cutApart(s, field, digit));
  const points = slices.length
    ? blots.filter(isMark).map((b) => ({ x: b.cx, likely: pointLikelihood(b, slices, digit) }))
    : [];
  return { slices, points };
}

/** Blots one above the other belong to one digit: a five's flag, a broken four. */
function joinedUpright(blots: readonly Blot[]): Slice[] {
  const out: Slice[] = [];
  for (const b of blots) {
    const one: Slice = { blots: [b], x0: b.x0, x1: b.x1 };
    const last = out[out.length - 1];
    const shared = last ? Math.min(last.x1, b.x1) - Math.max(last.x0, b.x0) : 0;
    if (last && shared > 0.5 * Math.min(last.x1 - last.x0, b.x1 - b.x0)) out[out.length - 1] = together([last, one]);
    else out.push(one);
  }
  return out;
}

/** A mark is a point by its size and how low it stands beside the digits next to it. */
function pointLikelihood(mark: Blot, slices: readonly Slice[], digit: number): number {
  const size = Math.max(mark.x1 - mark.x0, mark.y1 - mark.y0) / digit;
  if (size < POINT.least) return 0;
  const near = slices.toSorted((a, b) => Math.abs(middle(a) - mark.cx) - Math.abs(middle(b) - mark.cx)).slice(0, 2);
  const top = Math.min(...near.map(topOf));
  const foot = Math.max(...near.map(footOf));
  const low = (mark.cy - top) / Math.max(1, foot - top);
  if (low < 0.25 || low > 1.35) return 0.02;
  return (low > 0.55 ? 0.97 : 0.75) * Math.min(1, size / 0.11);
}
