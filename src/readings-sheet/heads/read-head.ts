import type { WordReader } from '../../words/word-reader.ts';
import { readNumbers, type WrittenNumber } from '../cells/read-cells.ts';
import type { DigitReader } from '../digits/digit-network.ts';
import type { Blot } from '../ink/blots.ts';
import type { SheetInk } from '../ink/sheet-ink.ts';
import type { ReadWord } from '../../writing/index.ts';
import type { HeadQuantity } from '../quantities.ts';
import type { HeadField } from '../reading.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { headLabels, type HeadLabel } from './head-labels.ts';
import { headValue } from './head-value.ts';
import type { SheetLine } from './sheet-words.ts';
import { isLikeDigit, looksLikeNumber, unitBehind } from './value-words.ts';

type Fields = { [Name in HeadQuantity]?: HeadField };

const SURE = 0.95;
const SURE_LABEL = 0.85;

/** Reads the fields above the table: names in print, numbers with both readers. */
export async function readHead(
  table: TableSurface,
  lines: readonly SheetLine[],
  ink: SheetInk,
  digits: DigitReader,
  words: WordReader,
): Promise<Fields> {
  const labels = headLabels(lines, table);
  const numbers = labels.map((label) => numberBehind(label, ink.blots, table.rowHeight));
  const spellings = await readNumbers(numbers, ink.field, digits, words);
  const fields: Fields = {};
  labels.forEach((label, i) => {
    const { quantity } = label;
    const value = headValue(quantity, spellings[i]!, unitBehind(label));
    if (!value) return;
    const confidence = value.chance * Math.min(1, label.sureness);
    fields[quantity] = {
      value: quantity === 'voltage_V' ? [value.value] : value.value,
      asPrinted: value.asPrinted,
      box_px: boxOf(numbers[i]!.blots, table),
      confidence,
      needsReview: value.chance < SURE || label.sureness < SURE_LABEL,
    };
  });
  return fields;
}

/** The ink of the number behind a label: where its digits were read, else the first group that stands in its line. */
function numberBehind(label: HeadLabel, blots: readonly Blot[], rowHeight: number): WrittenNumber {
  const { x0, x1, y0, y1, words } = label;
  const high = y1 - y0;
  const inLine = blots.filter(
    (b) => b.x0 > x0 - 0.1 * high && b.x1 < x1 + 0.2 * high && b.cy > y0 - 0.9 * high && b.cy < y1 + 0.7 * high,
  );
  const near = withoutUnderline(inLine, high)
    .filter((b) => b.y1 - b.y0 < 1.3 * rowHeight)
    .sort((a, b) => a.x0 - b.x0);
  const tall = near.filter((b) => b.y1 - b.y0 > 0.6 * high);
  const digit = tall.map((b) => b.y1 - b.y0).sort((a, b) => a - b)[tall.length >> 1] ?? high;
  const group = firstGroup(near, digit);
  const read = digitsAmong(words);
  const own = read ? near.filter((b) => b.cx > read[0] - 0.1 * digit && b.cx < read[1] + 0.1 * digit) : [];
  // letters read only a part of what stands close together, or the group goes on into its unit
  const isPart = own.length > 0 && group.length > own.length && isClose(own, group, digit);
  return { blots: own.length && !isPart ? own : group, digit };
}

function firstGroup(near: readonly Blot[], digit: number): Blot[] {
  const group: Blot[] = [];
  let reached = -Infinity;
  for (const b of near) {
    const isLow = b.y1 - b.y0 < 0.5 * digit;
    if (!group.length && isLow) continue;
    if (group.length && b.x0 - reached > 0.55 * digit) break;
    group.push(b);
    reached = Math.max(reached, b.x1);
  }
  return group;
}

/** Whether a group goes on right beside its part: no blank parts them. */
function isClose(part: readonly Blot[], group: readonly Blot[], digit: number): boolean {
  const end = Math.max(...part.map((b) => b.x1));
  const next = group.filter((b) => b.x0 >= end - 0.1 * digit && !part.includes(b) && b.y1 - b.y0 > 0.5 * digit);
  return next.length > 0 && Math.min(...next.map((b) => b.x0)) - end < 0.24 * digit;
}

/** Thin pieces under the digits, or several on one height, are a printed line to write on. */
function withoutUnderline(blots: readonly Blot[], high: number): Blot[] {
  const isThin = (b: Blot) => b.y1 - b.y0 < 0.25 * high;
  const onOneHeight = (b: Blot) => blots.filter((o) => isThin(o) && Math.abs(o.cy - b.cy) < 0.12 * high).length;
  return blots.filter((b) => !isThin(b) || (b.x1 - b.x0 < 0.6 * high && onOneHeight(b) < 3));
}

/** Where the number behind a label begins and ends, its unit left out; null where no word looks like one. */
function digitsAmong(words: readonly ReadWord[]): readonly [number, number] | null {
  const numbers = words.filter(({ text }) => looksLikeNumber(text));
  // a lone ring before a number is the sign of a diameter
  const word =
    numbers.find(({ text }) => !/^[0Oo]$/.test(text)) ?? numbers[0] ?? words.find(({ text }) => /\d/.test(text));
  if (!word) return null;
  const { glyphs } = word;
  const end = glyphs.findIndex((g, i) => i > 0 && !isLikeDigit(g.text));
  const last = glyphs[end < 0 ? glyphs.length - 1 : end - 1]!;
  return [word.x0, last.x1];
}

function boxOf(blots: readonly Blot[], { surface }: TableSurface): HeadField['box_px'] {
  const xs = blots.flatMap((b) => [b.x0, b.x1]);
  const ys = blots.flatMap((b) => [b.y0, b.y1]);
  const corners = [Math.min(...xs), Math.max(...xs)].flatMap((x) =>
    [Math.min(...ys), Math.max(...ys)].map((y) => surface.toPhoto(x, y)),
  );
  const [us, vs] = [corners.map(([u]) => u), corners.map(([, v]) => v)];
  const [x, y] = [Math.min(...us), Math.min(...vs)];
  return [x, y, Math.max(...us) - x, Math.max(...vs) - y].map(Math.round) as unknown as HeadField['box_px'];
}
