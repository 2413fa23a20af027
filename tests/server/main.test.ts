import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readFile, rm, stat } from 'node:fs/promises';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { smallJob } from '../unit/job/small-job.ts';
import { json, root, send } from './bench-server.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'blower-bench-main-'));
});
afterAll(() => rm(folder, { recursive: true }));

/** The program as `npm start` runs it, with what it has said so far. */
function start(environment: Record<string, string>, ...flags: string[]) {
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts', ...flags], {
    cwd: root,
    env: { ...process.env, DATA_DIR: folder, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const said = { text: '' };
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (part) => (said.text += part));
  return { child, said };
}

async function addressOf({ child, said }: { child: ChildProcess; said: { text: string } }): Promise<string> {
  for (;;) {
    const address = /Blower Bench is ready: (http:\S+)/.exec(said.text)?.[1];
    if (address) return address;
    if (child.exitCode !== null) throw new Error(said.text);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

const endOf = async (child: ChildProcess) =>
  child.exitCode === null ? (await once(child, 'exit'))[0] : child.exitCode;

test('prints its address when it is ready, stores into DATA_DIR, and stops when told', async () => {
  const program = start({ PORT: '0', HOST: '127.0.0.1' });
  const port = Number(new URL(await addressOf(program)).port);
  const { version } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8'));
  expect(JSON.parse((await send(port, '/api/health')).text)).toEqual({ ok: true, version });
  expect((await send(port, '/api/jobs/kept', json('PUT', smallJob()))).status).toBe(201);
  program.child.kill('SIGTERM');
  expect(await endOf(program.child)).toBe(0);
  expect(JSON.parse(await readFile(join(folder, 'jobs/kept.json'), 'utf8'))).toEqual(smallJob());
});

test('on the network: prints addresses with a key that it keeps to itself', async () => {
  const program = start({ PORT: '0' }, '--network');
  const port = Number(new URL(await addressOf(program)).port);
  expect((await send(port, '/api/health')).status).toBe(200);
  const file = join(folder, 'network-key');
  expect(await readFile(file, 'utf8')).toMatch(/^[\w-]{24}$/);
  expect((await stat(file)).mode & 0o077).toBe(0);
  program.child.kill('SIGTERM');
  await endOf(program.child);
});

test('a taken port and a wrong one are said in one sentence', async () => {
  const taker = createServer().listen(0, '127.0.0.1');
  await once(taker, 'listening');
  const { port } = taker.address() as AddressInfo;
  const taken = start({ PORT: String(port), HOST: '127.0.0.1' });
  expect(await endOf(taken.child)).toBe(1);
  taker.close();
  expect(taken.said.text).toContain(`Port ${port} is taken: stop the other program, or set PORT to another number.\n`);
  const wrong = start({ PORT: 'http' });
  expect(await endOf(wrong.child)).toBe(1);
  expect(wrong.said.text).toBe('PORT must be a whole number from 0 to 65535; "http" is none.\n');
});
