import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { builtPage } from '../../server/page/build.ts';
import { staticPage } from '../../server/page/static-page.ts';
import { startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

describe('a built page', () => {
  let bench: Bench;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'blower-bench-page-'));
    await mkdir(join(folder, 'assets'));
    await writeFile(join(folder, 'index.html'), '<!doctype html><title>page</title>');
    await writeFile(join(folder, 'assets/index-abc.js'), 'export {};');
    await writeFile(join(folder, '.built-from'), 'secret');
    await writeFile(join(folder, '..', 'beside.txt'), 'not ours');
    bench = await startBench({ page: staticPage(folder) });
  });
  afterAll(async () => {
    await bench.stop();
    await rm(folder, { recursive: true });
  });

  test('is asked for anew each time; its files, named by content, are kept', async () => {
    const page = await bench.call('/');
    expect([page.status, page.headers['cache-control'], page.text]).toEqual([
      200,
      'no-cache',
      '<!doctype html><title>page</title>',
    ]);
    const script = await bench.call('/assets/index-abc.js');
    expect(script.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
  });

  test('opens for any address that names no file or call', async () => {
    expect((await bench.call('/blowers')).text).toContain('<title>page</title>');
    expect((await bench.call('/blowers?x=1')).status).toBe(200);
    for (const path of ['/missing.js', '/assets/missing.js', '/api', '/api/blowers', '/a/b']) {
      expect(problemOf(await bench.call(path)).status).toBe(404);
    }
  });

  test('shows nothing outside of its folder, and none of its notes', async () => {
    for (const path of [
      '/../beside.txt',
      '/..%2fbeside.txt',
      '/assets/..%2f..%2fbeside.txt',
      '/.built-from',
      '/%2ebuilt-from',
    ]) {
      const answer = await bench.call(path);
      expect([path, answer.status >= 400]).toEqual([path, true]);
      expect(answer.text).not.toMatch(/not ours|secret/);
    }
  });
});

describe('building', () => {
  test('a project without a page has none', async () => {
    const root = await mkdtemp(join(tmpdir(), 'blower-bench-root-'));
    expect(await builtPage(root, () => {})).toBeNull();
    await rm(root, { recursive: true });
  });

  test('happens when the page is missing or a source has changed, and only then; a mistake leaves the old page', async () => {
    const root = await mkdtemp(join(tmpdir(), 'blower-bench-root-'));
    for (const folder of ['web', 'src', 'fixtures/jobs']) await mkdir(join(root, folder), { recursive: true });
    await writeFile(join(root, 'package-lock.json'), '{}');
    await writeFile(join(root, 'web/vite.config.ts'), 'export default {};');
    await writeFile(
      join(root, 'web/index.html'),
      '<!doctype html><title>one</title><script type="module" src="/main.ts"></script>',
    );
    await writeFile(join(root, 'web/main.ts'), "import { word } from '../src/word.ts';\ndocument.title = word;");
    await writeFile(join(root, 'src/word.ts'), "export const word: string = 'first word';");
    const said: string[] = [];
    const build = () => builtPage(root, (line) => said.push(line));
    const script = async () => {
      const html = await readFile(join(root, 'web/dist/index.html'), 'utf8');
      return readFile(join(root, 'web/dist', /src="\/?(assets\/[^"]+)"/.exec(html)![1]!), 'utf8');
    };
    expect(await build()).toBe(join(root, 'web/dist'));
    expect(await script()).toContain('first word');
    await build();
    expect(said).toEqual(['Building the page …']);
    await writeFile(join(root, 'src/word.ts'), "export const word: string = 'second word';");
    await build();
    expect(await script()).toContain('second word');
    await writeFile(join(root, 'src/word.ts'), 'export const wrong = 1;');
    await expect(build()).rejects.toThrow(/word/);
    expect(await script()).toContain('second word');
    await rm(root, { recursive: true });
  });
});
