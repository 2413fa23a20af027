import type { ReadWord } from '../../writing/index.ts';
import { HEAD_QUANTITIES, type HeadQuantity } from '../quantities.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { nameAmong, passagesOf, plainWords } from './alike.ts';
import { HEAD_NAMES } from './names.ts';
import type { SheetLine } from './sheet-words.ts';
import { unitAsRead } from './units-as-read.ts';
import { looksLikeNumber, unitBehind } from './value-words.ts';

/** A name in the head of a sheet, and where its value may stand: behind it up to the next name. Flat pixels. */
export type HeadLabel = {
  readonly quantity: HeadQuantity;
  /** 0..1 */
  readonly sureness: number;
  readonly x0: number;
  readonly x1: number;
  /** top and foot of the line, the label's capitals high */
  readonly y0: number;
  readonly y1: number;
  /** its name is one letter only */
  readonly isLetter: boolean;
  /** words read behind it */
  readonly words: readonly ReadWord[];
};

const LEAST_SURE = 0.75;
const LONGEST_NAME = 4;

type Found = { quantity: HeadQuantity | null; sureness: number; from: number; to: number };

/** Finds the names of head fields in the lines that do not lie in the table. */
export function headLabels(lines: readonly SheetLine[], { surface, xs, ys }: TableSurface): HeadLabel[] {
  const outside = lines.filter(({ y }) => y < ys[0]! || y > ys[ys.length - 1]!);
  const labels = rowsOf(outside).flatMap((row) => {
    const found = namesIn(row);
    return found.flatMap(({ quantity, sureness, from, to }, i): HeadLabel[] => {
      if (!quantity) return [];
      const next = found[i + 1]?.from ?? row.length;
      const label = row.slice(from, to);
      const right = row[next]?.x0 ?? Math.min(surface.width, xs[xs.length - 1]! + 0.05 * surface.width);
      return [
        {
          quantity,
          sureness,
          x0: label.at(-1)!.x1,
          x1: right,
          y0: Math.min(...label.map((w) => w.y0)),
          y1: Math.max(...label.map((w) => w.y1)),
          isLetter: plainWords(label.map(({ text }) => text).join('')).length <= 1,
          words: row.slice(to, next),
        },
      ];
    });
  });
  const best = new Map<HeadQuantity, HeadLabel>();
  for (const label of [...labels, ...rowsOf(outside).flatMap(unnamed)]) {
    const known = best.get(label.quantity);
    if (!known || rankOf(label) > rankOf(known)) best.set(label.quantity, label);
  }
  return [...best.values()];
}

/** Of two names of one field the one its unit stands behind is likelier it; a lone letter may be another's. */
const WITH_UNIT = 0.1;
const LONE_LETTER = 0.15;
const rankOf = (label: HeadLabel): number =>
  label.sureness + (unitBehind(label) ? WITH_UNIT : 0) - (label.isLetter ? LONE_LETTER : 0);

/** Units that are those of one field only, and how surely they tell it: other lengths are written on sheets too. */
const TELLING: readonly (readonly [string, HeadQuantity, number])[] = [
  ['V', 'voltage_V', 0.86],
  ['Hz', 'frequency_Hz', 0.86],
  ['°C', 'airTemperature_C', 0.86],
  ['mbar', 'barometer_Pa', 0.86],
  ['hPa', 'barometer_Pa', 0.86],
  ['kPa', 'barometer_Pa', 0.8],
  ['mm', 'ductDiameter_m', 0.8],
];
/** A first figure may begin so much before where it was read, letter heights. */
const BEFORE = 0.3;

/** Numbers whose name was not read, and whose unit says what they are. */
function unnamed(row: readonly ReadWord[]): HeadLabel[] {
  return row.flatMap((word, i): HeadLabel[] => {
    if (!looksLikeNumber(word.text)) return [];
    const unit = word.text.replace(/^[\d.,]+/, '') || (row[i + 1]?.text ?? '');
    const told = TELLING.find(([name]) => /\p{L}/u.test(unit) && unitAsRead(unit)?.unit === name);
    if (!told) return [];
    const [, quantity, sureness] = told;
    const { x0, x1, y0, y1 } = word;
    const words = row.slice(i, i + 2);
    return [
      {
        quantity,
        sureness,
        isLetter: false,
        x0: x0 - BEFORE * (y1 - y0),
        x1: Math.max(x1, words.at(-1)!.x1),
        y0,
        y1,
        words,
      },
    ];
  });
}

/** Words beside each other, whatever line they were read in. */
function rowsOf(lines: readonly SheetLine[]): ReadWord[][] {
  const rows: { y: number; words: ReadWord[] }[] = [];
  for (const word of lines.flatMap(({ words }) => words)) {
    const y = (word.y0 + word.y1) / 2;
    const row = rows.find((r) => Math.abs(r.y - y) < 0.7 * Math.max(word.capitalHeight, r.words[0]!.capitalHeight));
    if (row) row.words.push(word);
    else rows.push({ y, words: [word] });
  }
  return rows.map(({ words }) => words.sort((a, b) => a.x0 - b.x0));
}

/** Names from left to right that do not overlap; words that look like some other field's name end the one before. */
function namesIn(row: readonly ReadWord[]): Found[] {
  const all: Found[] = [];
  for (let from = 0; from < row.length; from++)
    for (let to = from + 1; to <= Math.min(row.length, from + LONGEST_NAME); to++) {
      const text = row
        .slice(from, to)
        .map(({ text }) => text)
        .join(' ');
      if (to < row.length && isApart(row[to - 1]!, row[to]!) === false && /^[:.]$/.test(row[to]!.text)) continue;
      const passages = passagesOf(text);
      for (const quantity of Object.keys(HEAD_QUANTITIES) as HeadQuantity[]) {
        const sureness = nameAmong(HEAD_NAMES[quantity], passages);
        if (sureness >= LEAST_SURE) all.push({ quantity, sureness: sureness + 0.01 * (to - from), from, to });
      }
      if (to === from + 1 && isWord(text)) all.push({ quantity: null, sureness: 0.5, from, to });
    }
  const kept: Found[] = [];
  for (const found of all.sort((a, b) => b.sureness - a.sureness))
    if (!kept.some((k) => k.from < found.to && found.from < k.to)) kept.push(found);
  return kept.sort((a, b) => a.from - b.from);
}

const isApart = (a: ReadWord, b: ReadWord): boolean => b.x0 - a.x1 > 0.8 * a.capitalHeight;
/** Units are no names of fields, however many letters they have. */
const isWord = (text: string): boolean => {
  const plain = plainWords(text);
  return plain.length >= 4 && !/\d/.test(plain) && !/^(mbar|volts?|hpa|kpa|mmhg)$/.test(plain);
};
