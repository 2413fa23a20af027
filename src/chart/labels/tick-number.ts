/** What a tick label may say: the likeliest first. */
export type TickNumber = {
  readonly value: number;
  /** 0..1 among the label's readings */
  readonly likelihood: number;
  /** true where a mark had to be put in that was not read */
  readonly isRepaired: boolean;
  /** true where a decimal mark was read: marks get lost, hardly any is read that is not there */
  readonly hasPoint?: boolean;
  /** of noughts without a mark ("00", "000"): how many of them stand behind the mark that was lost */
  readonly noughtsBehind?: number;
};

const LOOKALIKES: readonly [RegExp, string][] = [
  [/[–—−‒‐]/g, '-'],
  [/[’‘`´′]/g, "'"],
  [/[٬]/g, ','],
  [/[Oo]/g, '0'],
  [/[lI|]/g, '1'],
  [/×/g, 'x'],
];

/**
 * Every value a label can stand for. A comma or point before three digits may set off thousands or decimals: both are
 * answered, and the other labels of the scale decide. A leading nought without a mark has lost its point.
 * @param text as read; @param after how many digits stand behind a small mark at the base line, where one was seen
 * @returns an empty list where it is no number
 */
export function tickNumbers(text: string, after?: number): TickNumber[] {
  const read = numbersIn(text, after);
  if (read.length || !/\p{L}|[$?/£€]/u.test(text)) return read;
  // handwritten figures come out as the letters they look like
  const figures = [...text.trim()].map((c) => HANDWRITTEN[c] ?? c).join('');
  return numbersIn(figures, after).map((n) => ({ ...n, likelihood: 0.6 * n.likelihood }));
}

const HANDWRITTEN: Readonly<Record<string, string>> = {
  y: '4',
  Y: '4',
  $: '4',
  A: '4',
  G: '6',
  b: '6',
  g: '9',
  q: '9',
  S: '5',
  s: '5',
  B: '8',
  Z: '2',
  z: '2',
  T: '7',
  '?': '7',
  f: '8',
  t: '1',
  i: '1',
  '/': '1',
  o: '0',
  O: '0',
  D: '0',
  Q: '0',
  a: '0',
  c: '0',
  C: '0',
  u: '4',
  L: '1',
  J: '1',
  e: '0',
};

function numbersIn(text: string, after: number | undefined): TickNumber[] {
  let plain = text.trim();
  for (const [from, to] of LOOKALIKES) plain = plain.replace(from, to);
  plain = plain
    .replace(/%$/, '')
    .replace(/\s*([.,'])\s*/g, '$1')
    .trim();
  const power =
    /^(-?[\d.,]*)\s*[x*]?\s*10\^(-?\d)$/.exec(plain) ?? /^(-?\d[\d.,]*)\s*[eE]\s*([+-]?\d{1,2})$/.exec(plain);
  if (power) {
    const head = power[1] === '' || power[1] === '-' ? [sure(power[1] === '-' ? -1 : 1)] : tickNumbers(power[1]!);
    return head.map((n) => ({ ...n, value: n.value * 10 ** Number(power[2]) }));
  }
  const [, sign, rest] = /^(-?)\s*(.*)$/.exec(plain)!;
  const body = rest!.replace(/^[.,'](?=\d{4,})/, '').replace(/(\d)[,'.-]+$/, '$1');
  const found = unsigned(body, after);
  return sign ? found.map((n) => ({ ...n, value: -n.value })) : found;
}

const sure = (value: number): TickNumber => ({ value, likelihood: 1, isRepaired: false });

function unsigned(text: string, after: number | undefined): TickNumber[] {
  if (!/^[\d.,' ]+$/.test(text) || !/\d/.test(text)) return [];
  if (/^\d{1,3}([ ']\d{3})+$/.test(text)) return [sure(Number(text.replace(/[ ']/g, '')))];
  const joined = text.replace(/ /g, '');
  const seen = joined.match(/[.,']/g) ?? [];
  if (!seen.length) return withoutMark(joined, text.includes(' '), after);
  if (seen.length === 1) return withOneMark(joined, seen[0]!);
  const last = Math.max(joined.lastIndexOf('.'), joined.lastIndexOf(','));
  const grouped = /^\d{1,3}([.,'])\d{3}(\1\d{3})*$/.test(joined);
  if (grouped) return [sure(Number(joined.replace(/[.,']/g, '')))];
  const mixed = /^\d{1,3}([.,'])\d{3}(?!\1)[.,]\d+$/.test(joined);
  return mixed ? [sure(Number(`${joined.slice(0, last).replace(/\D/g, '')}.${joined.slice(last + 1)}`))] : [];
}

function withOneMark(text: string, mark: string): TickNumber[] {
  const [before = '', after = ''] = text.split(mark);
  const whole = Number(before + after);
  if (mark === "'") return after.length === 3 && before ? [sure(whole)] : [];
  const decimal = Number(`${before || '0'}.${after || '0'}`);
  if (after.length !== 3 || before === '' || before.startsWith('0') || before.length > 3)
    return [{ ...sure(decimal), hasPoint: after !== '' && before !== '' }];
  const thousands = mark === ',' ? 0.9 : 0.6;
  return [
    { value: whole, likelihood: thousands, isRepaired: false },
    { value: decimal, likelihood: 1 - thousands, isRepaired: false },
  ];
}

function withoutMark(digits: string, hadBlank: boolean, after: number | undefined): TickNumber[] {
  const whole = Number(digits);
  const repaired = (likelihood: number, behind: number): TickNumber => ({
    value: whole / 10 ** behind,
    likelihood,
    isRepaired: true,
  });
  if (/^00+$/.test(digits)) return [{ ...repaired(0.9, digits.length - 1), noughtsBehind: digits.length - 1 }];
  if (/^0\d/.test(digits)) return [repaired(0.9, digits.length - 1)];
  // three digits behind a mark may as well be thousands
  if (after !== undefined && after < digits.length)
    return [
      repaired(after === 3 ? 0.4 : 0.8, after),
      { value: whole, likelihood: after === 3 ? 0.6 : 0.2, isRepaired: false },
    ];
  const out: TickNumber[] = [{ value: whole, likelihood: hadBlank ? 0.6 : 1, isRepaired: false }];
  // a blank that sets off no thousands may be a lost point
  if (hadBlank) for (let k = 1; k < Math.min(4, digits.length); k++) out.push(repaired(0.3, k));
  return out;
}
