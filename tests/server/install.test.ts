import { spawnSync } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { missingPackages, whyInstallFailed } from '../../server/setup/install.mjs';
import { root } from './bench-server.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'blower-bench-install-'));
  await mkdir(join(folder, 'node_modules/one'), { recursive: true });
});
afterEach(() => rm(folder, { recursive: true }));

const lock = (packages: object) =>
  writeFile(join(folder, 'package-lock.json'), JSON.stringify({ packages: { '': {}, ...packages } }));
const installed = (packages: object) =>
  writeFile(join(folder, 'node_modules/.package-lock.json'), JSON.stringify({ packages }));

describe('what is missing', () => {
  test('nothing, when each package is there in its version; what belongs to other machines is not asked for', async () => {
    await lock({
      'node_modules/one': { version: '1.0.0' },
      'node_modules/for-another': { version: '1.0.0', optional: true },
    });
    await installed({ 'node_modules/one': { version: '1.0.0' } });
    expect(missingPackages(folder)).toEqual([]);
  });

  test('everything, on a fresh clone', async () => {
    await rm(join(folder, 'node_modules'), { recursive: true });
    await lock({
      'node_modules/one': { version: '1.0.0' },
      'node_modules/one/node_modules/@of/two': { version: '2.0.0' },
    });
    expect(missingPackages(folder)).toEqual(['one', '@of/two']);
  });

  test('a package of another version, or whose folder is gone', async () => {
    await lock({ 'node_modules/one': { version: '1.0.1' }, 'node_modules/two': { version: '2.0.0' } });
    await installed({ 'node_modules/one': { version: '1.0.0' }, 'node_modules/two': { version: '2.0.0' } });
    expect(missingPackages(folder)).toEqual(['one', 'two']);
  });
});

describe('why it could not be installed', () => {
  test('no network', () => {
    const output = 'npm error code ENOTFOUND\nnpm error errno ENOTFOUND\nnpm error network request failed';
    expect(whyInstallFailed(output)).toBe(
      'The packages this program needs could not be fetched: connect to the internet once and run it again.',
    );
  });

  test('anything else, in the words of the installer', () => {
    expect(whyInstallFailed('npm error code EACCES\nnpm error The folder may not be written.\n')).toBe(
      'The packages this program needs could not be installed: The folder may not be written.',
    );
    expect(whyInstallFailed('')).toBe('The packages this program needs could not be installed: npm gave no reason.');
  });
});

test('run where nothing is missing it says nothing', () => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['server/setup/install.mjs'], {
    cwd: root,
    encoding: 'utf8',
  });
  expect([status, stdout, stderr]).toEqual([0, '', '']);
});
