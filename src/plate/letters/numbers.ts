/** One way to understand printed figures: the numbers in their order, and how usual it is to write them so. */
export type Understood = { readonly numbers: readonly number[]; readonly share: number };

/** What a field allows its figures to be. */
export type Writing = {
  /** thousands may be parted: 1.420 is 1420 */
  readonly large: boolean;
  /** 3/4 is a fraction, 1 1/2 one and a half */
  readonly fractions: boolean;
  /** a number below one whose point was lost: 082 */
  readonly belowOne: boolean;
};

/** 7 1/2 whose blank was lost. */
const CLOSE_FRACTION = /^([1-9]\d?)(1|3)\/(2|4)$/;
const FRACTION = /^(?:(\d{1,2})[ -])?([1-7])\/(2|3|4|6|8|12|16)$/;

/**
 * Numbers in a row of figures: one, a list parted by strokes, or a range.
 * @returns ways to understand it, their shares at most 1 in sum; none where it is no number
 */
export function numbersIn(text: string, writing: Writing): Understood[] {
  const bare = text.replace(/^~|~$/g, '').trim();
  const fraction = FRACTION.exec(bare);
  if (fraction && writing.fractions) {
    const [, whole = '0', top, bottom] = fraction;
    if (Number(top) < Number(bottom)) return [{ numbers: [Number(whole) + Number(top) / Number(bottom)], share: 1 }];
  }
  const close = CLOSE_FRACTION.exec(bare);
  if (close && writing.fractions) {
    const [, whole, top, bottom] = close;
    return [{ numbers: [Number(whole) + Number(top) / Number(bottom)], share: 0.9 }];
  }
  const parts = bare.split(/(?<=\d) ?[/+-] ?\+?/);
  const each = parts.map((part) => one(part.replace(/^\+/, ''), writing));
  if (each.some((ways) => ways.length === 0)) return [];
  // a list is written in one manner throughout
  const ways = Math.min(...each.map((e) => e.length));
  return Array.from({ length: ways }, (_, i) => ({
    numbers: each.map((e) => e[i]!.number),
    share: Math.min(...each.map((e) => e[i]!.share)),
  }));
}

function one(text: string, { large, belowOne }: Writing): { number: number; share: number }[] {
  if (/^-?[1-9]\d{0,2}(?:[., ]\d{3})+$/.test(text)) {
    const thousands = Number(text.replace(/[., ]/g, ''));
    const isOnce = (text.match(/[., ]/g) ?? []).length === 1;
    const decimal = Number(text.replace(/[, ]/, '.'));
    if (!isOnce || text.includes(' ')) return large ? [{ number: thousands, share: 1 }] : [];
    return large
      ? [
          { number: thousands, share: 0.9 },
          { number: decimal, share: 0.1 },
        ]
      : [{ number: decimal, share: 1 }];
  }
  if (/^0\d{1,2}$/.test(text) && belowOne) return [{ number: Number(`0.${text.slice(1)}`), share: 0.5 }];
  if (/^-?\d+$/.test(text)) return /^-?0\d/.test(text) ? [] : [{ number: Number(text), share: 1 }];
  if (/^-?\d*[.,]\d+$/.test(text) && !/^0\d/.test(text)) return [{ number: Number(text.replace(',', '.')), share: 1 }];
  return [];
}
