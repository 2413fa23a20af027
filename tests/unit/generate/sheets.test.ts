import { describe, expect, test } from 'vitest';
import { composeSheet, tableOf } from '../../../fixtures/generate/readings-sheet/compose.ts';
import { drawSheet, type SheetManner } from '../../../fixtures/generate/readings-sheet/draw-sheet.ts';
import { handOf } from '../../../fixtures/generate/readings-sheet/hands.ts';
import { otherWaysOf, writtenOtherwise } from '../../../fixtures/generate/readings-sheet/other-ways.ts';
import { inventTest } from '../../../fixtures/generate/readings-sheet/measure.ts';
import { randomFrom } from '../../../fixtures/generate/random.ts';
import { unitByName } from '../../../src/units/index.ts';

const MANNERS: readonly SheetManner[] = ['printed form', 'by hand', 'printed record'];
const sheets = Array.from({ length: 120 }, (_, k) => {
  const random = randomFrom(300 + k);
  const manner = MANNERS[k % 3]!;
  const copy = composeSheet(random, manner !== 'printed record');
  return { copy, table: tableOf(copy), drawn: drawSheet(random, copy, manner, handOf(random, true), true) };
});

describe('invented sheets of readings', () => {
  test('tell of a blower that gives way as it is opened', () => {
    for (let k = 0; k < 50; k++) {
      const { readings, duct_m } = inventTest(randomFrom(k));
      const [closed, open] = [readings[0]!, readings.at(-1)!];
      expect(open.staticPressure_Pa).toBeLessThan(0.2 * closed.staticPressure_Pa);
      expect(open.speed_rpm).toBeLessThan(closed.speed_rpm);
      for (const r of readings.slice(1))
        expect(r.flow_m3_s / (r.velocity_m_s * 0.25 * Math.PI * duct_m ** 2)).toBeCloseTo(1, 1);
    }
  });

  test('say in figures what their truth says, ditto marks the value above', () => {
    for (const { table } of sheets)
      table.rows.forEach((row, r) =>
        row.forEach((value, c) => {
          const said = table.asPrinted[r]![c] ?? null;
          if (value === null) return expect(said).toBeNull();
          const read = /\d/.test(said!) ? Number(said!.replace(',', '.')) : table.rows[r - 1]![c];
          expect(read).toBe(value);
        }),
      );
  });

  test('use units the program knows, with its factors', () => {
    for (const { table } of sheets)
      for (const { unit, siFactor } of table.columns.filter((c) => c.unit && c.unit !== '%')) {
        // min⁻¹ and its like count turns: the program's factor is to turns a second or a minute
        if (/min|rpm|tr/.test(unit) && siFactor === 1) continue;
        expect([unit, unitByName(unit)!.factor / siFactor]).toEqual([unit, expect.closeTo(1, 4)]);
      }
  });

  test('place every cell and head entry once, on the paper', () => {
    for (const { copy, drawn } of sheets) {
      const cells = copy.cells.flatMap((row, r) => row.flatMap((c, k) => (c.text ? [`r${r}c${k}`] : [])));
      const heads = copy.head.flatMap((e) => (e.name ? [e.name] : []));
      expect(drawn.placed.map((p) => p.name).toSorted()).toEqual([...cells, ...heads].toSorted());
      const outside = drawn.placed.filter(
        ({ box: b }) => b.x < 0 || b.y < 0 || b.x + b.width > drawn.width || b.y + b.height > drawn.height,
      );
      expect(outside).toEqual([]);
    }
  });

  test('have slips of the pen, cells without a value and every way to write a unit', () => {
    const cells = sheets.flatMap(({ copy }) => copy.cells.flat());
    expect(cells.filter((c) => c.struck).length).toBeGreaterThan(10);
    expect(cells.filter((c) => c.ditto).length).toBeGreaterThan(5);
    expect(cells.filter((c) => c.value === null).length).toBeGreaterThan(10);
    for (const place of ['under', 'behind', 'brackets', 'round', 'slash', 'comma'])
      expect(sheets.some(({ drawn }) => drawn.layout.includes(`units ${place}`))).toBe(true);
  });

  test('set out in other ways stay on the paper and say the same numbers', () => {
    const said = new Set<string>();
    sheets.forEach(({ copy }, k) => {
      const random = randomFrom(900 + k);
      const other = writtenOtherwise(random, copy);
      const drawn = drawSheet(random, other.copy, MANNERS[k % 3]!, handOf(random, true), true, otherWaysOf(random));
      expect(tableOf(other.copy).rowsSI).toEqual(tableOf(copy).rowsSI);
      const outside = drawn.placed.filter(
        ({ box: b }) => b.x < 0 || b.y < 0 || b.x + b.width > drawn.width || b.y + b.height > drawn.height,
      );
      expect(outside).toEqual([]);
      for (const way of other.said) said.add(way);
    });
    expect([...said].toSorted()).toEqual([
      'in cs',
      'in sv',
      'in ur',
      'in zh',
      'raised points',
      'units behind readings',
    ]);
  });
});
