import { mkdtemp, rm } from 'node:fs/promises';
import { createServer, request } from 'node:http';
import type { IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { RequestHandler } from 'express';
import { createApp } from '../../server/app.ts';
import { createCalculator } from '../../server/calculate/calculator.ts';
import { createDecoder } from '../../server/image/decoder.ts';
import { plainPage } from '../../server/page/plain-page.ts';
import { createPhotoReader } from '../../server/readers/photo-reader.ts';
import { openJobStore } from '../../server/store/jobs.ts';
import { openPhotoStore } from '../../server/store/photos.ts';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export type Answer = { status: number; headers: IncomingHttpHeaders; text: string; bytes: Buffer };
export type Call = { method?: string; headers?: Record<string, string>; body?: string | Uint8Array };

/** A call over a real socket with whatever headers the test likes, `Host` and `Origin` included. */
export function send(port: number, path: string, { method = 'GET', headers = {}, body }: Call = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const call = request({ host: '127.0.0.1', port, path, method, headers }, (res) => {
      const parts: Buffer[] = [];
      res.on('data', (part: Buffer) => parts.push(part));
      res.on('error', reject);
      res.on('end', () => {
        const bytes = Buffer.concat(parts);
        resolve({ status: res.statusCode ?? 0, headers: res.headers, bytes, text: bytes.toString('utf8') });
      });
    });
    call.on('error', reject);
    call.end(body);
  });
}

export const json = (method: string, body: unknown, headers: Record<string, string> = {}): Call => ({
  method,
  headers: { 'Content-Type': 'application/json', ...headers },
  body: typeof body === 'string' ? body : JSON.stringify(body),
});

/** A multipart body with one file, as a browser's form sends it. */
export function form(field: string, bytes: Uint8Array, name = 'photo.jpg'): Call {
  const edge = 'edge-of-the-form';
  const head = `--${edge}\r\nContent-Disposition: form-data; name="${field}"; filename="${name}"\r\nContent-Type: image/jpeg\r\n\r\n`;
  return {
    method: 'POST',
    headers: { 'Content-Type': `multipart/form-data; boundary=${edge}` },
    body: Buffer.concat([Buffer.from(head), bytes, Buffer.from(`\r\n--${edge}--\r\n`)]),
  };
}

type Setting = { key?: string; page?: RequestHandler; dataFolder?: string; photoTimeLimit_ms?: number };

/** The real application on a free port with a data folder of its own. */
export async function startBench({ key, page, dataFolder, photoTimeLimit_ms = 20_000 }: Setting = {}) {
  const folder = dataFolder ?? (await mkdtemp(join(tmpdir(), 'blower-bench-')));
  const decoder = createDecoder(photoTimeLimit_ms);
  const photoReader = createPhotoReader(60_000);
  const calculator = createCalculator(60_000);
  const log: string[] = [];
  const app = createApp({
    root,
    version: '1.2.3',
    jobs: await openJobStore(join(folder, 'jobs')),
    photos: await openPhotoStore(join(folder, 'photos')),
    decoder,
    photoReader,
    calculator,
    page: page ?? plainPage('There is no page yet.'),
    doorRules: { alsoCalled: () => ['192.168.7.7'] },
    key: key ?? null,
    isDevelopment: false,
    log: (line) => log.push(line),
  });
  const server = createServer(app);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    port,
    folder,
    log,
    call: (path: string, call?: Call) => send(port, path, call),
    async stop() {
      decoder.close();
      photoReader.close();
      calculator.close();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      await rm(folder, { recursive: true, force: true });
    },
  };
}

export type Bench = Awaited<ReturnType<typeof startBench>>;
