import { describe, expect, it } from 'vitest';
import { heldAtLeast, heldAtMost } from './by-chance.ts';
import { idealBands } from './ideal-observer.ts';
import { judged, QUANTITIES, trueValue, type Judged, type Quantity } from './judged.ts';
import { randomFrom } from './random.ts';
import { holds, median, relativeWidth } from './tally.ts';
import { wishesIn } from './worlds.ts';

/**
 * Whether the stated bands hold on invented finds whose truth is known. The long form, by group, is `measure.ts`.
 */
const FINDS = 150;

/** The first machine alone of each find: one case a find, so that cases are independent. */
const firstCases = (from: number, wishes = {}): Judged[] =>
  Array.from({ length: FINDS }, (_, i) => judged(1, from + i, wishes)).flatMap((cases) => cases.slice(0, 1));

const narrowed = (j: Judged): Judged => ({
  ...j,
  band: Object.fromEntries(
    QUANTITIES.map((q) => [q, j.band[q].map((end) => j.best[q] + 0.5 * (end - j.best[q]))]),
  ) as unknown as Judged['band'],
});

describe('the 95 % band at the operating point', () => {
  const cases = firstCases(500_000);
  const held = (q: Quantity, of: readonly Judged[] = cases) => of.filter((j) => holds(j, q)).length;

  it.each(['flow', 'pressure'] as const)('holds the true %s in 90 to 99 of 100 finds', (q) => {
    expect(cases.length).toBeGreaterThan(0.9 * FINDS);
    expect(heldAtLeast(held(q), cases.length, 0.9), `${held(q)} of ${cases.length}`).toBe(true);
    expect(heldAtMost(held(q), cases.length, 0.99), `${held(q)} of ${cases.length}`).toBe(true);
  });

  it('holds the true shaft power in at least 90 of 100 finds', () => {
    expect(heldAtLeast(held('power'), cases.length, 0.9), `${held('power')} of ${cases.length}`).toBe(true);
  });

  it('would be caught being half as wide', () => {
    const half = cases.map(narrowed);
    for (const q of QUANTITIES) expect(heldAtLeast(held(q, half), half.length, 0.9)).toBe(false);
  });

  it('is at most 15 % wide in flow in the middle find', () => {
    expect(median(cases.map((j) => relativeWidth(j, 'flow')))).toBeLessThan(0.15);
  });

  it('is at most 1.3 times as wide as that of somebody who knows every error’s size and every family’s level', () => {
    for (const q of ['flow', 'pressure'] as const) {
      const ratios = cases.slice(0, 60).flatMap((j) => {
        const ideal = idealBands(j.find).get(j.plan)?.[q];
        return ideal ? [(j.band[q][1] - j.band[q][0]) / (ideal[1] - ideal[0])] : [];
      });
      expect(ratios.length).toBeGreaterThan(50);
      expect(median(ratios)).toBeLessThan(1.3);
    }
  });
});

describe.each(['handbook', 'other-motors'] as const)('where wheels and motors follow other rules: %s', (world) => {
  const cases = Array.from({ length: 80 }, (_, i) =>
    judged(1, 700_000 + i, wishesIn(world, randomFrom(2, 700_000 + i))),
  ).flatMap((all) => all.slice(0, 1));

  it('the bands still hold, and are no wider', () => {
    expect(cases.length).toBeGreaterThan(65);
    for (const q of QUANTITIES) {
      const held = cases.filter((j) => holds(j, q)).length;
      expect(heldAtLeast(held, cases.length, 0.9), `${q}: ${held} of ${cases.length}`).toBe(true);
    }
    expect(median(cases.map((j) => relativeWidth(j, 'flow')))).toBeLessThan(0.15);
  });
});

describe('a wheel seen at the stall', () => {
  const cases = firstCases(600_000, { mix: 'shut-off' });

  it('gets a rough curve from shut-off pressure, one current and its sizes, and the band holds', () => {
    expect(cases.length).toBeGreaterThan(0.9 * FINDS);
    for (const q of QUANTITIES) {
      const held = cases.filter((j) => holds(j, q)).length;
      expect(heldAtLeast(held, cases.length, 0.9), `${q}: ${held} of ${cases.length}`).toBe(true);
    }
  });

  it('knows more of it than of a wheel nobody turned', () => {
    const unturned = firstCases(600_000, { mix: 'wheel' });
    const width = (of: readonly Judged[]) => median(of.map((j) => relativeWidth(j, 'pressure')));
    expect(width(cases)).toBeLessThan(width(unturned));
    for (const j of unturned) expect(j.band.flow[0]).toBeLessThan(j.best.flow);
    const labelled = unturned.filter((j) => j.reasons.includes('outside-evidence')).length;
    expect(labelled).toBeGreaterThan(0.95 * unturned.length);
    const centred = unturned.filter((j) => Math.abs(Math.log(trueValue(j.truth).flow / j.best.flow)) < 1.1).length;
    expect(centred).toBeGreaterThan(0.9 * unturned.length);
  });
});
