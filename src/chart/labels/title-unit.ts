import { unitsNamed } from '../../units/names.ts';
import type { Quantity } from '../../units/quantities.ts';
import type { Unit } from '../../units/units.ts';

/** A unit in a title; `isSure` is false where the reader's slips had to be mended. */
export type FoundUnit = { readonly unit: Unit; readonly isSure: boolean };

/** Quantities an axis of a fan chart can be measured in. */
const AXIS_UNITS: readonly Quantity[] = ['flow', 'pressure', 'power', 'fraction'];

/** Raised figures come out of the reader as all kinds of things: "m?/h", "m°/h", "ma/h", "mê/h" are m³/h. */
const SLIPS: readonly [RegExp, string][] = [
  [/\bm\s*[^a-z0-9\s/]{0,2}\s*3?\s*[/|Il1]\s*(h|s|min)\b/gi, 'm3/$1'],
  [/\bm[a-z0-9%?*°"'’^]{1,2}\s*\/\s*(h|s|min|sec|hr)\b/gi, 'm3/$1'],
  [/\bm\s*\/\s*(h|hr|min|sec)\b/gi, 'm3/$1'],
  [/\bm[3?*°'’]\s*\/\s*[4yuU9]$/gi, 'm3/h'],
  [/\bm(?:\W?|[^\w\s]{2,3})(s|h)\b/g, 'm3/$1'],
  [/\bm[^\w\s,;:.()-]{1,3}\s?(min|hr|sec)\b/gi, 'm3/$1'],
  [/\bm[i1l|3?°'*]{1,3}\s?min\b/g, 'm3/min'],
  [/\bm[a-z?°'*]{0,2}[\s/]m[uil1]n\b/g, 'm3/min'],
  // a handwritten m, and a stroke that leans
  [/\bw[?*°'"’]\s?[f/|Il1]\s?h/g, 'm3/h'],
  [/\bc[o0bh]m\s*\/\s*(h|min|s)\b/gi, 'm3/$1'],
  // the Cyrillic second
  [/\bm\s?[^a-z0-9\s/]{0,2}\s?3?\s?\/\s?c$/gi, 'm3/s'],
  [/\bkB[tT7]\b/g, 'kW'],
  [/^(?:[NMUIl]|[Il]{2})a$/g, 'Pa'],
  [/^[KkXx](?:[NMUIl]|[Il]{2})a$/g, 'kPa'],
  [/\bm{2,3}\s*BO[A-Z0]\b\W*(?:CT\b\.?)?/gi, 'mm water'],
  [/(?:\bf|#)t\s*[^a-z\s]{0,2}\s*\/\s*min\b/gi, 'ft3/min'],
  [/\bcu\.?\s*ft\.?\s*(per|\/)\s*min\b\.?/gi, 'CFM'],
  [/\bC\.?\s*F\.?\s*M\b\.?/gi, 'CFM'],
  // full stops between capitals make one letter of another, a bracket an I
  [/\bC\.?\s*(?:[EP]|FE|EF)\.?\s*M\b\.?/g, 'CFM'],
  [/\b\w?[Il|1]CFM\b/g, 'CFM'],
  [/\bmm\s*\.?\s*(?:w?W\.?\s*[GCS]|H\s*[^a-z\s]{0,2}\s*[O0]|Aq|CE|[c¢]\.?\s*[aq])\b\.?/gi, 'mm water'],
  [/\bin(?:[cs~]\S{0,3})?\s*\.?\s*(?:of\s+)?(?:W\.?\s*[GC]|H\s*[^a-z\s]{0,2}\s*[O0]|water)\b\.?/gi, 'in water'],
  [/["”]\s*(?:W\.?\s*[GC]|H\s*[^a-z\s]{0,2}\s*[O0])\b\.?/gi, 'in water'],
  [/\bkp\s*\/\s*m[2²]/gi, 'mm water'],
  [/\bkg\s*\/\s*m[2²]/gi, 'mm water'],
  [/(?<!\w)[Il1|!]\s*\/\s*(s|sec)\b/g, 'L/s'],
  [/(?<=[[({]\s*)\/\s*(s|sec)\b/g, 'L/s'],
  [/(?<=[[({]\s*)[Il1|]\s*\/\s*[5S](?=\s*[\])}])/g, 'L/s'],
  // a slender l and the stroke behind it make one letter
  [/(?<!\w)[VUW]\s?sec\b/g, 'L/s'],
  [/(?<=[[(]\s*)[LlI1|]s(?=\s*[\])])/g, 'L/s'],
  [/\b[Ll][il1|]s\b/g, 'L/s'],
  [/\bdm[^a-z\s]?\s*\/\s*s\b/g, 'L/s'],
  [/\bB\.?\s*H\.?\s*P\b\.?/g, 'HP'],
  [/\bH\.\s*P\b\.?/g, 'HP'],
  [/\bc\.?\s*v\b\.?/g, 'PS'],
  [/\bchv?\b/g, 'PS'],
  [/\bKW\b|\bKw\b/g, 'kW'],
  [/\bPA\b|\bPa[lIJ1|]$/g, 'Pa'],
  [/\b(kW|kPa|CFM|HP)[lIJ1|]$/g, '$1'],
  [/\b(da|k|h)?Pa[lI1|](?!\w)/g, '$1Pa'],
  [/\bKPa\b|\bKpa\b|\bkpa\b|\bKPA\b/g, 'kPa'],
];

/**
 * The unit in a title: what stands in brackets first, then after a comma, a dash or "in", then the last words.
 * @param quantity  look only for units of this quantity, where the words have told
 */
export function findUnit(text: string, quantity?: Quantity): FoundUnit | null {
  const wanted = quantity ? [quantity] : AXIS_UNITS;
  const bracketed = [...text.matchAll(/[[({|]([^[\](){}|]{1,22})(?:[\])}|]|$)/g)].map((m) => m[1]!);
  const after = /(?:,|\s[-–—]|\s\/|:|\bin\b|\ben\b)\s*([^,]{1,20})$/.exec(text)?.[1];
  const tails = tailsOf(text);
  // a sign may be spelt like a unit: what stands in brackets is mended before words outside them are believed
  for (const places of [bracketed.reverse(), [...(after ? [after] : []), ...tails]])
    for (const isSure of [true, false])
      for (const piece of places) {
        const unit = unitOf(isSure ? piece : mended(piece), wanted);
        if (unit) return { unit, isSure: isSure || !/[?°'"*]/.test(piece) };
      }
  const whole = mended(text);
  for (const piece of tailsOf(whole)) {
    const unit = unitOf(piece, wanted);
    if (unit) return { unit, isSure: false };
  }
  return null;
}

function unitOf(text: string, wanted: readonly Quantity[]): Unit | null {
  const plain = text.trim().replace(/^[-–,.:;=\s]+|[,:;=\s]+$/g, '');
  if (!plain || plain.length > 20 || plain === '1') return null;
  return (
    unitsNamed(plain).find((n) => wanted.includes(n.unit.quantity) && (!n.assumed || wanted.length === 1))?.unit ?? null
  );
}

function mended(text: string): string {
  let out = text;
  for (const [from, to] of SLIPS) out = out.replace(from, to);
  return out;
}

/** The last one to four words, and every word with its neighbour. */
function tailsOf(text: string): string[] {
  const words = text
    .replace(/[[\](){}|]/g, ' ')
    .split(/\s+/)
    .filter(Boolean);
  const out: string[] = [];
  for (let n = Math.min(4, words.length); n >= 1; n--) out.push(words.slice(-n).join(' '));
  for (let n = Math.min(3, words.length); n >= 1; n--)
    for (let i = words.length - n - 1; i >= 0; i--) out.push(words.slice(i, i + n).join(' '));
  // a lone letter or a long word says too little on its own
  return out.filter((w) => w.length > 1 || w === '%' || w === 'W');
}

/** True for "[m³/h]": a unit and nothing else. */
export const isOnlyUnit = (text: string): boolean => unitOf(text, AXIS_UNITS) !== null;
