import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { findChromium } from './chromium.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The two windows the page is made for. */
export const WINDOWS = {
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
  desk: { viewport: { width: 1440, height: 900 } },
} satisfies Record<string, BrowserContextOptions>;

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

async function addressFrom(program: ChildProcess): Promise<string> {
  let said = '';
  for (const stream of [program.stdout, program.stderr]) stream?.on('data', (part) => (said += part));
  for (;;) {
    const address = /Blower Bench is ready: (http:\S+)/.exec(said)?.[1];
    if (address) return address;
    if (program.exitCode !== null) throw new Error(`The server ended: ${said}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** The real server in a process of its own, on a free port, with an empty data folder. */
export async function startServer() {
  const dataFolder = await mkdtemp(join(tmpdir(), 'blower-bench-browser-'));
  const program = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts'], {
    cwd: root,
    env: { ...process.env, PORT: '0', HOST: '127.0.0.1', DATA_DIR: dataFolder },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const address = await addressFrom(program);
  return {
    address,
    dataFolder,
    async stop() {
      if (program.exitCode === null) {
        program.kill('SIGTERM');
        await once(program, 'exit');
      }
      await rm(dataFolder, { recursive: true, force: true });
    },
  };
}

/** What must not happen on a page: errors, warnings of the policy, calls to other places. */
function watch(page: Page, address: string): string[] {
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(`error: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(`console: ${message.text()}`);
  });
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !/^(?:data|blob):/.test(url)) troubles.push(`call to ${url}`);
  });
  return troubles;
}

/**
 * Chromium and a server of its own. Each `open` is a fresh visitor: nothing stored, nothing remembered.
 * `troubles` of a page lists what went wrong on it so far; a test ends by expecting it to be empty.
 */
export async function startBrowser() {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('No Chromium on this machine; npm test says how to get one.');
  const [server, browser]: [Awaited<ReturnType<typeof startServer>>, Browser] = await Promise.all([
    startServer(),
    chromium.launch({ executablePath, args: FLAGS }),
  ]);
  return {
    address: server.address,
    dataFolder: server.dataFolder,
    browser,
    async open(window: keyof typeof WINDOWS, path = '/', options: BrowserContextOptions = {}) {
      const context = await browser.newContext({ ...WINDOWS[window], ...options });
      const page = await context.newPage();
      const troubles = watch(page, server.address);
      await page.goto(server.address + path);
      return { page, context, troubles };
    },
    async stop() {
      await browser.close();
      await server.stop();
    },
  };
}

export type Bench = Awaited<ReturnType<typeof startBrowser>>;
