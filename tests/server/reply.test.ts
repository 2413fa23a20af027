import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import express from 'express';
import { expect, test } from 'vitest';
import { problems } from '../../server/problem.ts';
import { reply } from '../../server/reply.ts';
import { firstBadNumber } from '../../server/to-json.ts';
import { send } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

test('the first number that JSON cannot carry is found by its place', () => {
  expect(firstBadNumber({ a: [1, { 'b/c': Number.NaN }], d: Infinity })).toBe('/a/1/b~1c');
  expect(firstBadNumber(-Infinity)).toBe('');
  expect(firstBadNumber({ a: [null, 'NaN', 1e308, -0, true], b: undefined })).toBeUndefined();
});

test('an answer with a NaN is never sent: 500 with an id, and the log says where it stood', async () => {
  const log: string[] = [];
  const app = express();
  app.get('/good', (_req, res) => reply(res, 200, { value: 1 }));
  app.get('/bad', (_req, res) => reply(res, 200, { value: [0, Number.NaN] }));
  app.use(problems((line) => log.push(line)));
  const server = createServer(app).listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  expect((await send(port, '/good')).text).toBe('{"value":1}');
  const answer = await send(port, '/bad');
  server.close();
  expect(answer.status).toBe(500);
  const [id] = /[0-9a-f-]{36}/.exec(problemOf(answer).detail) ?? [];
  expect(log[0]).toContain(`${id} GET /bad: RangeError: the answer holds a number that is not finite at /value/1`);
});
