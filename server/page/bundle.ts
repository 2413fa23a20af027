import { rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'vite';
import { STAMP } from './build.ts';

/** A program of its own: bundles the page of a project beside the old one and puts it in its place when it is whole. */
const [root = '', stamp = ''] = process.argv.slice(2);
const page = join(root, 'web/dist');
const beside = join(root, `web/dist-${process.pid}`);

try {
  await build({
    root: join(root, 'web'),
    configFile: join(root, 'web/vite.config.ts'),
    logLevel: 'error',
    build: { outDir: beside, emptyOutDir: true },
  });
  await writeFile(join(beside, STAMP), stamp);
  await rm(page, { recursive: true, force: true });
  await rename(beside, page);
} catch (error) {
  console.error((error as Error).message);
  process.exitCode = 1;
} finally {
  await rm(beside, { recursive: true, force: true });
}
