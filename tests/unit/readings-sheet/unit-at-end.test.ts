import { describe, expect, test } from 'vitest';
import { asLatin } from '../../../src/readings-sheet/heads/cyrillic.ts';
import { misreadings } from '../../../src/readings-sheet/heads/misread.ts';
import { unitsAtEnd } from '../../../src/readings-sheet/heads/unit-at-end.ts';

describe('the unit at the end of a heading', () => {
  test.each([
    ['Static pressure (mm H2O)', 'mm water', 'Static pressure'],
    ['Statik basing fmm H20)', 'mm water', 'Statik basing'],
    ['pst. nm H20', 'mm water', 'pst.'],
    ['PlkW]', 'kW', 'P'],
    ['Qim3/h]', 'm³/h', 'Q'],
    ['Debi (Is)', 'L/s', 'Debi'],
    ['Air flow U/s', 'L/s', 'Air flow'],
    ['Obroty min-1', 'rpm', 'Obroty'],
    ['Opening / %', '%', 'Opening'],
  ])('%s', (heading, unit, name) => {
    const [best] = unitsAtEnd(heading);
    expect(best!.unit.unit).toBe(unit);
    expect(best!.names.map((text) => text.replace(/[\s(/]+$/, ''))).toContain(name);
  });

  test('is none where a word only ends like one, and a lone letter counts by itself only', () => {
    for (const heading of ['Portata', 'Damper', 'Power input [ew]', 'Volumenstrom'])
      expect(unitsAtEnd(heading)).toEqual([]);
    expect(unitsAtEnd('Corrente A')[0]!.unit.unit).toBe('A');
  });
});

test('look-alikes cost less than other letters, strokes and points little', () => {
  expect(misreadings('kw', 'kw')).toBe(0);
  expect(misreadings('h20', 'h2o')).toBeLessThan(misreadings('h2x', 'h2o'));
  expect(misreadings('min1', 'min-1')).toBeLessThan(misreadings('mn-1', 'min-1'));
});

test('Cyrillic letters are what they look like', () => expect(asLatin('обороты n')).toBe('o6opotbl n'));
