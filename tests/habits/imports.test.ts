import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { filesBelow, importsOf, loadsOf } from './sources.ts';

/**
 * Folders of src from the top down: a file may use what stands on a lower step and its own folder. `job` and
 * `assessment` are the two documents, what goes in and what comes out: those above name their types.
 */
const STEPS: readonly (readonly string[])[] = [
  ['index'],
  ['assess'],
  ['advice'],
  ['influence'],
  ['judge', 'blower-curve', 'evidence-points'],
  ['operate', 'evidence'],
  ['job', 'assessment'],
  ['fan', 'duct', 'motor', 'readings'],
  ['pipe'],
  ['air'],
  ['numeric'],
];
/** The step whose files are one story: judging a job. */
const STORY = STEPS.findIndex((step) => step.includes('judge'));
/** Used by all, using nothing of the subject. */
const SHARED = ['units', 'issues', 'fields', 'words', 'picture'];
/** Readers of pictures and what lower parts each may ask: none knows fans or ducts, a plate is weighed by what motors are. */
const READERS: Record<string, readonly string[]> = {
  chart: ['numeric'],
  plate: ['numeric', 'motor', 'writing'],
  'readings-sheet': ['numeric', 'writing'],
  writing: ['numeric'],
};
const PACKAGES_IN_SRC = ['zod', 'mathjs', 'fast-json-patch'];

const src = filesBelow('src', '.ts');
/** Folder of src a path lies in, or its name where it lies at the top. */
const partOf = (path: string) => path.split('/')[1]!.replace(/\.ts$/, '');
const stepOf = (part: string) => STEPS.findIndex((step) => step.includes(part));
const target = (from: string, to: string) => posix.normalize(posix.join(posix.dirname(from), to));
const isRelative = (to: string) => to.startsWith('.');

const edges = src.flatMap((from) =>
  importsOf(from)
    .filter(isRelative)
    .map((to) => [from, target(from, to)] as const),
);

describe('inside src', () => {
  test('every part has its step', () => {
    const parts = new Set(src.map(partOf));
    expect(
      [...parts].filter((part) => stepOf(part) < 0 && ![...SHARED, ...Object.keys(READERS)].includes(part)),
    ).toEqual([]);
  });

  test('imports lead downwards, never to a sibling', () => {
    const wrong = edges.filter(([from, to]) => {
      const [part, other] = [partOf(from), partOf(to)];
      if (part === other || SHARED.includes(other)) return false;
      if (SHARED.includes(part)) return true;
      if (READERS[part]) return !READERS[part].includes(other);
      if (READERS[other]) return part !== 'index';
      const isOneStory = stepOf(part) === STORY && stepOf(other) === STORY;
      return stepOf(other) <= stepOf(part) && !isOneStory;
    });
    expect(wrong.map(([from, to]) => `${from} → ${to}`)).toEqual([]);
  });

  test('nothing leads out of src but the packages it may use', () => {
    expect(edges.filter(([, to]) => !to.startsWith('src/'))).toEqual([]);
    const packages = src.flatMap((from) =>
      importsOf(from)
        .filter((to) => !isRelative(to))
        .map((to) => [from, to]),
    );
    expect(packages.filter(([, to]) => !PACKAGES_IN_SRC.includes(to!.split('/')[0]!))).toEqual([]);
  });
});

describe('what is loaded', () => {
  /** All of our files that a file needs, itself included. */
  function reachedFrom(start: string): Set<string> {
    const reached = new Set([start]);
    for (const path of reached) {
      for (const to of loadsOf(path).filter(isRelative)) reached.add(target(path, to));
    }
    return reached;
  }

  test('the server and the core work without the parser of typed sums, whose library takes a second to load', () => {
    for (const start of [
      'server/main.ts',
      'server/calculate/calculator-process.ts',
      'server/readers/photo-process.ts',
    ]) {
      expect([start, reachedFrom(start).has('src/units/sum.ts')]).toEqual([start, false]);
    }
    expect(reachedFrom('web/main.tsx').has('src/units/sum.ts')).toBe(true);
  });

  test('the server itself decodes no picture', () => {
    expect([...reachedFrom('server/main.ts')].filter((path) => loadsOf(path).includes('sharp'))).toEqual([]);
  });
});

describe('around src', () => {
  const edgesOf = (folder: string) =>
    filesBelow(folder, '.ts', '.tsx').flatMap((from) =>
      importsOf(from).map((to) => [from, isRelative(to) ? target(from, to) : to] as const),
    );

  test('web and server meet only in src', () => {
    const page = edgesOf('web').filter(([from]) => from !== 'web/vite.config.ts');
    expect(page.filter(([, to]) => to.startsWith('server/') || to.startsWith('node:'))).toEqual([]);
    expect(edgesOf('server').filter(([, to]) => to.startsWith('web/'))).toEqual([]);
  });

  test('each library stays where it belongs', () => {
    const all = [...edgesOf('server'), ...edgesOf('web')];
    const users = (name: string) => [
      ...new Set(all.filter(([, to]) => to === name || to.startsWith(`${name}/`)).map(([from]) => from)),
    ];
    expect(users('sharp').filter((from) => !from.startsWith('server/image/'))).toEqual([]);
    expect(users('tesseract.js').filter((from) => !from.startsWith('server/words/'))).toEqual([]);
    expect(users('express').filter((from) => !from.startsWith('server/'))).toEqual([]);
    expect(users('plotly.js-dist-min').length).toBeLessThanOrEqual(1);
  });
});
