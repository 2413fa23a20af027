import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { createDigitReader, NO_DIGIT } from '../../../src/readings-sheet/digits/digit-network.ts';
import { DIGIT_WEIGHTS } from '../../../src/readings-sheet/digits/digit-weights.ts';
import type { InkPatch } from '../../../src/readings-sheet/digits/ink-patch.ts';

type Kept = { label: number; width: number; height: number; ink: string };
const file = new URL('../../../fixtures/digits/held-back.json', import.meta.url);
const held = JSON.parse(readFileSync(file, 'utf8')) as { people: Kept[]; faces: Kept[] };
const read = createDigitReader(DIGIT_WEIGHTS);

function patchOf({ width, height, ink }: Kept): InkPatch {
  const bytes = Buffer.from(ink, 'base64');
  const steps = Float32Array.from({ length: width * height }, (_, i) => (bytes[i >> 1]! >> (i % 2 ? 4 : 0)) & 15);
  return { width, height, ink: steps.map((v) => v / 15) };
}

const judged = (digits: readonly Kept[]) =>
  digits.map((kept) => {
    const shares = read(patchOf(kept));
    const best = shares.indexOf(Math.max(...shares));
    return { isRight: best === kept.label, share: shares[best]! };
  });
const share = (list: readonly boolean[]) => list.filter(Boolean).length / list.length;

describe('the digit reader, on digits it never saw', () => {
  test.each([
    ['of real people', held.people, 0.92],
    ['of other typefaces, worn', held.faces, 0.95],
  ])('%s', (_, digits, least) => {
    const all = judged(digits);
    expect(digits.length).toBeGreaterThan(250);
    expect(share(all.map(({ isRight }) => isRight))).toBeGreaterThan(least);
    // what it is sure of is right, and it claims about as much as it can
    const sure = all.filter((d) => d.share > 0.99);
    expect(sure.length).toBeGreaterThan(0.3 * all.length);
    expect(share(sure.map(({ isRight }) => isRight))).toBeGreaterThan(0.985);
    const claimed = all.reduce((sum, d) => sum + d.share, 0) / all.length;
    expect(Math.abs(claimed - share(all.map(({ isRight }) => isRight)))).toBeLessThan(0.05);
  });

  test('size, place and a faint pen change nothing', () => {
    const three = patchOf(held.faces.find(({ label }) => label === 3)!);
    const pale = { ...three, ink: three.ink.map((v) => 0.4 * v) };
    const [a, b] = [read(three), read(pale)];
    expect(Math.max(...a.map((v, i) => Math.abs(v - b[i]!)))).toBeLessThan(0.02);
  });

  test('bare paper and a bar across are no digits', () => {
    const bare = { width: 20, height: 20, ink: new Float32Array(400) };
    expect(read(bare)[NO_DIGIT]).toBe(1);
    const bar = {
      width: 40,
      height: 12,
      ink: Float32Array.from({ length: 480 }, (_, i) => (i >= 160 && i < 320 ? 1 : 0)),
    };
    expect(read(bar)[NO_DIGIT]).toBeGreaterThan(0.9);
  });

  test('weights that do not fit are a mistake', () => {
    expect(() => createDigitReader({ ...DIGIT_WEIGHTS, hidden: 3 })).toThrow(RangeError);
  });
});
