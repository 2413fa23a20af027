import { expect, test } from 'vitest';
import { createMemory } from '../../../src/chart/memory.ts';

test('what was made is answered again, until so many others came after it', () => {
  const memory = createMemory(2);
  let made = 0;
  const ask = (key: string): number => memory(key, () => (made += 1));
  expect([ask('a'), ask('a'), ask('b'), ask('a')]).toEqual([1, 1, 2, 1]);
  expect(ask('c')).toBe(3);
  // b was asked for longest ago
  expect([ask('a'), ask('b')]).toEqual([1, 4]);
});

test('what ended in an error is made anew', async () => {
  const memory = createMemory(2);
  let made = 0;
  const ask = (): Promise<number> =>
    memory('a', async () => {
      made += 1;
      if (made === 1) throw new RangeError('once');
      return made;
    });
  await expect(ask()).rejects.toThrow('once');
  expect(await ask()).toBe(2);
});
