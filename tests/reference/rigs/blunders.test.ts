import { describe, expect, it } from 'vitest';
import { heldAtLeast, heldAtMost } from './by-chance.ts';
import { tried, type Trial } from './caught.ts';
import { BLUNDER_KINDS } from './seeded-blunders.ts';
import type { World } from './worlds.ts';

/**
 * Blunders made on purpose in invented tests of centrifugal wheels, of the program's own making and of a handbook's: named with a
 * fitting code at their place where they move the answer, and clean tests left in peace. The long form, by kind and world, is `measure-blunders.ts`.
 */
const FINDS = 40;
const TAP_FINDS = 26;
const kindsOf = (i: number) => [0, 4].map((d) => BLUNDER_KINDS[(i + d) % BLUNDER_KINDS.length]!);
const trials = (world: World): Trial[] =>
  Array.from({ length: FINDS }, (_, i) => tried(1, 1_500_000 + i, kindsOf(i), world)).flatMap((t) => t ?? []);
const tapTrials = (world: World): Trial[] =>
  Array.from({ length: TAP_FINDS }, (_, i) =>
    tried(1, 1_600_000 + i, ['tap'], world, { methods: ['orifice-cap'] }),
  ).flatMap((t) => t ?? []);
const moving = (all: readonly Trial[]) => all.flatMap((t) => t.catches.filter((c) => c.moved));
const missed = (all: readonly Trial[]) =>
  moving(all).flatMap((c) => (c.named ? [] : [`${c.kind}: ${c.said.map((s) => `${s.code} ${s.path}`).join(', ')}`]));

describe('blunders in home-made readings', () => {
  const all = [...trials('plain'), ...trials('handbook')];
  const taps = [...tapTrials('plain'), ...tapTrials('handbook')];

  it('are named at their place nine times in ten where they move the answer', () => {
    expect(moving(all).length).toBeGreaterThan(60);
    const n = moving(all).length;
    expect(heldAtLeast(n - missed(all).length, n, 0.9), missed(all).join('\n')).toBe(true);
  });

  it('a tap at the other end is named nineteen times in twenty', () => {
    expect(moving(taps).length).toBeGreaterThan(30);
    const n = moving(taps).length;
    expect(heldAtLeast(n - missed(taps).length, n, 0.95), missed(taps).join('\n')).toBe(true);
  });

  it('are not seen where there are none', () => {
    const clean = [...all, ...taps];
    const alarms = clean.filter((t) => t.falseAlarm.length > 0);
    const told = alarms.map((t) => `${t.family}: ${t.falseAlarm.join()}`).join('\n');
    expect(heldAtMost(alarms.length, clean.length, 0.02), told).toBe(true);
  });
});
