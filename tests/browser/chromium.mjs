// The browser of the page tests: the system's Chromium. Nothing is downloaded behind anybody's back.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'chrome.exe',
  'msedge.exe',
];
const PLACES = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** @param {string} file */
function isProgram(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * File of a Chromium on this machine: the one `CHROMIUM` names, else one on the path, else one in the usual places.
 * @returns {string | undefined}
 */
export function findChromium() {
  const named = process.env['CHROMIUM'];
  if (named) return isProgram(named) ? named : undefined;
  const onPath = (process.env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...onPath, ...PLACES].find(isProgram);
}

const mayInstall = () => existsSync('/etc/debian_version') && process.getuid?.() === 0;

/** @param {string[]} words */
function apt(...words) {
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return spawnSync('apt-get', [...words], { stdio: ['ignore', 'ignore', 'inherit'], env: environment }).status === 0;
}

/**
 * Finds Chromium, or installs it where that is allowed (Debian, as root).
 * @returns {string | undefined} its file
 */
export function chromiumOrInstall() {
  const found = findChromium();
  if (found || process.env['CHROMIUM'] || !mayInstall()) return found;
  console.log('Installing Chromium for the page tests …');
  apt('update', '-qq');
  apt('install', '-y', '-qq', '--no-install-recommends', 'chromium');
  return findChromium();
}
