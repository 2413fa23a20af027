import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readPlate } from '../../src/plate/index.ts';
import { takenFor } from '../../src/plate/tables/confusions.ts';
import { printItems, randomItems, type Chance, type PlateItem } from './random-plate.ts';

/** Numbers from a seed. Source: mulberry32 (public domain, T. Ettinger). */
function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return { next, pick: (list) => list[Math.floor(next() * list.length)]! };
}

const isRight = (value: unknown, { truth }: PlateItem) =>
  JSON.stringify([value].flat()) === JSON.stringify([truth].flat());

test('a plate of values that go together reads back as it was printed', () => {
  const seeds = Array.from({ length: 40 }, (_, seed) => seed);
  const verdicts = seeds.flatMap((seed) => {
    const chance = chanceFrom(seed);
    const items = randomItems(chance);
    const { fields } = readPlate(printItems(items, chance));
    return items.map((item) => isRight(fields[item.field as keyof typeof fields]?.value, item));
  });
  expect(verdicts.filter(Boolean).length / verdicts.length).toBeGreaterThanOrEqual(0.98);
});

test('a figure read as another is put right, asked about, or left open', () => {
  const DIGITS = [...'0123456789'];
  let silent = 0;
  let all = 0;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
      const chance = chanceFrom(seed);
      const items = randomItems(chance);
      const slip = (character: string) => {
        if (!/\d/.test(character) || chance.next() > 0.04) return null;
        const alike = DIGITS.filter((other) => other !== character && takenFor(other, character) > 0);
        const other = alike.length > 0 ? chance.pick(alike) : character;
        return [
          { text: other, share: 0.6 },
          { text: character, share: 0.4 },
        ];
      };
      const { fields } = readPlate(printItems(items, chance, slip));
      for (const item of items) {
        const field = fields[item.field as keyof typeof fields];
        all++;
        if (field && !field.needsReview && !isRight(field.value, item)) silent++;
        if (field) expect(field.confidence).toBeGreaterThanOrEqual(0);
        if (field) expect(field.confidence).toBeLessThanOrEqual(1);
      }
    }),
    { numRuns: 40, seed: 7 },
  );
  expect(silent / all).toBeLessThanOrEqual(0.01);
});
