import type { WordReader } from '../../words/word-reader.ts';
import { readNumbers, type WrittenNumber } from '../cells/read-cells.ts';
import type { DigitReader } from '../digits/digit-network.ts';
import type { Blot } from '../ink/blots.ts';
import type { SheetInk } from '../ink/sheet-ink.ts';
import { HEAD_QUANTITIES, type HeadQuantity } from '../quantities.ts';
import type { HeadField } from '../reading.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { headLabels, type HeadLabel } from './head-labels.ts';
import { headValue } from './head-value.ts';
import type { SheetLine } from './sheet-words.ts';
import { unitAsRead } from './units-as-read.ts';

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

/** The first group of ink behind a label that stands in its line; what underlines it is left out. */
function numberBehind({ x0, x1, y0, y1 }: HeadLabel, blots: readonly Blot[], rowHeight: number): WrittenNumber {
  const high = y1 - y0;
  const near = blots
    .filter((b) => b.x0 > x0 - 0.1 * high && b.x1 < x1 + 0.2 * high && b.cy > y0 - 0.9 * high && b.cy < y1 + 0.7 * high)
    .filter((b) => b.y1 - b.y0 < 1.3 * rowHeight && !(b.x1 - b.x0 > 1.2 * high && b.y1 - b.y0 < 0.4 * high))
    .sort((a, b) => a.x0 - b.x0);
  const tall = near.filter((b) => b.y1 - b.y0 > 0.6 * high);
  const digit = tall.map((b) => b.y1 - b.y0).sort((a, b) => a - b)[tall.length >> 1] ?? high;
  const group: Blot[] = [];
  let reached = -Infinity;
  for (const b of near) {
    const isLow = b.y1 - b.y0 < 0.5 * digit;
    if (!group.length && isLow) continue;
    if (group.length && b.x0 - reached > 0.55 * digit) break;
    group.push(b);
    reached = Math.max(reached, b.x1);
  }
  return { blots: group, digit };
}

/** The unit among the words behind a label. */
function unitBehind({ quantity, words }: HeadLabel) {
  const { of } = HEAD_QUANTITIES[quantity];
  const texts = words.flatMap(({ text }) => [text, text.replace(/^[\d.,]+/, '')]);
  return (
    texts.map((text) => (text.length > 0 && !/^[\d.,]+$/.test(text) ? unitAsRead(text, of) : null)).find(Boolean) ??
    null
  );
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
