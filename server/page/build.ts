import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';

/** Note inside a built page of what it was built from. */
const STAMP = '.built-from';
/** What a page is built from, in the project's folder. */
const SOURCES = ['web', 'src', 'package-lock.json'];

const isBuilt = (path: string) => path === 'web' + sep + 'dist' || path.startsWith(`web${sep}dist-`);

async function filesIn(root: string, folder: string): Promise<string[]> {
  const entries = await readdir(join(root, folder), { withFileTypes: true });
  const lists = entries.map(async (entry) => {
    const path = join(folder, entry.name);
    if (isBuilt(path)) return [];
    return entry.isDirectory() ? filesIn(root, path) : [path];
  });
  return (await Promise.all(lists)).flat();
}

/** Fingerprint of everything the page is built from; the same on every machine, whatever the dates of the files. */
async function fingerprint(root: string): Promise<string> {
  const lists = await Promise.all(SOURCES.map((name) => (name.includes('.') ? [name] : filesIn(root, name))));
  const hash = createHash('sha256');
  for (const file of lists.flat().toSorted()) {
    hash.update(`${relative('.', file)}\0`).update(await readFile(join(root, file)));
  }
  return hash.digest('hex');
}

/**
 * Builds the page where it is missing or older than its sources. It is built beside the old one and put in its
 * place when it is whole.
 * @param root  the project's folder
 * @returns the folder of the built page, or null while there is no page to build
 * @throws what the bundler throws when a source is wrong
 */
export async function builtPage(root: string, say: (line: string) => void): Promise<string | null> {
  if (!existsSync(join(root, 'web/index.html'))) return null;
  const page = join(root, 'web/dist');
  const wanted = await fingerprint(root);
  if ((await readFile(join(page, STAMP), 'utf8').catch(() => '')) === wanted) return page;
  say('Building the page …');
  const beside = join(root, `web/dist-${process.pid}`);
  try {
    const { build } = await import('vite');
    await build({
      root: join(root, 'web'),
      configFile: join(root, 'web/vite.config.ts'),
      logLevel: 'error',
      build: { outDir: beside, emptyOutDir: true },
    });
    await writeFile(join(beside, STAMP), wanted);
    await rm(page, { recursive: true, force: true });
    await rename(beside, page);
  } finally {
    await rm(beside, { recursive: true, force: true });
  }
  return page;
}
