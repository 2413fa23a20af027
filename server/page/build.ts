import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile, readdir } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** Note inside a built page of what it was built from. */
export const STAMP = '.built-from';
/** What a page is built from, in the project's folder. */
const SOURCES = ['web', 'src', 'fixtures/jobs', 'package-lock.json'];

const isBuilt = (path: string) => path === `web${sep}dist` || path.startsWith(`web${sep}dist-`);

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
    hash.update(`${file.replaceAll(sep, '/')}\0`).update(await readFile(join(root, file)));
  }
  return hash.digest('hex');
}

/** The bundler takes hundreds of megabytes, which go back when its process ends. */
function bundle(root: string, stamp: string): Promise<void> {
  const program = fileURLToPath(new URL('./bundle.ts', import.meta.url));
  const typescript = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;
  const child = spawn(process.execPath, ['--import', typescript, program, root, stamp], {
    stdio: ['ignore', 'inherit', 'pipe'],
  });
  let complaint = '';
  child.stderr.on('data', (part: Buffer) => (complaint += part.toString('utf8')));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('exit', (code) =>
      code === 0 ? resolve() : reject(new Error(complaint.trim() || `the bundler ended with ${code}`)),
    );
  });
}

/**
 * Builds the page where it is missing or not of its present sources.
 * @param root  the project's folder
 * @returns the folder of the built page, or null while there is no page to build
 * @throws Error with what the bundler says when a source is wrong
 */
export async function builtPage(root: string, say: (line: string) => void): Promise<string | null> {
  if (!existsSync(join(root, 'web/index.html'))) return null;
  const page = join(root, 'web/dist');
  const wanted = await fingerprint(root);
  if ((await readFile(join(page, STAMP), 'utf8').catch(() => '')) === wanted) return page;
  say('Building the page …');
  await bundle(root, wanted);
  return page;
}
