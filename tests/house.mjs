// The checks that need no test runner: types of each part, lint, format. Each is one line in the sum at the end.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Parts of the project, each with its own tsconfig.json: what it may use is written there. */
const PARTS = ['src', 'server', 'web', 'tests'];

const hasTypeScript = (part) =>
  existsSync(join(root, part)) &&
  readdirSync(join(root, part), { recursive: true }).some((file) => /\.tsx?$/.test(file));

/**
 * Runs a program of an installed package and shows what it says.
 * @param {string} script its file below node_modules
 * @param {string[]} words
 * @param {Record<string, string>} [environment]
 * @returns {boolean} whether it was content
 */
export function run(script, words, environment = {}) {
  const file = join(root, 'node_modules', script);
  const { status } = spawnSync(process.execPath, [file, ...words], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...environment },
  });
  return status === 0;
}

const types = () =>
  PARTS.filter(hasTypeScript).map((part) => ({
    name: `types of ${part}`,
    passes: () => run('typescript/bin/tsc', ['-p', join(part, 'tsconfig.json')]),
  }));

const lint = {
  name: 'lint',
  passes: () => run('oxlint/bin/oxlint', ['--deny-warnings', 'src', 'server', 'web', 'tests']),
};
const format = {
  name: 'format',
  passes: () =>
    run('prettier/bin/prettier.cjs', ['--check', '--log-level=warn', '{src,server,web,tests}/**/*.{ts,tsx,mjs,css}']),
};

/**
 * @param {{name: string, passes: () => boolean}[]} checks
 * @returns {{passed: number, failed: number}}
 */
function sum(checks) {
  const results = checks.map(({ name, passes }) => {
    const isGood = passes();
    console.log(`${isGood ? '✓' : '✗'} ${name}`);
    return isGood;
  });
  return { passed: results.filter(Boolean).length, failed: results.filter((isGood) => !isGood).length };
}

/** What every test run looks at. */
export const typesAndLint = () => sum([...types(), lint]);

/** The same and the format. */
export const everything = () => sum([...types(), lint, format]);
