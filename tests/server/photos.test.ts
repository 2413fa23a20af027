import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { form, json, startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

/** 60 wide, 40 high, red left half and white right half. */
const picture = () =>
  sharp({ create: { width: 60, height: 40, channels: 3, background: 'white' } }).composite([
    { input: { create: { width: 30, height: 40, channels: 3, background: 'red' } }, left: 0, top: 0 },
  ]);

/** Three frames, one below the other, as the picture library wants them. */
const moving = () =>
  sharp(Buffer.from(Array.from({ length: 40 * 90 * 3 }, (_, i) => (i * 7) % 251)), {
    raw: { width: 40, height: 90, channels: 3, pageHeight: 30 },
  });

/** A PNG whose animation chunk says that two frames follow. */
async function movingPng(): Promise<Buffer> {
  const still = await picture().png().toBuffer();
  const control = Buffer.alloc(20);
  control.writeUInt32BE(8, 0);
  control.write('acTL', 4, 'latin1');
  control.writeUInt32BE(2, 8);
  control.writeUInt32BE(crc32(control.subarray(4, 16)), 16);
  const header = 8 + 25;
  return Buffer.concat([still.subarray(0, header), control, still.subarray(header)]);
}

const upload = (bytes: Uint8Array) => bench.call('/api/photos', form('photo', bytes));
const stored = () => readdir(join(bench.folder, 'photos')).catch(() => []);

describe('a photo that is taken in', () => {
  test.each(['jpeg', 'png', 'webp', 'avif', 'gif'] as const)('%s', async (format) => {
    const answer = await upload(await picture().toFormat(format).toBuffer());
    expect(answer.status).toBe(201);
    const { photoId, ...size } = JSON.parse(answer.text);
    expect(size).toEqual({ width_px: 60, height_px: 40 });
    expect(photoId).toMatch(/^[\w-]{16}$/);
    expect(answer.headers.location).toBe(`/api/photos/${photoId}`);
    const shown = await bench.call(`/api/photos/${photoId}`);
    expect([shown.status, shown.headers['content-type']]).toEqual([200, 'image/jpeg']);
    expect(await sharp(shown.bytes).metadata()).toMatchObject({ format: 'jpeg', width: 60, height: 40 });
  });

  test('is turned the way it was taken, and the tag is gone', async () => {
    // orientation 6: the camera was held on its right side; the picture is shown turned a quarter clockwise
    const answer = await upload(await picture().withMetadata({ orientation: 6 }).jpeg().toBuffer());
    const { photoId, width_px, height_px } = JSON.parse(answer.text);
    expect([width_px, height_px]).toEqual([40, 60]);
    const { bytes } = await bench.call(`/api/photos/${photoId}`);
    const { orientation, width, height } = await sharp(bytes).metadata();
    expect([orientation, width, height]).toEqual([undefined, 40, 60]);
    const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
    const greenAt = (x: number, y: number) => data[(y * info.width + x) * info.channels + 1]!;
    // what was left is now above
    expect(greenAt(20, 5)).toBeLessThan(60);
    expect(greenAt(20, 55)).toBeGreaterThan(200);
  });

  test('is kept as it came beside the upright one', async () => {
    const bytes = await picture().png().toBuffer();
    const { photoId } = JSON.parse((await upload(bytes)).text);
    const folder = join(bench.folder, 'photos', photoId);
    expect((await readdir(folder)).toSorted()).toEqual(['original.png', 'size.json', 'upright.jpg']);
    expect(await readFile(join(folder, 'original.png'))).toEqual(bytes);
  });

  test('can be asked for narrower, never wider', async () => {
    const { photoId } = JSON.parse((await upload(await picture().jpeg().toBuffer())).text);
    const width = async (query: string) =>
      (await sharp((await bench.call(`/api/photos/${photoId}${query}`)).bytes).metadata()).width;
    expect([await width('?width=30'), await width('?width=4000')]).toEqual([30, 60]);
    for (const bad of ['0', '15', '5000', '-3', '1e3', 'wide', '']) {
      const answer = await bench.call(`/api/photos/${photoId}?width=${bad}`);
      expect(answer.status).toBe(400);
      expect(problemOf(answer).detail).toBe('width must be a whole number from 16 to 4096.');
    }
  });
});

describe('what is refused, with nothing kept', () => {
  const noPicture = 'This is no picture that can be read here; send a JPEG, PNG or WebP picture.';
  const torn =
    'This file cannot be read to its end as a picture; send it again, or another as a JPEG, PNG or WebP picture.';
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="60" height="40"><rect width="60" height="40"/></svg>';

  test.each([
    ['text', async () => Buffer.from('not a picture'), 415, noPicture],
    ['an empty file', async () => Buffer.alloc(0), 415, noPicture],
    ['an SVG, which could load other things', async () => Buffer.from(svg), 415, noPicture],
    ['a moving WebP', () => moving().webp().toBuffer(), 422, 'This picture moves; send one that stands still.'],
    ['a moving GIF', () => moving().gif().toBuffer(), 422, 'This picture moves; send one that stands still.'],
    ['a moving PNG', movingPng, 422, 'This picture moves; send one that stands still.'],
    ['a TIFF', () => picture().tiff().toBuffer(), 415, noPicture],
    ['a picture cut off half way', async () => halfOf(await noisy()), 422, torn],
    [
      'the first bytes of a picture and then noise',
      async () => Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), Buffer.alloc(500, 7)]),
      422,
      torn,
    ],
    [
      'one pixel',
      () =>
        sharp({ create: { width: 1, height: 1, channels: 3, background: 'red' } })
          .png()
          .toBuffer(),
      422,
      'The picture is too small to show anything.',
    ],
    [
      'a small file of too many pixels',
      () =>
        sharp({ create: { width: 10_000, height: 10_000, channels: 3, background: 'red' } })
          .png()
          .toBuffer(),
      422,
      'The picture has more than 80 megapixels; send a smaller one.',
    ],
    [
      'HEIC that cannot be decoded',
      async () => Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'),
      415,
      'This HEIC picture cannot be decoded here; send it as JPEG (on the phone: camera format “most compatible”).',
    ],
    [
      'more than 40 MB',
      async () => Buffer.alloc(40 * 1024 * 1024 + 1, 0xff),
      413,
      'The photo is larger than 40 MB; send a smaller one.',
    ],
  ] as const)('%s', async (_name, bytes, status, detail) => {
    const before = await stored();
    const answer = await upload(await bytes());
    expect(problemOf(answer).detail).toBe(detail);
    expect(answer.status).toBe(status);
    expect(await stored()).toEqual(before);
  });

  const halfOf = (bytes: Buffer) => bytes.subarray(0, bytes.length / 2);
  const noisy = () => {
    const pixels = Buffer.from(Array.from({ length: 300 * 200 * 3 }, (_, index) => (index * 7919) % 251));
    return sharp(pixels, { raw: { width: 300, height: 200, channels: 3 } })
      .jpeg()
      .toBuffer();
  };

  test('a picture that takes too long; the next one is decoded again', async () => {
    const hasty = await startBench({ photoTimeLimit_ms: 1 });
    const answer = await hasty.call('/api/photos', form('photo', await picture().jpeg().toBuffer()));
    expect(answer.status).toBe(422);
    expect(problemOf(answer).detail).toBe('This picture takes too long to decode; send it as a plain JPEG.');
    expect((await hasty.call('/api/photos', form('photo', await picture().jpeg().toBuffer()))).status).toBe(422);
    await hasty.stop();
  });

  test('a form without the field, with another field, with two files, cut off, or no form at all', async () => {
    const bytes = await picture().jpeg().toBuffer();
    const whole = form('photo', bytes);
    const edge = 'edge-of-the-form';
    const text = `--${edge}\r\nContent-Disposition: form-data; name="photo"\r\n\r\nhello\r\n--${edge}--\r\n`;
    const two = Buffer.concat([
      Buffer.from(whole.body!).subarray(0, -`--${edge}--\r\n`.length),
      Buffer.from(whole.body!),
    ]);
    for (const [call, status, detail] of [
      [{ ...whole, body: text }, 400, 'The upload holds no file in the field photo.'],
      [form('picture', bytes), 400, 'Send one photo, in the field called photo.'],
      [{ ...whole, body: two }, 400, 'Send one photo, in the field called photo.'],
      [
        { ...whole, body: Buffer.from(whole.body!).subarray(0, 200) },
        400,
        'The upload ends too early or is not multipart/form-data.',
      ],
      [
        { ...whole, headers: { 'Content-Type': 'multipart/form-data' } },
        400,
        'The upload ends too early or is not multipart/form-data.',
      ],
      [
        { ...whole, headers: { 'Content-Type': 'image/jpeg' } },
        415,
        'Send the photo as multipart/form-data, in the field photo.',
      ],
      [json('POST', {}), 415, 'Send the photo as multipart/form-data, in the field photo.'],
      [{ method: 'POST' }, 415, 'Send the photo as multipart/form-data, in the field photo.'],
    ] as const) {
      const answer = await bench.call('/api/photos', call);
      expect([answer.status, problemOf(answer).detail]).toEqual([status, detail]);
    }
  });

  test('a photo nobody sent, under any kind of id', async () => {
    for (const id of ['AAAAAAAAAAAAAAAA', 'x', '..%2f..%2fjobs', '__proto__', '.AAAAAAAAAAAAAAA']) {
      const shown = await bench.call(`/api/photos/${id}`);
      expect(shown.status).toBe(404);
      expect(problemOf(shown).detail).toBe('There is no such photo; take it or choose it again.');
      for (const what of ['chart', 'nameplate', 'readings-sheet']) {
        expect((await bench.call(`/api/photos/${id}/${what}`, json('POST', {}))).status).toBe(404);
      }
    }
  });

  test('other methods', async () => {
    expect((await bench.call('/api/photos')).headers.allow).toBe('POST');
    expect((await bench.call('/api/photos/AAAAAAAAAAAAAAAA', { method: 'DELETE' })).headers.allow).toBe('GET');
    expect((await bench.call('/api/photos/AAAAAAAAAAAAAAAA/chart')).headers.allow).toBe('POST');
  });
});
