import { randomBytes } from 'node:crypto';
import { mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** What is not finished carries this ending; readers never look at it. */
const UNFINISHED = '.part';
/** Left behind by a crash, not by a writer that is still at work. */
const ABANDONED_ms = 3600 * 1000;

/** Makes a rename last through a power cut. Windows has no such call for folders. */
export async function flushFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A name beside `path` for something unfinished. */
export const unfinishedBeside = (path: string): string =>
  join(dirname(path), `.${basename(path)}.${randomBytes(6).toString('hex')}${UNFINISHED}`);

/** Writes a file and flushes it to the disk. */
export async function writeFlushed(path: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(path, 'wx');
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Writes `bytes` to `path` whole or not at all: beside it, flushed, renamed, and the folder flushed. */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const beside = unfinishedBeside(path);
  try {
    await writeFlushed(beside, bytes);
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
  await flushFolder(dirname(path));
}

/** Takes away what a crash left unfinished in `folder` more than an hour ago. */
export async function clearAbandoned(folder: string, now_ms: number): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    if (!name.startsWith('.') || !name.endsWith(UNFINISHED)) continue;
    const path = join(folder, name);
    const { mtimeMs } = await stat(path).catch(() => ({ mtimeMs: now_ms }));
    if (now_ms - mtimeMs > ABANDONED_ms) await rm(path, { recursive: true, force: true });
  }
}
