import type { Spelling } from '../cells/read-number.ts';
import { foreseen, type Known } from './smooth.ts';

/** What a cell says after the whole column was heard: the likeliest spelling, and how likely it is. */
export type Weighed = { readonly text: string; readonly value: number; readonly chance: number };

/** A point that should be there by the column's decimals, and was not seen. */
const POINT_UNSEEN = Math.log(0.04);
/** Other decimals than the rest of the column, and a plain number among decimals. */
const ODD_DECIMALS = Math.log(0.03);
const WHOLE_AMONG_DECIMALS = Math.log(0.08);
/** A reading may stand off its neighbours for reasons of its own. */
const OUTLIER = 0.03;
const NOT_NEXT = Math.log(0.004);
/** Something else than any spelling may stand there: so likely beforehand, beside a spelling that fits. */
const NONE = 0.004;
const ROUNDS = 3;

/**
 * Weighs each cell's spellings by what its column is: common decimals, a count, a smooth course.
 * @param cells spellings of each row, best first; empty where nothing stands
 * @param isCount whether the column numbers its rows
 */
export function weighColumn(cells: readonly (readonly Spelling[])[], isCount: boolean): (Weighed | null)[] {
  const decimals = usualDecimals(cells);
  const all = cells.map((cell) => cell.flatMap((s) => withDecimals(s, decimals)));
  let weighed = all.map((cell) => strongest(cell.map((s) => ({ ...s, prior: 0 }))));
  if (isCount) {
    const first = firstOfCount(weighed);
    return all.map((cell, row) =>
      strongest(cell.map((s) => ({ ...s, prior: Number(s.text) === first + row ? 0 : NOT_NEXT }))),
    );
  }
  for (let round = 0; round < ROUNDS; round++) {
    const known = weighed.flatMap((w, row): Known[] => (w ? [{ row, value: w.value, weight: w.chance }] : []));
    weighed = all.map((cell, row) => {
      const guess = foreseen(row, known);
      if (!guess) return strongest(cell.map((s) => ({ ...s, prior: 0 })));
      return strongest(
        cell.map((s) => {
          const off = (Number(s.text) - guess.value) / guess.spread;
          return { ...s, prior: Math.log((1 - OUTLIER) / (1 + off * off) + OUTLIER * 0.1) };
        }),
      );
    });
  }
  return weighed;
}

type Option = Spelling & { readonly prior: number };

function strongest(options: readonly Option[]): Weighed | null {
  if (!options.length) return null;
  const total = options.map((o) => o.logLikelihood + o.prior);
  const most = Math.max(...total);
  const shares = new Map<number, number>();
  options.forEach((o, i) => {
    const value = Number(o.text);
    shares.set(value, (shares.get(value) ?? 0) + Math.exp(total[i]! - most));
  });
  const best = options[total.indexOf(most)]!;
  const clearest = Math.max(...options.map((o) => o.logLikelihood));
  const sum = [...shares.values()].reduce((a, b) => a + b, 0) + NONE * Math.exp(clearest - most);
  return { text: best.text, value: Number(best.text), chance: shares.get(Number(best.text))! / sum };
}

const decimalsOf = (text: string): number => (text.includes('.') ? text.length - 1 - text.indexOf('.') : 0);

/** The decimals most cells have; a lone nought counts for nothing. */
function usualDecimals(cells: readonly (readonly Spelling[])[]): number {
  const votes = new Map<number, number>();
  for (const [best] of cells) {
    if (!best || Number(best.text) === 0) continue;
    const d = decimalsOf(best.text);
    votes.set(d, (votes.get(d) ?? 0) + 1);
  }
  return [...votes].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}

/** A spelling as the column's decimals make it: as it is, and with the point it may have lost. */
function withDecimals(s: Spelling, decimals: number): Spelling[] {
  const own = decimalsOf(s.text);
  if (own === decimals) return [s];
  if (own === 0) {
    if (Number(s.text) === 0) return [s];
    const plain = { ...s, logLikelihood: s.logLikelihood + WHOLE_AMONG_DECIMALS };
    if (s.text.length <= decimals) return [plain];
    const at = s.text.length - decimals;
    return [
      plain,
      { text: `${s.text.slice(0, at)}.${s.text.slice(at)}`, logLikelihood: s.logLikelihood + POINT_UNSEEN },
    ];
  }
  return [{ ...s, logLikelihood: s.logLikelihood + ODD_DECIMALS }];
}

/** What the first row's number must be for most rows to count on from it. */
function firstOfCount(weighed: readonly (Weighed | null)[]): number {
  const votes = new Map<number, number>();
  weighed.forEach((w, row) => {
    if (w && Number.isInteger(w.value)) votes.set(w.value - row, (votes.get(w.value - row) ?? 0) + w.chance);
  });
  return [...votes].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 1;
}
