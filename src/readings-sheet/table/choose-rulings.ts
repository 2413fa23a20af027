import { crossing, lineWebs, type LineWeb } from '../../picture/lines/line-webs.ts';
import { acrossAt, isCollinear, lengthOf, type PageLine } from '../../picture/lines/page-lines.ts';
import { withoutOdd } from './odd-rulings.ts';

/** The rulings of a table: level lines from the top down, upright lines from the left. */
export type Rulings = { readonly level: readonly PageLine[]; readonly upright: readonly PageLine[] };

/** A line of a table crosses this share of the others' at least. */
const LEAST_CROSSED = 0.62;
/** Squares of squared paper are fainter than this share of the table's own lines. */
const FAINT = 0.35;
const REACH_PX = 7;
const REACH_SHARE = 0.02;

/**
 * The lines that make a table, out of all on the photo: those of one web that nearly all cross each other, and the
 * heavier ones where the paper itself is ruled.
 * @returns null where nothing on the photo is ruled like a table
 */
export function chooseRulings(lines: readonly PageLine[]): Rulings | null {
  let best: Rulings | null = null;
  for (const web of lineWebs(lines)) {
    const found =
      web.upright.length && web.level.length ? (crossedByAll(heavier(web)) ?? crossedByAll(web)) : ladder(web);
    if (found && (!best || worth(found) > worth(best))) best = found;
  }
  return best;
}

/** A table may have lines of one direction only. */
const LEAST_RUNGS = 4;
/** It counts for this much of a table whose lines cross. */
const LADDER_WORTH = 0.3;

function ladder(web: LineWeb): Rulings | null {
  const { upright, level } = heavier(web);
  const sorted = (list: readonly PageLine[]) => merged(list).toSorted((a, b) => a.c[0] - b.c[0]);
  return Math.max(upright.length, level.length) < LEAST_RUNGS
    ? null
    : { upright: sorted(upright), level: sorted(level) };
}

/** How much of the photo the rulings take up, and how strong they are. */
const worth = ({ level, upright }: Rulings): number =>
  [...level, ...upright].reduce((sum, l) => sum + lengthOf(l) * l.strength, 0) *
  (level.length && upright.length ? 1 : LADDER_WORTH);

/** Without lines much fainter than the strong long ones. */
function heavier({ upright, level }: LineWeb): LineWeb {
  const all = [...upright, ...level].toSorted((a, b) => b.strength - a.strength);
  const total = all.reduce((sum, l) => sum + lengthOf(l), 0);
  let seen = 0;
  const strong = all.find((l) => (seen += lengthOf(l)) > 0.25 * total)!.strength;
  const isHeavy = (l: PageLine) => l.strength > FAINT * strong;
  return { upright: upright.filter(isHeavy), level: level.filter(isHeavy) };
}

/** The lines of a web that cross nearly all others, and are as heavy as those between them. */
function crossedByAll(web: LineWeb): Rulings | null {
  const crossed = withCrossings(merged(web.level), merged(web.upright));
  if (!crossed) return null;
  const level = heavyWithin(crossed.level, crossed.upright);
  const upright = heavyWithin(crossed.upright, level);
  if (!isTable(level, upright)) return null;
  const at = (l: PageLine, others: readonly PageLine[]) =>
    acrossAt(l, others.reduce((s, o) => s + o.c[0], 0) / others.length);
  const [down, across] = [
    level.toSorted((a, b) => at(a, upright) - at(b, upright)),
    upright.toSorted((a, b) => at(a, level) - at(b, level)),
  ];
  return { level: withoutOdd(down, across), upright: withoutOdd(across, down) };
}

/** Two lines each way are a box; a table has one more. */
const isTable = (level: readonly PageLine[], upright: readonly PageLine[]): boolean =>
  Math.min(level.length, upright.length) >= 2 && level.length + upright.length >= 5;

/** A row of ones or a word has gaps that no ruling has: share of the length that shows, of the usual share. */
const GAPPED = 0.8;

/**
 * Without lines that are faint between the first and the last of the others, the paper's own or wood's beside it, and
 * without those that show too little there: ones that stand under each other.
 */
function heavyWithin(lines: readonly Ruled[], others: readonly Ruled[]): readonly Ruled[] {
  const seen = lines.map((line) => {
    const ends = others.map((o) => (line.upright ? crossing(line, o)?.[1] : crossing(o, line)?.[0]) ?? line.middle);
    const [from, to] = [Math.min(...ends), Math.max(...ends)];
    const shown = line.pieces.map((p) => ({
      p,
      length: Math.max(0, Math.min(p.to, to) - Math.max(p.from, from)) * p.cover,
    }));
    return {
      weight: shown.reduce((sum, { p, length }) => sum + length * p.strength, 0) / Math.max(1, to - from),
      cover: shown.reduce((sum, { length }) => sum + length, 0) / Math.max(1, to - from),
    };
  });
  const usual = (list: number[]) => list.sort((a, b) => a - b)[list.length >> 1]!;
  const weight = usual(seen.map((s) => s.weight));
  const cover = usual(seen.map((s) => s.cover));
  return lines.filter((_, i) => seen[i]!.weight > FAINT * weight && seen[i]!.cover > GAPPED * cover);
}

/** Leaves out, worst first, the lines that cross too few of the others. */
function withCrossings(level: readonly Ruled[], upright: readonly Ruled[]) {
  for (;;) {
    if (!isTable(level, upright)) return null;
    const share = (line: Ruled, others: readonly Ruled[]) =>
      others.filter((o) => (line.upright ? meet(line, o) : meet(o, line))).length / others.length;
    const scored = [
      ...level.map((l) => ({ l, share: share(l, upright) })),
      ...upright.map((l) => ({ l, share: share(l, level) })),
    ];
    const worst = scored.reduce((a, b) => (b.share < a.share ? b : a));
    if (worst.share >= LEAST_CROSSED) return { level, upright };
    level = level.filter((l) => l !== worst.l);
    upright = upright.filter((l) => l !== worst.l);
  }
}

/** One ruling, and all the pieces of it that were seen. */
type Ruled = PageLine & { readonly pieces: readonly PageLine[] };

/** A line reaches as far as its strong pieces: squared paper goes on faintly where a ruling ends. */
const STRONG = 0.45;

/** Pieces on one course become one line as long as all of them. */
function merged(lines: readonly PageLine[]): Ruled[] {
  const weight = (l: PageLine) => lengthOf(l) * l.strength;
  const out: Ruled[] = [];
  for (const line of lines.toSorted((a, b) => weight(b) - weight(a))) {
    const i = out.findIndex((o) => isCollinear(o, line));
    if (i < 0) {
      out.push({ ...line, pieces: [line] });
      continue;
    }
    const o = out[i]!;
    const isStrong = line.strength > STRONG * o.strength;
    const [from, to] = isStrong ? [Math.min(o.from, line.from), Math.max(o.to, line.to)] : [o.from, o.to];
    out[i] = { ...o, from, to, pieces: [...o.pieces, line] };
  }
  return out;
}

function meet(upright: Ruled, level: Ruled): boolean {
  const at = crossing(upright, level);
  return at !== null && isOn(upright, at[1]) && isOn(level, at[0]);
}

const isOn = (line: PageLine, along: number): boolean => {
  const reach = REACH_PX + REACH_SHARE * lengthOf(line);
  return along >= line.from - reach && along <= line.to + reach;
};
