import { expect, test } from 'vitest';
import { inTime } from '../../server/readers/in-time.ts';

const CROP = { grey: new Uint8Array(4), width: 2, height: 2 };

test('crops asked for too late come back unread, kind by kind', async () => {
  let clock = 1000;
  const read = { text: '17', confidence: 0.9, glyphs: [] };
  const words = inTime(
    async (crops) => crops.map(() => read),
    { text: 500, glyph: 500, number: 200 },
    () => clock,
  );
  expect(await words([CROP], 'number')).toEqual([read]);
  clock += 300;
  expect((await words([CROP, CROP], 'number')).map(({ text }) => text)).toEqual(['', '']);
  expect(await words([CROP], 'text')).toEqual([read]);
  clock += 300;
  expect((await words([CROP], 'text'))[0]!.confidence).toBe(0);
});
