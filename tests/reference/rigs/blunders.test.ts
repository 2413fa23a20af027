import { describe, expect, it } from 'vitest';
import { heldAtLeast, heldAtMost } from './by-chance.ts';
import { tried, type Trial } from './caught.ts';
import { BLUNDER_KINDS } from './seeded-blunders.ts';

/**
 * Blunders made on purpose in invented tests of centrifugal wheels: named at their place where they move the answer, and clean
 * tests left in peace. The long form, by kind and world, is `measure-blunders.ts`.
 */
const FINDS = 60;
const trials = (): Trial[] =>
  Array.from({ length: FINDS }, (_, i) =>
    tried(1, 1_500_000 + i, BLUNDER_KINDS[i % BLUNDER_KINDS.length]!, 'plain'),
  ).flatMap((t) => t ?? []);

describe('blunders in home-made readings', () => {
  const all = trials();
  const moved = all.flatMap((t) => (t.catch?.moved ? [t.catch] : []));
  const named = moved.filter((c) => c.named).length;

  it('are named at their place nine times in ten where they move the answer', () => {
    expect(moved.length).toBeGreaterThan(20);
    expect(heldAtLeast(named, moved.length, 0.9), `${named} of ${moved.length}`).toBe(true);
  });

  it('would be missed too often without the words for one leg and the wrong tap', () => {
    const others = moved.filter((c) => c.named && !c.codes.some((code) => /one-leg|tap/.test(code))).length;
    expect(heldAtLeast(others, moved.length, 0.9)).toBe(false);
  });

  it('are not seen where there are none', () => {
    const alarms = all.filter((t) => t.falseAlarm.length > 0);
    expect(heldAtMost(alarms.length, all.length, 0.02), alarms.map((t) => t.falseAlarm.join()).join(' ')).toBe(true);
  });
});
