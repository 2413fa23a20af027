import { describe, expect, test } from 'vitest';
import { codeOf, filesBelow, textOf } from './sources.ts';

const MOST_LINES = 300;
/** Names that say nothing of what is inside. */
const EMPTY_NAMES = /(^|\/)(utils?|helpers?|common|misc)(\/|\.)/;

const code = ['src', 'server', 'web', 'tests'].flatMap((folder) => filesBelow(folder, '.ts', '.tsx', '.mjs'));
const lines = (path: string) => textOf(path).split('\n').length - 1;
/** Where the words of a language stand, one line each, a file may be as long as the language needs. */
const isTable = (path: string) => path.startsWith('web/texts/');

describe('files', () => {
  test(`have at most ${MOST_LINES} lines`, () => {
    const long = code.filter((path) => !isTable(path) && lines(path) > MOST_LINES);
    expect(long.map((path) => `${path}: ${lines(path)}`)).toEqual([]);
  });

  test('are named by what they hold', () => {
    expect(code.filter((path) => EMPTY_NAMES.test(path))).toEqual([]);
  });

  test('name no place of the machine they were written on', () => {
    const documents = ['README.md', 'DEVELOPERS.md', 'package.json', ...filesBelow('fixtures', '.json', '.md')];
    const place = new RegExp(['/(?:ro', 'ot|ho', 'me/\\w+|wo', 'rk)/'].join(''));
    expect([...code, ...documents].filter((path) => place.test(textOf(path)))).toEqual([]);
  });

  test('leave nothing half done and nothing switched off', () => {
    const marks = new RegExp(['TO', 'DO|FIX', 'ME|@ts-ig', 'nore|@ts-no', 'check'].join(''));
    expect(code.filter((path) => marks.test(textOf(path)))).toEqual([]);
    const tests = filesBelow('tests', '.test.ts', '.test.tsx');
    expect(
      tests.filter((path) => /\b(?:test|it|describe)\s*\.(?:only|skip|todo|skipIf|runIf|fails)\b/.test(codeOf(path))),
    ).toEqual([]);
  });
});

describe('in src', () => {
  const src = filesBelow('src', '.ts');
  const EXPORTED =
    /^export (?:async )?function (\w+)|^export const (\w+)(?::[^=]*)? = (?:<[^>]*>)?\([^)]*\)(?::[^=]*)? =>/;

  test('every exported function says what it is', () => {
    const silent = src.flatMap((path) => {
      const text = textOf(path).split('\n');
      return text.flatMap((line, index) => {
        const name = EXPORTED.exec(line);
        // one line of words may stand over several functions of one kind
        const above = text.slice(0, index).findLast((earlier) => !/^export const \w+.*;$/.test(earlier));
        return name && !above?.trimEnd().endsWith('*/') ? [`${path}: ${name[1] ?? name[2]}`] : [];
      });
    });
    expect(silent).toEqual([]);
  });

  test('nothing asks for the time, for chance, or for the machine', () => {
    const asks = /\bDate\.now\b|\bnew Date\b|\bMath\.random\b|\bperformance\.|\bprocess\.|\bconsole\./;
    expect(src.filter((path) => asks.test(codeOf(path)))).toEqual([]);
  });
});
