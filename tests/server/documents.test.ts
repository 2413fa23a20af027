import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { checkJob } from '../../src/job/check.ts';
import { json, root, startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

test('health says that it runs, and which version', async () => {
  const answer = await bench.call('/api/health');
  expect([answer.status, JSON.parse(answer.text)]).toEqual([200, { ok: true, version: '1.2.3' }]);
  expect((await bench.call('/api/health', { method: 'HEAD' })).status).toBe(200);
});

test('the schema is JSON Schema: it requires what the contract requires and knows no other field', async () => {
  const schema = JSON.parse((await bench.call('/api/schema')).text);
  expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
  expect(schema.required.toSorted()).toEqual(
    ['blowers', 'ductwork', 'format', 'material', 'name', 'site', 'supply', 'version'].toSorted(),
  );
  expect(schema.additionalProperties).toBe(false);
  const blower = schema.properties.blowers.items;
  expect(blower.required.toSorted()).toEqual(['drive', 'evidence', 'id', 'motor', 'wheel']);
  expect(blower.properties.wheel.required).toEqual(['family']);
  expect(blower.properties.motor.required).toEqual(['ratedPower_W']);
  expect(blower.properties.motor.properties.ratedPower_W).toEqual({
    type: 'number',
    exclusiveMinimum: 0,
    maximum: 1e9,
    title: 'rated power',
  });
});

test('the demo is the job in the fixtures, and a possible one', async () => {
  const demo = JSON.parse((await bench.call('/api/demo')).text);
  expect(demo).toEqual(JSON.parse(await readFile(join(root, 'fixtures/jobs/school-furniture.json'), 'utf8')));
  expect(checkJob(demo)).toMatchObject({ ok: true });
});

test('the front door says that the program runs while there is no page', async () => {
  const answer = await bench.call('/');
  expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
  expect(answer.text).toContain('Blower Bench runs');
});

test('other addresses are 404, other methods 405', async () => {
  const nowhere = await bench.call('/api/nothing/here');
  expect(nowhere.status).toBe(404);
  expect(problemOf(nowhere)).toEqual({
    type: 'about:blank',
    title: 'Not Found',
    status: 404,
    detail: 'There is nothing at GET /api/nothing/here.',
    errors: [],
  });
  expect(problemOf(await bench.call('/nothing.js')).status).toBe(404);
  for (const path of ['/api/health', '/api/schema', '/api/demo']) {
    const answer = await bench.call(path, json('POST', {}));
    expect([answer.status, answer.headers.allow]).toEqual([405, 'GET']);
  }
});
