// Runs before start, dev and test: installs the packages when they are missing or not those of package-lock.json.
// Plain JavaScript, Node's own modules only: on a fresh clone there is nothing else yet.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const OLDEST_NODE = [20, 19];
const UNREACHABLE = /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|ERR_SOCKET_TIMEOUT|ENOTCACHED/;

const readJson = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null);

/**
 * Names of packages that package-lock.json asks for and node_modules does not hold in that version.
 * npm notes what it installed in node_modules/.package-lock.json. Optional packages are left out of the comparison:
 * most of them belong to other machines.
 * @param {string} folder the project's folder
 * @returns {string[]}
 */
export function missingPackages(folder) {
  const wanted = readJson(join(folder, 'package-lock.json'))?.packages ?? {};
  const present = readJson(join(folder, 'node_modules/.package-lock.json'))?.packages ?? {};
  return Object.entries(wanted)
    .filter(([path, entry]) => path !== '' && !entry.optional && !entry.devOptional && !entry.link)
    .filter(([path, entry]) => present[path]?.version !== entry.version || !existsSync(join(folder, path)))
    .map(([path]) => path.replace(/^.*node_modules\//, ''));
}

/**
 * One sentence on why npm could not install, for somebody who has never seen npm.
 * @param {string} output what npm printed
 * @returns {string}
 */
export function whyInstallFailed(output) {
  if (UNREACHABLE.test(output)) {
    return 'The packages this program needs could not be fetched: connect to the internet once and run it again.';
  }
  const last = output
    .split('\n')
    .map((line) => line.replace(/^npm (error|ERR!)\s*/i, '').trim())
    .find((line) => line !== '' && !/^code\b/.test(line));
  return `The packages this program needs could not be installed: ${(last ?? 'npm gave no reason').replace(/\.$/, '')}.`;
}

function npm(folder, ...words) {
  const script = process.env.npm_execpath;
  const [command, ...first] = script ? [process.execPath, script] : [process.platform === 'win32' ? 'npm.cmd' : 'npm'];
  const run = spawnSync(command, [...first, ...words, '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: folder,
    encoding: 'utf8',
    shell: !script && process.platform === 'win32',
  });
  return { done: run.status === 0, output: `${run.stderr ?? ''}${run.stdout ?? ''}${run.error?.message ?? ''}` };
}

function install(folder) {
  console.log('Installing the packages this program needs (once, a minute or two) …');
  const clean = npm(folder, 'ci');
  if (clean.done || UNREACHABLE.test(clean.output)) return clean;
  return npm(folder, 'install');
}

function nodeIsTooOld() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  return major < OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor < OLDEST_NODE[1]);
}

function main() {
  if (nodeIsTooOld()) {
    console.error(`This program needs Node ${OLDEST_NODE.join('.')} or newer; here is ${process.versions.node}.`);
    return 1;
  }
  const folder = fileURLToPath(new URL('../..', import.meta.url));
  if (missingPackages(folder).length === 0) return 0;
  const run = install(folder);
  if (!run.done) console.error(whyInstallFailed(run.output));
  return run.done ? 0 : 1;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) process.exitCode = main();
