import { describe, expect, it } from 'vitest';
import type { BlowerResult, Verdict } from '../../../src/assessment.ts';
import { ranked } from '../../../src/operate/judge-blower.ts';

const blower = (blowerId: string, verdict: Verdict, probability: number) =>
  ({ blowerId, verdict, probability }) as Omit<BlowerResult, 'rank'>;

function ranks(of: Omit<BlowerResult, 'rank'>[], prices: Record<string, number> = {}): Record<string, number> {
  return Object.fromEntries(ranked(of, (id) => prices[id] ?? null).map((r) => [r.blowerId, r.rank]));
}

describe('the ranking of candidates', () => {
  it('goes by verdict first, then by chance, in whatever order they come', () => {
    const of = [
      blower('a', 'no', 0.01),
      blower('b', 'yes', 0.96),
      blower('c', 'unsure', 0.9),
      blower('d', 'unsure', 0.4),
    ];
    expect(ranks(of)).toEqual({ b: 1, c: 2, d: 3, a: 4 });
    expect(ranks([...of].reverse())).toEqual(ranks(of));
  });

  it('leaves it to the price where chances are nearer than the draws can tell apart', () => {
    const of = [blower('dear', 'yes', 0.975), blower('cheap', 'yes', 0.97)];
    expect(ranks(of, { dear: 9000, cheap: 4000 })).toEqual({ cheap: 1, dear: 2 });
    expect(ranks([blower('dear', 'yes', 0.99), blower('cheap', 'yes', 0.96)], { dear: 9000, cheap: 4000 })).toEqual({
      dear: 1,
      cheap: 2,
    });
  });

  it('says a tie where neither chance nor price tells them apart, and counts on after it', () => {
    const of = [blower('a', 'yes', 0.97), blower('b', 'yes', 0.972), blower('c', 'no', 0)];
    expect(ranks(of)).toEqual({ a: 1, b: 1, c: 3 });
    expect(ranks(of, { a: 5000, b: 5000 })).toEqual({ a: 1, b: 1, c: 3 });
    // a price nobody knows comes after one that is known
    expect(ranks(of, { a: 5000 })).toEqual({ a: 1, b: 2, c: 3 });
  });

  it('is no circle where each is near the next but the ends are apart', () => {
    const of = [blower('a', 'unsure', 0.5), blower('b', 'unsure', 0.508), blower('c', 'unsure', 0.516)];
    const prices = { a: 1000, b: 2000, c: 3000 };
    expect(ranks(of, prices)).toEqual({ b: 1, c: 2, a: 3 });
    expect(ranks([...of].reverse(), prices)).toEqual(ranks(of, prices));
  });
});
