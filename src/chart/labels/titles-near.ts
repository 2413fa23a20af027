import type { WordRead, WordReader } from '../../words/word-reader.ts';
import { isStroke, type Word } from './chains.ts';
import { cropOf } from './crops.ts';
import type { Pieces } from './pieces.ts';
import type { ReadScale } from './read-scales.ts';
import type { Box, Surroundings } from './surroundings.ts';
import { parseTitle, type Title } from './title.ts';

type Near = { line: Word; rank: number };

/** Reads the lines that may be titles of the scales; each scale gets what stands by it, the nearest first. */
export async function readTitles(
  all: Surroundings,
  pieces: Pieces,
  lines: readonly Word[],
  scales: readonly ReadScale[],
  reader: WordReader,
): Promise<{ titles: Map<ReadScale, Title[]>; lines: ReadonlySet<Word> }> {
  const free = lines.filter((l) => l.pieces.length <= 48 && !isStroke(l));
  const near = new Map(scales.map((s) => [s, linesNear(all, free, s, scales)]));
  const wanted = [...new Set([...near.values()].flatMap((some) => some.map((n) => n.line)))];
  const texts = await readLines(all, pieces, wanted, reader);
  const titles = new Map<ReadScale, Title[]>();
  for (const [scale, some] of near)
    titles.set(
      scale,
      some.flatMap(({ line, rank }) => {
        const { text, confidence } = texts.get(line)!;
        if (!text || confidence < LEAST_SURE) return [];
        const title = parseTitle(text, rank);
        return confidence > SURE || title.sureness > SURE_WORDS ? [title] : [];
      }),
    );
  return { titles, lines: new Set(wanted) };
}

/** Reads lines; upright ones from the bottom up and from the top down, whichever says more. */
async function readLines(
  all: Surroundings,
  pieces: Pieces,
  lines: readonly Word[],
  reader: WordReader,
): Promise<Map<Word, WordRead>> {
  const upright = lines.filter((l) => l.run === 'upright');
  const reads = await reader(
    [...lines.map((l) => cropOf(all, pieces, l)), ...upright.map((l) => cropOf(all, pieces, l, 'against'))],
    'text',
  );
  const out = new Map(lines.map((l, i) => [l, reads[i]!]));
  upright.forEach((l, i) => {
    const other = reads[lines.length + i]!;
    if (sense(other) > sense(out.get(l)!)) out.set(l, other);
  });
  return out;
}

/** How much a reading says: words that mean a quantity, a unit, and clear letters. */
function sense(read: WordRead): number {
  const { sureness, unit } = parseTitle(read.text);
  return sureness + (unit ? 0.6 : 0) + 1.2 * read.confidence;
}

/** Titles read less surely count where their words are known; below the least nothing does. */
const LEAST_SURE = 0.03;
const SURE = 0.25;
const SURE_WORDS = 0.6;
const MOST_TITLES = 4;

function linesNear(all: Surroundings, lines: readonly Word[], scale: ReadScale, scales: readonly ReadScale[]): Near[] {
  const words = scale.fit.believed.map((b) => scale.labels[b.index]!.word);
  const size = words.map((w) => w.size).sort((a, b) => a - b)[words.length >> 1]!;
  const box = {
    x0: secondIfFar(
      words.map((w) => w.x0).sort((a, b) => a - b),
      size,
    ),
    x1: secondIfFar(
      words.map((w) => w.x1).sort((a, b) => b - a),
      size,
    ),
    y0: Math.min(...words.map((w) => w.y0)),
    y1: Math.max(...words.map((w) => w.y1)),
  };
  const place = scale.side === 'bottom' || scale.side === 'top' ? besideRow : besideColumn;
  return lines
    .flatMap((line): Near[] => {
      if (line.size < 0.55 * size || line.size > 2.1 * size) return [];
      const rank = place(all, line, box, size, scale.side);
      return rank === null || isBeyond(line, scale, scales) ? [] : [{ line, rank }];
    })
    .sort((a, b) => a.rank - b.rank)
    .slice(0, MOST_TITLES);
}

/** The first, unless it stands out by itself: a bracket of a title beside it may be counted to a label. */
const secondIfFar = ([first, second]: readonly number[], far: number): number =>
  second !== undefined && Math.abs(second - first!) > far ? second : first!;

/** Distance of a line from a row of labels, letter heights; null where it is no title of it. */
function besideRow({ frame }: Surroundings, line: Word, row: Box, size: number, side: string): number | null {
  if (line.run !== 'level') return null;
  const x = (line.x0 + line.x1) / 2;
  const gap = side === 'bottom' ? line.y0 - row.y1 : row.y0 - line.y1;
  const inRow = Math.min(line.y1, row.y1) - Math.max(line.y0, row.y0) > 0.4 * size;
  if (inRow) return line.x1 > frame.x0 && line.x0 < row.x1 + 14 * size ? 1.5 : null;
  if (gap < -0.4 * size || gap > 5.5 * size) return null;
  return x > frame.x0 - 6 * size && x < frame.x1 + 8 * size ? gap / size : null;
}

/** The same for a column: upright lines beside it, level ones over its head or beyond it. */
function besideColumn({ frame }: Surroundings, line: Word, column: Box, size: number, side: string): number | null {
  const y = (line.y0 + line.y1) / 2;
  const outward = side === 'left' ? column.x0 - line.x1 : line.x0 - column.x1;
  const high = frame.y1 - frame.y0;
  if (line.run === 'upright') {
    const isBeside =
      outward > -1.2 * size && outward < 7 * size && y > frame.y0 - 0.15 * high && y < frame.y1 + 0.15 * high;
    return isBeside && line.pieces.length > 1 ? Math.max(0, outward / size) : null;
  }
  const above = Math.min(column.y0, frame.y0) - line.y1;
  const overlaps = line.x0 < column.x1 + 9 * size && line.x1 > column.x0 - 9 * size;
  const starts = side === 'left' ? line.x0 < column.x1 + 5 * size : line.x1 > column.x0 - 5 * size;
  if (above > -0.6 * size && above < 4.5 * size && overlaps && starts) return 0.6 + Math.max(0, above / size);
  if (outward > -0.2 * size && outward < 9 * size && y > frame.y0 - size && y < frame.y1 + size)
    return 2 + outward / size;
  // a unit printed in the place of a label
  const isIn = line.x0 > column.x0 - 2.5 * size && line.x1 < column.x1 + 2.5 * size;
  return isIn && y > column.y0 - 2 * size && y < column.y1 + 2 * size ? 1 : null;
}

/** A line beyond the next scale of the same side is that scale's. */
function isBeyond(line: Word, scale: ReadScale, scales: readonly ReadScale[]): boolean {
  return scales.some((other) => {
    if (other === scale || other.side !== scale.side || other.distance <= scale.distance) return false;
    const words = other.fit.believed.map((b) => other.labels[b.index]!.word);
    if (scale.side === 'bottom') return line.y0 > Math.min(...words.map((w) => w.y0));
    if (scale.side === 'top') return line.y1 < Math.max(...words.map((w) => w.y1));
    const x = (line.x0 + line.x1) / 2;
    return scale.side === 'left' ? x < Math.min(...words.map((w) => w.x0)) : x > Math.max(...words.map((w) => w.x1));
  });
}
