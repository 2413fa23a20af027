import type { WordReader } from '../../words/word-reader.ts';
import { hearNumbers, spelt } from '../cells/read-cells.ts';
import type { Settled } from '../cells/reading-habits.ts';
import type { DigitReader } from '../digits/digit-network.ts';
import type { Blot } from '../ink/blots.ts';
import type { SheetInk } from '../ink/sheet-ink.ts';
import type { HeadQuantity } from '../quantities.ts';
import type { HeadField } from '../reading.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { headLabels } from './head-labels.ts';
import { beforeBlank, numberBehind, passesOver } from './head-number.ts';
import { headValue } from './head-value.ts';
import { asSaid } from './said-number.ts';
import type { SheetLine } from './sheet-words.ts';
import { unitBehind } from './value-words.ts';

type Fields = { [Name in HeadQuantity]?: HeadField };

const SURE = 0.95;
const SURE_LABEL = 0.85;
/** What is less likely than this may hold a letter of its unit. */
const UNLIKELY = 0.5;

/** Reads the fields above the table: names in print, numbers with both readers, whose habits on the sheet are settled. */
export async function readHead(
  table: TableSurface,
  lines: readonly SheetLine[],
  ink: SheetInk,
  digits: DigitReader,
  words: WordReader,
  settled: Settled,
): Promise<Fields> {
  const labels = headLabels(lines, table);
  const numbers = labels.map((label) => numberBehind(label, ink.blots, table.rowHeight));
  const shorter = numbers.map(beforeBlank);
  const some = shorter.filter((number) => number !== null);
  const heard = await hearNumbers([...numbers, ...some], ink.field, digits, words);
  const read = heard.map((number) => spelt(number, ink.field, digits, settled));
  const fields: Fields = {};
  labels.forEach((label, i) => {
    const { quantity } = label;
    const unit = unitBehind(label);
    const valueOf = (at: number) => headValue(quantity, asSaid(read[at]!, label.words), unit);
    const whole = valueOf(i);
    const isOdd = !whole || whole.chance < UNLIKELY;
    const value = (isOdd && shorter[i] && valueOf(labels.length + some.indexOf(shorter[i]))) || whole;
    if (!value) return;
    const confidence = value.chance * Math.min(1, label.sureness);
    fields[quantity] = {
      value: quantity === 'voltage_V' ? [value.value] : value.value,
      asPrinted: value.asPrinted,
      box_px: boxOf(numbers[i]!.blots, table),
      confidence,
      needsReview:
        value.chance < SURE ||
        label.sureness < SURE_LABEL ||
        (label.isLetter && !unit) ||
        passesOver(label, numbers[i]!, ink.blots),
    };
  });
  return fields;
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
