import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { mistakeIn } from '../../server/json-body.ts';
import { smallJob } from '../unit/job/small-job.ts';
import { json, startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

const calls = [
  ['PUT', '/api/jobs/body'],
  ['POST', '/api/assess'],
  ['POST', '/api/curve'],
] as const;

describe.each(calls)('%s %s', (method, path) => {
  test.each([
    ['{"a": 1,}', 'This is not JSON. The mistake is at line 1, column 9: "}".'],
    ['{\n  "a": 1\n  "b": 2\n}', 'This is not JSON. The mistake is at line 3, column 3: "\\"b\\": 2\\n}".'],
    ['hello', 'This is not JSON. The mistake is at line 1, column 1: "hello".'],
    ['{"a": NaN}', 'This is not JSON. The mistake is at line 1, column 7: "NaN}".'],
    ['{"a": [1, 2', 'This is not JSON. It ends too early.'],
    ['{"a": "b', 'This is not JSON. It ends too early.'],
    ['', 'The body is empty; send a JSON document.'],
    ['  \n', 'The body is empty; send a JSON document.'],
  ])('malformed: %j', async (text, detail) => {
    const answer = await bench.call(path, json(method, text));
    expect(answer.status).toBe(400);
    expect(problemOf(answer).detail).toBe(detail);
  });

  test('a document that is no object', async () => {
    for (const text of ['null', '[]', '3', '"job"', 'true']) {
      const answer = await bench.call(path, json(method, text));
      expect(answer.status).toBe(400);
      expect(problemOf(answer).errors[0]?.path).toBe('');
    }
  });

  test('another content type, or none', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x']) {
      const answer = await bench.call(path, { method, headers: { 'Content-Type': type }, body: '{}' });
      expect(answer.status).toBe(415);
      expect(problemOf(answer).detail).toBe('Send JSON, with the header Content-Type: application/json.');
    }
    expect((await bench.call(path, { method, body: '{}' })).status).toBe(415);
    const nothing = await bench.call(path, { method });
    expect(nothing.status).toBe(400);
    expect(problemOf(nothing).detail).toBe(
      'The call has no body; send a JSON document ({} where there is nothing to say).',
    );
  });

  test('another character set', async () => {
    const latin = await bench.call(path, {
      method,
      headers: { 'Content-Type': 'application/json; charset=latin1' },
      body: '{}',
    });
    expect(latin.status).toBe(415);
    expect(problemOf(latin).detail).toBe('Send the text in UTF-8, not latin1.');
    const broken = await bench.call(path, {
      method,
      headers: { 'Content-Type': 'application/json' },
      body: Buffer.from([0x22, 0xff, 0x22]),
    });
    expect(broken.status).toBe(400);
    expect(problemOf(broken).detail).toBe('The body is not text in UTF-8.');
  });

  test('more than 8 MB, packed or not', async () => {
    const tooMuch = `"${'x'.repeat(8 * 1024 * 1024)}"`;
    const plain = await bench.call(path, json(method, tooMuch));
    const packed = await bench.call(path, {
      method,
      headers: { 'Content-Type': 'application/json', 'Content-Encoding': 'gzip' },
      body: gzipSync(tooMuch),
    });
    for (const answer of [plain, packed]) {
      expect(answer.status).toBe(413);
      expect(problemOf(answer).detail).toBe('The document is larger than 8 MB.');
    }
  });

  test('__proto__ at any depth is refused by its place and reaches nothing', async () => {
    for (const text of ['{"__proto__": {"ok": true}}', '{"site": {"__proto__": {"ok": true}}}']) {
      const answer = await bench.call(path, json(method, text));
      expect(answer.status).toBe(400);
      expect(problemOf(answer).errors).toContainEqual({
        path: text.includes('site') ? '/site/__proto__' : '/__proto__',
        message: '__proto__ cannot be a name here; remove it.',
      });
    }
    expect(({} as { ok?: boolean }).ok).toBeUndefined();
  });

  test('nesting beyond any job, as deep as 8 MB allow', async () => {
    for (const depth of [101, 4_000_000]) {
      const answer = await bench.call(path, json(method, `${'['.repeat(depth)}${']'.repeat(depth)}`));
      expect(answer.status).toBe(400);
      expect(problemOf(answer).detail).toBe('The document is nested more than 100 deep.');
    }
    const brackets = await bench.call(path, json(method, JSON.stringify({ name: '[{"'.repeat(200) })));
    expect(problemOf(brackets).detail).not.toContain('nested');
  });
});

test('a job of nearly 8 MB is taken', async () => {
  const asTyped = Object.fromEntries(Array.from({ length: 15_500 }, (_, index) => [`/x/${index}`, 'y'.repeat(500)]));
  const job = { ...smallJob(), asTyped };
  expect(JSON.stringify(job).length).toBeGreaterThan(7_900_000);
  expect((await bench.call('/api/jobs/large', json('PUT', job))).status).toBe(201);
  expect(JSON.parse((await bench.call('/api/jobs/large')).text)).toEqual(job);
});

test('UTF-8 text, with or without a byte order mark, comes back as it was', async () => {
  const job = { ...smallJob(), name: 'ورکشاپ — मेज़ 木工' };
  const marked = Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(JSON.stringify(job))]);
  expect((await bench.call('/api/jobs/words', { ...json('PUT', ''), body: marked })).status).toBe(201);
  expect(JSON.parse((await bench.call('/api/jobs/words')).text).name).toBe(job.name);
});

test('the place of a mistake is the first character that no JSON has there', () => {
  for (const [text, place] of [
    ['[1, 2, x]', 7],
    ['{"a" 1}', 5],
    ['[01]', 2],
    ['["\u0001"]', 2],
    ['[1]]', 3],
    ['tru ', 3],
    ['[1, ', 4],
  ] as const) {
    expect([text, mistakeIn(text)]).toEqual([text, place]);
  }
});
