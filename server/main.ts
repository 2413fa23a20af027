import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Express } from 'express';
import { createApp } from './app.ts';
import { inUrl, calledFromOutside } from './doors/hosts.ts';
import { createCalculator } from './calculate/calculator.ts';
import { createDecoder } from './image/decoder.ts';
import { networkKey } from './network-key.ts';
import { BadOption, optionsFrom } from './options.ts';
import type { Options } from './options.ts';
import { builtPage } from './page/build.ts';
import { developmentPage } from './page/development-page.ts';
import { plainPage } from './page/plain-page.ts';
import { staticPage } from './page/static-page.ts';
import { openPhotoStore } from './store/photos.ts';
import { createPhotoReader } from './readers/photo-reader.ts';
import { openJobStore } from './store/jobs.ts';

const CALCULATION_TIME_LIMIT_ms = 60_000;
const PHOTO_TIME_LIMIT_ms = 45_000;
const root = fileURLToPath(new URL('..', import.meta.url));

/** The calls work without a page, so a page that cannot be built is told, not fatal. */
async function pageOf(options: Options, server: Server) {
  if (options.isDevelopment) return developmentPage(root, server);
  try {
    const folder = await builtPage(root, console.log);
    return folder === null ? plainPage('There is no page yet.') : staticPage(folder);
  } catch (error) {
    console.error(`The page could not be built: ${(error as Error).message}`);
    return plainPage('The page could not be built; the reason stands where the program was started.');
  }
}

function listen(server: Server, { host, port }: Options): Promise<AddressInfo> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const isTaken = error.code === 'EADDRINUSE';
      reject(
        isTaken
          ? new BadOption(`Port ${port} is taken: stop the other program, or set PORT to another number.`)
          : error,
      );
    });
    server.listen({ host: host.replace(/^\[|\]$/g, ''), port }, () => resolve(server.address() as AddressInfo));
  });
}

function printAddresses({ host }: Options, port: number, key: string | null): void {
  const isEverywhere = ['0.0.0.0', '::', '[::]'].includes(host);
  const here = isEverywhere ? '127.0.0.1' : inUrl(host);
  console.log(`Blower Bench is ready: http://${here}:${port}`);
  if (key === null) return;
  for (const address of calledFromOutside(host))
    console.log(`From a phone on this network: http://${address}:${port}/?key=${key}`);
}

/** Answers what is under way, takes no more, and goes. */
function stopWhenTold(server: Server): void {
  const stop = () => {
    server.close(() => process.exit(0));
    server.closeIdleConnections();
    setTimeout(() => process.exit(0), 3000).unref();
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
}

async function appWith(options: Options, key: string | null, server: Server): Promise<Express> {
  const { version } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as { version: string };
  return createApp({
    root,
    version,
    jobs: await openJobStore(join(options.dataFolder, 'jobs')),
    calculator: createCalculator(CALCULATION_TIME_LIMIT_ms),
    photos: await openPhotoStore(join(options.dataFolder, 'photos')),
    decoder: createDecoder(PHOTO_TIME_LIMIT_ms),
    photoReader: createPhotoReader(PHOTO_TIME_LIMIT_ms),
    page: await pageOf(options, server),
    doorRules: { alsoCalled: () => (options.isOnNetwork ? calledFromOutside(options.host) : []) },
    key,
    isDevelopment: options.isDevelopment,
    log: console.error,
  });
}

/** The server has its port before the page is built: a taken port is told at once, and early calls wait. */
async function start(): Promise<void> {
  const options = optionsFrom(process.env, process.argv.slice(2));
  const key = options.isOnNetwork ? await networkKey(options.dataFolder) : null;
  const server = createServer();
  const { port } = await listen(server, options);
  stopWhenTold(server);
  const app = appWith(options, key, server);
  server.on('request', (req, res) => void app.then((answer) => answer(req, res)));
  await app;
  printAddresses(options, port, key);
}

try {
  await start();
} catch (error) {
  console.error(error instanceof BadOption ? error.message : error);
  process.exit(1);
}
