import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Ductwork, Section } from '../../../../src/job/types.ts';
import { between, DESK, layout, PHONE, TIGHT } from '../../../../web/ducts/layout.ts';
import type { Box, Sheet } from '../../../../web/ducts/layout.ts';
import { lineTree } from '../../../../web/ducts/layout/path-tree.ts';
import { branch, comb, DRUM_AND_FILTERS, ducts, fourLevels, pipe, threeMachines } from './shops.ts';

const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width - 0.01 &&
  b.x < a.x + a.width - 0.01 &&
  a.y < b.y + b.height - 0.01 &&
  b.y < a.y + a.height - 0.01;

/** Everything that stands on the floor, by name. */
const standing = (sheet: Sheet): [string, Box][] => [
  ...sheet.machines.map((machine): [string, Box] => [machine.section, machine.box]),
  ...sheet.equipment.map((one): [string, Box] => [`${one.place.section} ${one.element.kind}`, one.box]),
  ['blower', sheet.blower.box],
];

function collisions(sheet: Sheet): string[] {
  const boxes = standing(sheet);
  return boxes.flatMap(([name, box], i) =>
    boxes
      .slice(i + 1)
      .filter(([, other]) => overlap(box, other))
      .map(([other]) => `${name} on ${other}`),
  );
}

/** Standing straights of pipes that run through something on the floor that is not theirs. */
function piercings(sheet: Sheet): string[] {
  return sheet.pipes.flatMap((one) =>
    one.points.slice(1).flatMap((to, i) => {
      const from = one.points[i]!;
      if (Math.abs(from.x - to.x) > 0.01 || Math.abs(from.y - to.y) < 1) return [];
      const line = {
        x: from.x - one.width / 2,
        y: Math.min(from.y, to.y),
        width: one.width,
        height: Math.abs(to.y - from.y),
      };
      return standing(sheet)
        .filter(([name, box]) => !name.startsWith(one.place.section) && name !== 'blower' && overlap(line, box))
        .map(([name]) => `${one.place.section} through ${name}`);
    }),
  );
}

const shops: [string, Ductwork][] = [
  ['one machine', ducts([branch('saw', 'blower', 'table saw')])],
  ['three machines', threeMachines()],
  ['a comb of twelve', comb(12)],
  ['four levels', fourLevels()],
  [
    'two mains',
    ducts([
      branch('a', 'one'),
      branch('b', 'one'),
      pipe('one', 'blower', 0.15, DRUM_AND_FILTERS),
      branch('c', 'two'),
      branch('d', 'two'),
      pipe('two', 'blower', 0.15, DRUM_AND_FILTERS),
    ]),
  ],
  [
    'cleaning behind the blower',
    ducts(
      [branch('a', 'm'), branch('b', 'm'), pipe('m', 'blower')],
      [...DRUM_AND_FILTERS, { kind: 'pipe', length_m: 1, diameter_m: 0.15 }],
    ),
  ],
];

describe.each([
  ['tight', TIGHT],
  ['phone', PHONE],
  ['desk', DESK],
])('%s drawing', (_, metrics) => {
  test.each(shops)('nothing stands on anything else: %s', (_name, shop) => {
    const sheet = layout(shop, metrics);
    expect(collisions(sheet)).toEqual([]);
    expect(piercings(sheet)).toEqual([]);
    for (const [, box] of standing(sheet)) {
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(sheet.width);
      expect(box.y).toBeGreaterThanOrEqual(0);
    }
  });

  test('pipes are as wide as their diameter to scale', () => {
    const sheet = layout(threeMachines(), metrics);
    const width = (section: string) => sheet.pipes.find((one) => one.place.section === section)!.width;
    expect(width('planer')).toBeCloseTo(125 / metrics.mmPerPx, 6);
    expect(width('saw')).toBeCloseTo(100 / metrics.mmPerPx, 6);
    expect(width('planer') / width('saw')).toBeCloseTo(1.25, 6);
  });

  test('a branch ends on the middle line of its main', () => {
    const sheet = layout(threeMachines(), metrics);
    const main = sheet.pipes.find((one) => one.place.section === 'main')!;
    for (const id of ['saw', 'band']) {
      const end = sheet.pipes
        .filter((one) => one.place.section === id)
        .at(-1)!
        .points.at(-1)!;
      expect(end.y).toBe(metrics.top);
      expect(end.x).toBeGreaterThan(main.points[0]!.x);
      expect(end.x).toBeLessThan(Math.max(...main.points.map((point) => point.x)));
    }
  });
});

test('every length of pipe of the job is drawn once, in flow order and end to end', () => {
  const shop = fourLevels();
  const sheet = layout(shop, PHONE);
  for (const section of shop.sections) {
    const indices = section.elements.flatMap((element, i) => (element.kind === 'pipe' ? [i] : []));
    const drawn = sheet.pipes.filter((one) => one.place.section === section.id && one.place.index !== null);
    expect(drawn.map((one) => one.place.index)).toEqual(indices);
  }
  const [hose, rigid] = sheet.pipes.filter((one) => one.place.section === 'a1');
  expect(hose!.hose).toBe(true);
  expect(hose!.points.at(-1)).toEqual(rigid!.points[0]);
});

/** A main of two halves, each of two halves, and so on; a machine at every end. */
function halves(depth: number): Ductwork {
  const grow = (id: string, into: string, left: number): Section[] =>
    left === 0
      ? [branch(id, into, 'saw')]
      : [pipe(id, into), ...grow(`${id}0`, id, left - 1), ...grow(`${id}1`, id, left - 1)];
  return ducts(grow('m', 'blower', depth));
}

test('a main that runs under another main is drawn lower, and the sheet grows with it', () => {
  const flat = layout(threeMachines(), PHONE);
  const deep = layout(halves(4), PHONE);
  const heightOf = (sheet: Sheet, id: string) => sheet.pipes.find((one) => one.place.section === id)!.points[0]!.y;
  expect(heightOf(deep, 'm')).toBe(PHONE.top);
  expect(heightOf(deep, 'm1')).toBe(PHONE.top + PHONE.levelStep);
  expect(heightOf(deep, 'm11')).toBe(PHONE.top + 2 * PHONE.levelStep);
  expect(collisions(deep)).toEqual([]);
  expect(piercings(deep)).toEqual([]);
  expect(deep.floorY).toBeGreaterThan(flat.floorY);
});

test('a gate is drawn for each section that has one, and gates of risers hang level', () => {
  const gates = layout(threeMachines(), DESK).marks.filter((mark) => mark.kind === 'gate');
  expect(gates.map((gate) => gate.place.section).sort()).toEqual(['band', 'planer', 'saw']);
  expect(new Set(gates.map((gate) => Math.round(gate.at.y))).size).toBe(1);
});

test('what leads to no blower is named, not drawn', () => {
  const sheet = layout(ducts([branch('saw', 'blower'), branch('lost', 'nowhere'), pipe('round', 'round')]), PHONE);
  expect(sheet.unplaced).toEqual(['lost', 'round']);
  expect(sheet.machines.map((machine) => machine.section)).toEqual(['saw']);
});

test('a shop without any duct still has its blower', () => {
  const sheet = layout({ sections: [], discharge: [], exhaust: 'outdoors' } as Ductwork, PHONE);
  expect(sheet.machines).toEqual([]);
  expect(sheet.blower.box.x).toBeGreaterThan(0);
});

test('a comb of a thousand machines is laid out without running out of stack', () => {
  const sheet = layout(comb(1000), PHONE);
  expect(sheet.machines).toHaveLength(1000);
  expect(sheet.unplaced).toEqual([]);
});

test('sizes between two drawings lie between them', () => {
  const middle = between(PHONE, DESK, 0.5);
  expect(middle.gap).toBe((PHONE.gap + DESK.gap) / 2);
  expect(middle.filters.width).toBe((PHONE.filters.width + DESK.filters.width) / 2);
});

test('at a junction the child with most machines runs straight on', () => {
  const { root } = lineTree([
    branch('a', 'x'),
    branch('b', 'y'),
    branch('c', 'y'),
    pipe('y', 'x'),
    pipe('x', 'blower'),
  ]);
  expect(root!.sections.map((section) => section.id)).toEqual(['b', 'y', 'x']);
  expect(root!.branches.map((at) => at.map((line) => line.sections[0]!.id))).toEqual([[], ['c'], ['a']]);
});

test('any tree is drawn whole, inside its sheet, with nothing standing on anything else', () => {
  const tree = fc.array(fc.nat(), { minLength: 0, maxLength: 14 }).map((parents): Section[] => {
    const mains = parents.map((parent, i): Section =>
      pipe(`s${i}`, i === 0 ? 'blower' : `s${parent % i}`, 0.1 + (parent % 7) * 0.02),
    );
    const leaves = mains.filter((main) => !mains.some((other) => other.into === main.id));
    return [
      ...mains,
      ...leaves.flatMap((leaf, i) => [branch(`m${i}`, leaf.id, ['saw', 'planer', 'lathe'][i % 3])]),
      ...(mains.length === 0 ? [branch('only', 'blower')] : []),
    ];
  });
  fc.assert(
    fc.property(tree, (sections) => {
      const sheet = layout(ducts(sections), PHONE);
      expect(collisions(sheet)).toEqual([]);
      expect(sheet.machines).toHaveLength(sections.filter((section) => section.pickup).length);
      for (const one of sheet.pipes) {
        for (const point of one.points) {
          expect(Number.isFinite(point.x) && Number.isFinite(point.y)).toBe(true);
          expect(point.x).toBeLessThanOrEqual(sheet.width);
        }
      }
    }),
    { numRuns: 150, seed: 7 },
  );
});
