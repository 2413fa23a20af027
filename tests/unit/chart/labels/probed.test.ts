import { expect, test } from 'vitest';
import { probed } from '../../../../src/chart/labels/read-scales.ts';
import type { TickGroup } from '../../../../src/chart/labels/tick-groups.ts';

const row = (side: TickGroup['side'], distance: number, lengths: readonly number[]): TickGroup => ({
  side,
  isInside: false,
  distance,
  words: lengths.map((length, i) => ({
    run: 'level',
    pieces: [],
    size: 20,
    x0: 100 * i,
    x1: 100 * i + length,
    y0: 0,
    y1: 20,
  })),
});

test('a line of text beside the numbers takes no more than its share of what is looked at to tell which way is up', () => {
  const text = row('top', 6, [140, 120, 130, 110, 140, 125, 135, 140]);
  const numbers = [row('left', 0.6, [12, 40, 40, 40, 55]), row('bottom', 0.7, [12, 45, 55, 55])];
  const some = probed([text, ...numbers]);
  for (const { words } of numbers) expect(words.filter((w) => some.includes(w))).toHaveLength(4);
  expect(text.words.filter((w) => some.includes(w))).toHaveLength(4);
  // a lone nought reads the same upside down: the longer words are taken
  expect(some).not.toContain(numbers[0]!.words[0]);
});
