import { describe, expect, test } from 'vitest';
import { assess } from '../../../../src/index.ts';
import { ELEMENT_KINDS } from '../../../../src/duct/index.ts';
import { FAMILY_NAMES } from '../../../../src/fan/families.ts';
import { airInPipes, speedAt } from '../../../../web/ducts/airflow.ts';
import { biggest, sharesOf } from '../../../../web/ducts/budget-shares.ts';
import { dune } from '../../../../web/ducts/dune.ts';
import { fieldsOf, nameLabel } from '../../../../web/ducts/fields.ts';
import { bladePath, bladesToDraw } from '../../../../web/ducts/glyphs/blades.ts';
import { MACHINE_SHAPES } from '../../../../web/ducts/glyphs/machine-shapes.ts';
import { layout, PHONE } from '../../../../web/ducts/layout.ts';
import { MACHINE_KINDS, machineKind } from '../../../../web/ducts/layout/machine-kinds.ts';
import { clearOfCorners, lengthOf, roundedPath, slice } from '../../../../web/ducts/layout/polyline.ts';
import { familiesFor, familyOf, TRADE_SIZES } from '../../../../src/pipe/index.ts';
import { USUAL_FLOWS, usualMiddle_m3_s } from '../../../../web/ducts/usual-machines.ts';
import { jobWith, threeMachines } from './shops.ts';

describe('lines', () => {
  const bend = [
    { x: 0, y: 0 },
    { x: 0, y: -100 },
    { x: 60, y: -100 },
  ];
  test('are as long as their straights and can be cut anywhere', () => {
    expect(lengthOf(bend)).toBe(160);
    expect(slice(bend, 90, 130)).toEqual([
      { x: 0, y: -90 },
      { x: 0, y: -100 },
      { x: 30, y: -100 },
    ]);
  });
  test('are never cut inside a bend', () => {
    expect(clearOfCorners(bend, 96, 12)).toBe(88);
    expect(clearOfCorners(bend, 104, 12)).toBe(112);
    expect(clearOfCorners(bend, 50, 12)).toBe(50);
  });
  test('become a path with the corner rounded', () => {
    expect(roundedPath(bend, 10)).toBe('M0 0L0 -90Q0 -100 10 -100L60 -100');
  });
});

describe('machines', () => {
  test.each([
    ['Thickness planer', 'planer'],
    ['16" band saw', 'band-saw'],
    ['table saw', 'table-saw'],
    ['بینڈ آرا', 'band-saw'],
    ['رندہ مشین', 'planer'],
    ['overlock machine', 'sewing'],
    ['belt sander', 'sander'],
    ['double grinder', 'grinder'],
    ['something else', 'generic'],
  ])('%s is drawn as %s', (name, kind) => {
    expect(machineKind(name).kind).toBe(kind);
  });
  test('every kind has its drawing, and its port lies on it', () => {
    for (const { kind, left, right, height, port } of MACHINE_KINDS) {
      expect(MACHINE_SHAPES[kind].bodies.length).toBeGreaterThan(0);
      expect(port.x).toBeGreaterThanOrEqual(-left);
      expect(port.x).toBeLessThanOrEqual(right);
      expect(-port.y).toBeLessThanOrEqual(height);
    }
  });
});

test('a wheel has as many blades drawn as it has', () => {
  expect(bladesToDraw('radial', 8)).toBe(8);
  expect(bladesToDraw('radial', null)).toBeGreaterThan(0);
  for (const family of FAMILY_NAMES) expect(bladePath(family, 11, 4, 15).match(/M/g)).toHaveLength(11);
});

test('air stands in the drawn pipes at the speed of their own width, and only slow dusty pipes settle', () => {
  const job = jobWith(threeMachines());
  const one = assess(job).cases.find((c) => c.gatePlan === 'saw alone' && c.filterState === 'clean')!;
  const sheet = layout(job.ductwork, PHONE);
  const air = airInPipes(sheet.pipes, job.ductwork, one);
  const flow = one.sections.find((section) => section.id === 'saw')!.flow_m3_s;
  for (const pipe of sheet.pipes) {
    const now = air.get(pipe)!;
    if (pipe.place.section === 'saw') expect(now.speed_m_s).toBeCloseTo(speedAt(flow, 0.1), 9);
    if (now.settles) expect(now.speed_m_s).toBeLessThan(now.needed_m_s!);
    // behind the drum there is no dust to settle
    if (pipe.place.section === 'main' && pipe.place.index! > 1) expect(now.needed_m_s).toBeNull();
  }
  expect(airInPipes(sheet.pipes, job.ductwork, null).get(sheet.pipes[0]!)!.speed_m_s).toBe(0);
});

test('a dune lies on the floor of a level pipe, and none in one that only climbs', () => {
  const level = {
    place: { section: 'a', index: 0 },
    points: [
      { x: 0, y: 50 },
      { x: 100, y: 50 },
    ],
    width: 20,
    radius: 8,
    hose: false,
    diameter_m: 0.15,
  };
  const heap = dune(level)!;
  for (const grain of heap.grains) {
    expect(grain.y).toBeLessThan(60);
    expect(grain.y).toBeGreaterThan(50);
  }
  expect(
    dune({
      ...level,
      points: [
        { x: 0, y: 0 },
        { x: 0, y: 90 },
      ],
    }),
  ).toBeNull();
});

test('shares of the pressure budget fill the bar, zeros left out', () => {
  const shares = sharesOf([
    { part: 'hood', pressure_Pa: 300 },
    { part: 'hose', pressure_Pa: 0 },
    { part: 'pipe', pressure_Pa: 700 },
  ]);
  expect(shares.map(({ part, from, share }) => [part, from, share])).toEqual([
    ['hood', 0, 0.3],
    ['pipe', 0.3, 0.7],
  ]);
  expect(biggest(shares)!.part).toBe('pipe');
  expect(sharesOf([{ part: 'hood', pressure_Pa: 0 }])).toEqual([]);
});

describe('rows of the editor', () => {
  test.each(ELEMENT_KINDS.map((record) => record.kind))('every field of %s has a row with a label', (kind) => {
    const rows = fieldsOf(kind as Parameters<typeof fieldsOf>[0]);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      expect(row.label).not.toBe('');
      if (row.input === 'choice') expect(row.options.length).toBeGreaterThan(1);
    }
  });
  test('know what must be given, reach into parts of parts, and call names as people do', () => {
    const pipe = fieldsOf('pipe');
    expect(pipe.find((row) => row.path === 'diameter_m')).toMatchObject({
      required: true,
      input: 'quantity',
      quantity: 'length',
    });
    expect(pipe.find((row) => row.path === 'surface')).toMatchObject({ required: false, input: 'choice' });
    expect(fieldsOf('filters').map((row) => row.path)).toContain('each/cleanPressure_Pa');
    expect(fieldsOf('cyclone').find((row) => row.path === 'drum/height_m')!.required).toBe(false);
    expect(nameLabel('surface', 'flexible-hose')).toContain('hose');
    expect(nameLabel('surface', 'my-own-pipe')).toBe('my own pipe');
  });
});

describe('sizes as sold', () => {
  // least walls of PVC-U soil and waste pipe, EN 1329-1 table for area B: 3.0 mm to OD 90, 3.2 mm to OD 160, 3.9 mm at OD 200
  test('drain pipe counts by its inside: outside less two walls', () => {
    const inside = familiesFor('drain-pipe')[0]!.sizes.map((size) => [size.name, Math.round(size.inside_m * 1e4) / 10]);
    expect(inside).toEqual([
      ['75', 69],
      ['90', 84],
      ['110', 103.6],
      ['125', 118.6],
      ['160', 153.6],
      ['200', 192.2],
    ]);
  });
  test('every family rises in size and says where it comes from', () => {
    for (const { sizes, source } of TRADE_SIZES) {
      expect(source.length).toBeGreaterThan(20);
      sizes.slice(1).forEach((size, i) => expect(size.inside_m).toBeGreaterThan(sizes[i]!.inside_m));
    }
    expect(familiesFor(undefined).map(({ family }) => family)).toEqual(['drain', 'inch-pipe']);
    expect(familiesFor('flexible-hose').map(({ family }) => family)).toEqual(['hose']);
  });
  test('a pipe belongs to the family that has its size, else to the usual one', () => {
    expect(familyOf('drain-pipe', 0.1036).family).toBe('drain');
    expect(familyOf('drain-pipe', 0.1023).family).toBe('inch-pipe');
    expect(familyOf('drain-pipe', 0.0951).family).toBe('drain');
    expect(familyOf('galvanised-duct', 0.1524).family).toBe('inch-sheet');
  });
});

test('usual flows of machines are ranges with a source, their middle a round figure', () => {
  for (const usual of Object.values(USUAL_FLOWS)) {
    expect(usual.high_m3_s).toBeGreaterThan(usual.low_m3_s);
    expect(usual.source).not.toBe('');
    const said = usualMiddle_m3_s(usual) * 360;
    expect(said).toBeCloseTo(Math.round(said), 9);
  }
  // 350–450 cubic feet a minute are 595–765 m3/h
  expect(USUAL_FLOWS['table-saw']!.low_m3_s * 3600).toBeCloseTo(594.7, 1);
});
