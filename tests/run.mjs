// `npm test`: types, lint, the built page, and every test. The last line is the sum of all of it.
// With arguments (`npm test -- tests/unit/job`) only the tests they name.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromiumOrInstall } from './browser/chromium.mjs';
import { root, run, typesAndLint } from './house.mjs';

const chosen = process.argv.slice(2);

function buildPage() {
  const words = ['--import', 'tsx', join(root, 'server/page/build-now.ts')];
  const { status } = spawnSync(process.execPath, words, { cwd: root, stdio: 'inherit' });
  console.log(`${status === 0 ? '✓' : '✗'} the page builds`);
  return status === 0;
}

/** A skipped test is one that did not pass; a test file that does not load has failed as a whole. */
function countFrom(report) {
  const passed = report.numPassedTests;
  const skipped = report.numPendingTests + report.numTodoTests;
  const unloaded = report.testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  );
  if (skipped > 0) console.log(`${skipped} skipped or left to do: they count as failed`);
  return { passed, failed: report.numFailedTests + skipped + unloaded.length };
}

function runTests(chromium) {
  const folder = mkdtempSync(join(tmpdir(), 'blower-bench-tests-'));
  const file = join(folder, 'report.json');
  const words = [
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
  ];
  try {
    const isGood = run('vitest/vitest.mjs', [...words, ...chosen], { CHROMIUM: chromium });
    const { passed, failed } = countFrom(JSON.parse(readFileSync(file, 'utf8')));
    // an error outside of any test fails the run without failing a test
    return { passed, failed: isGood ? failed : Math.max(failed, 1) };
  } catch (error) {
    console.error(`The test runner gave no report: ${error.message}`);
    return { passed: 0, failed: 1 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function main() {
  const chromium = chromiumOrInstall();
  if (!chromium) {
    console.error(
      'The page tests need Chromium: install it (Debian: apt-get install chromium) or set CHROMIUM to its file.',
    );
    return { passed: 0, failed: 1 };
  }
  const house = chosen.length > 0 ? { passed: 0, failed: 0 } : typesAndLint();
  const isBuilt = buildPage();
  const tests = runTests(chromium);
  return {
    passed: house.passed + Number(isBuilt) + tests.passed,
    failed: house.failed + Number(!isBuilt) + tests.failed,
  };
}

const { passed, failed } = main();
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
