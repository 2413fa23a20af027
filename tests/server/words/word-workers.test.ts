import sharp from 'sharp';
import { afterAll, describe, expect, test } from 'vitest';
import type { Engine } from '../../../server/words/engine.ts';
import { startEngine } from '../../../server/words/engine.ts';
import { greyImage } from '../../../server/words/grey-image.ts';
import { createWordWorkers } from '../../../server/words/word-workers.ts';
import type { WordCrop } from '../../../src/words/word-reader.ts';

/** A line of text as it is handed to the reader: black on white, 40 px high, a border around it. */
async function lineOf(text: string): Promise<WordCrop> {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${80 + 34 * text.length}" height="80"><rect width="100%" height="100%" fill="#fff"/><text x="30" y="58" font-size="52" font-family="sans-serif">${text}</text></svg>`;
  const { data, info } = await sharp(Buffer.from(svg)).greyscale().raw().toBuffer({ resolveWithObject: true });
  return { grey: new Uint8Array(data), width: info.width, height: info.height };
}

const words = createWordWorkers();
afterAll(() => words.close());

describe('reading words', () => {
  test('numbers, each at its place in the order', async () => {
    const said = ['1200', '0.75', '12 000', '1,500', '0', '-10'];
    const reads = await words.read(await Promise.all(said.map(lineOf)), 'number');
    expect(reads.map((r) => r.text)).toEqual(said);
    expect(Math.min(...reads.map((r) => r.confidence))).toBeGreaterThan(0.7);
  });

  test('text with its letters from left to right inside the crop', async () => {
    const crop = await lineOf('Static pressure');
    const [read] = await words.read([crop], 'text');
    expect(read!.text).toBe('Static pressure');
    expect(read!.glyphs.map((g) => g.text).join('')).toBe('Staticpressure');
    const starts = read!.glyphs.map((g) => g.x0);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
    expect(Math.max(...read!.glyphs.map((g) => g.x1))).toBeLessThanOrEqual(crop.width);
  });

  test('what was asked for last time does not stick: letters after digits, digits after letters', async () => {
    const crops = await Promise.all(['Power', 'Flow'].map(lineOf));
    const before = await words.read(crops, 'text');
    await words.read(await Promise.all(['100', '200', '300'].map(lineOf)), 'number');
    expect(await words.read(crops, 'text')).toEqual(before);
    expect(before.map((r) => r.text)).toEqual(['Power', 'Flow']);
    const [digits] = await words.read([await lineOf('400')], 'number');
    expect(digits!.text).toBe('400');
  });

  test('an empty crop is an empty text, and the next is read as before', async () => {
    const blank = { grey: new Uint8Array(60 * 60).fill(255), width: 60, height: 60 };
    const sliver = { grey: new Uint8Array(2 * 36).fill(0), width: 2, height: 36 };
    const reads = await words.read([blank, sliver, await lineOf('250')], 'number');
    expect(reads.map((r) => r.text)).toEqual(['', '', '250']);
  });

  test('no crops are no reads', async () => expect(await words.read([], 'text')).toEqual([]));

  test('a crop whose bytes do not fill it is a mistake of the caller', () => {
    expect(() => greyImage({ grey: new Uint8Array(5), width: 2, height: 3 })).toThrow(
      new RangeError('crop: expected 2 x 3 bytes, received 5'),
    );
  });
});

describe('engines that fail', () => {
  /** A real engine that never answers about crops one pixel wide. */
  async function hangsOnSlivers(): Promise<Engine & { ended: boolean }> {
    const engine = await startEngine();
    const it = {
      ended: false,
      read: (crop: WordCrop, want: Parameters<Engine['read']>[1]) =>
        crop.width === 1 ? new Promise<never>(() => undefined) : engine.read(crop, want),
      end() {
        it.ended = true;
        engine.end();
      },
    };
    return it;
  }

  test('one that hangs is ended and replaced, its crop unread, all others read', async () => {
    const started: { ended: boolean }[] = [];
    const pool = createWordWorkers(
      async () => {
        const engine = await hangsOnSlivers();
        started.push(engine);
        return engine;
      },
      1,
      8000,
    );
    const sliver = { grey: new Uint8Array(20), width: 1, height: 20 };
    const reads = await pool.read([await lineOf('10'), sliver, await lineOf('20')], 'number');
    expect(reads.map((r) => r.text)).toEqual(['10', '', '20']);
    expect(started.map((e) => e.ended)).toEqual([true, false]);
    pool.close();
  });

  test('one that can not start fails the call and is tried anew by the next', async () => {
    let tries = 0;
    const pool = createWordWorkers(async () => {
      if (++tries === 1) throw new Error('no language data');
      return startEngine();
    }, 1);
    await expect(pool.read([await lineOf('10')], 'number')).rejects.toThrow('no language data');
    expect((await pool.read([await lineOf('10')], 'number'))[0]!.text).toBe('10');
    pool.close();
  });
});
