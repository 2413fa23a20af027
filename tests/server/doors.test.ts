import { once } from 'node:events';
import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import express from 'express';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keyDoor } from '../../server/doors/key.ts';
import { problems } from '../../server/problem.ts';
import { smallJob } from '../unit/job/small-job.ts';
import { json, send, startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

const NOT_OURS = 'This server answers only to its own address; open the one that it printed at the start.';
const NOT_OUR_PAGE = 'Calls from pages of another address are not accepted.';

describe('by what name it is called', () => {
  test.each(['127.0.0.1', 'localhost', 'LOCALHOST', '[::1]', '127.3.4.5', '192.168.7.7'])(
    '%s is one of ours',
    async (name) => {
      expect((await bench.call('/api/health', { headers: { Host: `${name}:${bench.port}` } })).status).toBe(200);
    },
  );

  test.each(['evil.example', '127.0.0.1.evil.example', 'localhost.', '192.168.7.8', '127.0.0.1@evil.example', 'a b'])(
    '%s is not, whatever it resolves to',
    async (name) => {
      for (const path of ['/', '/api/health', '/api/jobs/x']) {
        const answer = await bench.call(path, { headers: { Host: `${name}:${bench.port}` } });
        expect(answer.status).toBe(403);
        expect(problemOf(answer).detail).toBe(NOT_OURS);
      }
    },
  );

  test('the right name with another port, or without one, is not', async () => {
    for (const host of ['127.0.0.1:1', '127.0.0.1', 'localhost']) {
      expect((await bench.call('/api/health', { headers: { Host: host } })).status).toBe(403);
    }
  });
});

describe('who is asking', () => {
  const origin = (text: string) => bench.call('/api/health', { headers: { Origin: text } });

  test('our own page may', async () => {
    expect((await origin(`http://127.0.0.1:${bench.port}`)).status).toBe(200);
    expect((await origin(`http://localhost:${bench.port}`)).status).toBe(200);
  });

  test('pages of other addresses, ports and schemes may not, on any call', async () => {
    const foreign = [
      'http://evil.example',
      'http://localhost:1',
      `https://127.0.0.1:${bench.port}`,
      'null',
      'http://',
      '',
    ];
    for (const text of foreign) {
      const answer = await origin(text);
      expect(answer.status, text).toBe(403);
      expect(problemOf(answer).detail).toBe(NOT_OUR_PAGE);
    }
    const put = await bench.call('/api/jobs/x', json('PUT', smallJob(), { Origin: 'http://evil.example' }));
    expect(put.status).toBe(403);
    expect((await bench.call('/api/jobs/x')).status).toBe(404);
  });

  test.each(['cross-site', 'same-site'])('a browser that says %s is refused', async (site) => {
    const headers = { 'Sec-Fetch-Site': site, 'Sec-Fetch-Mode': 'no-cors' };
    expect(problemOf(await bench.call('/api/jobs', { headers })).status).toBe(403);
    expect(problemOf(await bench.call('/', { headers })).status).toBe(403);
  });

  test('a link from elsewhere opens the page, not a call', async () => {
    const headers = { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Mode': 'navigate' };
    expect((await bench.call('/', { headers })).status).toBe(200);
    expect((await bench.call('/api/jobs', { headers })).status).toBe(403);
    expect((await bench.call('/API/jobs', { headers })).status).toBe(403);
  });
});

describe('what every answer carries', () => {
  test('a strict policy, no sniffing, no name of the software', async () => {
    for (const path of ['/', '/api/health', '/api/nothing']) {
      const { headers } = await bench.call(path);
      expect(headers['content-security-policy']).toContain("default-src 'self';script-src 'self';");
      expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
      expect(headers['content-security-policy']).not.toMatch(/upgrade-insecure-requests|unsafe-eval/);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['strict-transport-security']).toBeUndefined();
      expect(headers['x-powered-by']).toBeUndefined();
    }
  });
});

describe('the key of the network', () => {
  const KEY = 'a-key-of-some-length';
  let server: Server;
  let port: number;
  beforeAll(async () => {
    const app = express();
    app.use(keyDoor(KEY, () => false));
    app.use((_req, res) => void res.send('inside'));
    app.use(problems(() => {}));
    server = createServer(app).listen(0, '127.0.0.1');
    await once(server, 'listening');
    port = (server.address() as AddressInfo).port;
  });
  afterAll(() => void server.close());

  test('another machine is turned away without it, and with a wrong one', async () => {
    const wrong = { Cookie: 'blower_bench_key=wrong' };
    for (const answer of [
      await send(port, '/'),
      await send(port, '/?key=wrong'),
      await send(port, '/', { headers: wrong }),
    ]) {
      expect(answer.status).toBe(401);
      expect(problemOf(answer).detail).toBe(
        'From another machine, open the whole address with the key that was printed at the start.',
      );
    }
  });

  test('the whole address lets in, takes the key out of the address, and is remembered', async () => {
    const first = await send(port, `/?key=${KEY}`);
    expect(first.status).toBe(303);
    expect(first.headers.location).toBe('/');
    const cookie = first.headers['set-cookie']?.[0] ?? '';
    expect(cookie).toMatch(/HttpOnly; SameSite=Strict/);
    const next = await send(port, '/', { headers: { Cookie: `other=1; ${cookie.split(';')[0]}` } });
    expect(next.text).toBe('inside');
  });

  test('the key in the address of a write is not taken', async () => {
    expect((await send(port, `/?key=${KEY}`, { method: 'POST' })).status).toBe(401);
  });

  test('calls from this machine need none', async () => {
    const keyed = await startBench({ key: KEY });
    expect((await send(keyed.port, '/api/health')).status).toBe(200);
    await keyed.stop();
  });
});
