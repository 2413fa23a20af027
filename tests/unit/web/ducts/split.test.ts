import { expect, test } from 'vitest';
import { splitMain } from '../../../../web/edits/duct-split.ts';
import { branch, ducts, jobWith, pipe } from './shops.ts';

const job = () => ({
  ...jobWith(
    ducts([
      branch('planer', 'main'),
      pipe('main', 'blower', 0.15, [
        { kind: 'fitting', fitting: 'elbow-90', diameter_m: 0.15 },
        { kind: 'pipe', surface: 'drain-pipe', length_m: 7, diameter_m: 0.15 },
      ]),
      branch('saw', 'main'),
    ]),
  ),
  asTyped: {
    '/ductwork/sections/0/elements/1/length_m': 'first',
    '/ductwork/sections/1/elements/0/length_m': 'front',
    '/ductwork/sections/1/elements/2/length_m': 'behind',
    '/ductwork/sections/2/elements/1/length_m': 'last',
  },
});

test('a main is cut behind a piece: what flowed into it flows into the front, typed words stay with their pieces', () => {
  const { ductwork, asTyped } = splitMain(job(), 'main', 0).job;
  expect(ductwork.sections.map(({ id, into, elements }) => [id, into, elements.length])).toEqual([
    ['planer', 'main-2', 4],
    ['main-2', 'main', 1],
    ['main', 'blower', 2],
    ['saw', 'main-2', 4],
  ]);
  expect(asTyped).toEqual({
    '/ductwork/sections/0/elements/1/length_m': 'first',
    '/ductwork/sections/1/elements/0/length_m': 'front',
    '/ductwork/sections/2/elements/1/length_m': 'behind',
    '/ductwork/sections/3/elements/1/length_m': 'last',
  });
});

test('behind its last piece, and in a machine’s own branch, there is nothing to cut', () => {
  for (const [id, index] of [
    ['main', 2],
    ['planer', 0],
    ['nowhere', 0],
  ] as const)
    expect(splitMain(job(), id, index).job.ductwork).toEqual(job().ductwork);
});
