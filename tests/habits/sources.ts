import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

const isOurs = (path: string) => !/(^|\/)(node_modules|dist|dist-\d+)\//.test(path);

/** Paths of our files below a folder that end in one of `endings`, with `/` on every system. */
export function filesBelow(folder: string, ...endings: string[]): string[] {
  const all = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' });
  return all
    .map((path) => `${folder}/${path.replaceAll('\\', '/')}`)
    .filter((path) => isOurs(path) && endings.some((ending) => path.endsWith(ending)))
    .toSorted();
}

export const textOf = (path: string): string => readFileSync(join(root, path), 'utf8');

/** A file's text without its comments: what it does, not what it says. */
export const codeOf = (path: string): string => textOf(path).replace(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm, '');

const namesIn = (code: string): string[] =>
  [...code.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*['"]([^'"]+)['"]/g)].map((match) => match[1]!);

/** What a file imports or re-exports, as written. */
export const importsOf = (path: string): string[] => namesIn(codeOf(path));

/** The same without what is there for the types alone and gone when the program runs. */
export const loadsOf = (path: string): string[] =>
  namesIn(codeOf(path).replace(/^(?:import|export) type [^;]*;/gm, ''));
