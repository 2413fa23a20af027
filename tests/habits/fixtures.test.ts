import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { root, textOf } from './sources.ts';

const folders = readdirSync(join(root, 'fixtures'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name)
  // the programs that draw fixtures are no fixtures
  .filter((name) => name !== 'generate');

test.each(folders)('fixtures/%s says where each of its files comes from', (folder) => {
  const readme = `fixtures/${folder}/README.md`;
  expect(existsSync(join(root, readme))).toBe(true);
  const said = textOf(readme);
  const files = readdirSync(join(root, 'fixtures', folder)).filter((file) => file !== 'README.md');
  expect(files.filter((file) => !said.includes(file.replace(/\.\w+$/, '')))).toEqual([]);
});
