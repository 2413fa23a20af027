import { describe, expect, test } from 'vitest';
import { asPossible } from '../../../src/readings-sheet/columns/possible-size.ts';
import type { Weighed } from '../../../src/readings-sheet/columns/weigh-column.ts';
import { columnTrust } from '../../../src/readings-sheet/doubts/column-trust.ts';
import { areTorn, rowDoubts } from '../../../src/readings-sheet/doubts/row-doubts.ts';
import type { ReadCell } from '../../../src/readings-sheet/cells/read-cells.ts';
import { unitCalled } from '../../../src/units/names.ts';

const read = (value: number, chance = 0.99): Weighed => ({ text: String(value), value, chance });
const even = (count: number) => ({ isDoubtful: Array.from({ length: count }, () => false), isFirstSure: true });

describe('rows', () => {
  test('of which each has what the next lacks were torn apart', () => {
    const [number, rest, all] = [
      [true, false, false],
      [false, true, true],
      [true, true, true],
    ];
    expect(areTorn([all, number, rest, number, rest])).toBe(true);
    expect(areTorn([all, number, rest, all])).toBe(false);
    expect(areTorn([all, [true, true, false], [true, false, true], all])).toBe(false);
  });

  test('whose numbers count from one are in their places, whatever the steps', () => {
    const places = { isDoubtful: [false, true, false, false], isFirstSure: false };
    expect(
      rowDoubts(
        places,
        [1, 2, 3, 4].map((n) => read(n)),
      ),
    ).toEqual([false, false, false, false]);
  });

  test('that count from two have lost the first: all are doubted', () => {
    expect(
      rowDoubts(
        even(4),
        [2, 3, 4, 5].map((n) => read(n)),
      ),
    ).toEqual([true, true, true, true]);
  });

  test('with another number than its place asks for is doubted, with an unlikely one not', () => {
    expect(rowDoubts(even(4), [read(1), read(2), read(7), read(4)])).toEqual([false, false, true, false]);
    expect(rowDoubts(even(4), [read(1), read(2), read(7, 0.2), read(4)])).toEqual([false, false, false, false]);
  });

  test('without numbers: uneven steps are doubted, and all where another row fits under the header', () => {
    expect(rowDoubts({ isDoubtful: [false, true], isFirstSure: true }, null)).toEqual([false, true]);
    expect(rowDoubts({ isDoubtful: [false, true], isFirstSure: false }, null)).toEqual([true, true]);
  });
});

describe('a column', () => {
  const cells = (count: number) =>
    Array.from({ length: count }, (): ReadCell => ({
      row: 0,
      column: 0,
      blots: [],
      isStained: false,
      isCut: false,
      heard: { blots: [], digit: 30, own: [], reads: [] },
      spellings: [],
      content: { kind: 'number', blots: [], isOne: true },
    }));
  const smooth = [100, 96, 90, 82, 72, 60, 46, 30];

  test('that goes down steadily and reads well is trusted', () => {
    expect(
      columnTrust(
        cells(8),
        smooth.map((v) => read(v)),
      ),
    ).toBe(1);
  });

  test('that is mostly unreadable, or jumps up and down, is not', () => {
    const hard = smooth.map((v, row) => read(v, row % 4 ? 0.3 : 0.99));
    expect(columnTrust(cells(8), hard)).toBeLessThan(0.6);
    const jumpy = [100, 1, 1251, 7, 1525, 13, 900, 23].map((v) => read(v));
    expect(columnTrust(cells(8), jumpy)).toBeLessThan(0.97);
  });

  test('of readings that cannot be is doubted: no motor takes two watts', () => {
    const named = { quantity: 'inputPower_W', sureness: 1 } as const;
    const values = [1.8, 1.9, 2].map((v) => read(v));
    expect(asPossible({ ...named, unit: unitCalled('W') }, values).sureness).toBeLessThan(0.6);
    expect(asPossible({ ...named, unit: unitCalled('kW') }, values).sureness).toBe(1);
  });

  test('no blower gives so few litres a minute: they are cubic metres, to be checked', () => {
    const flow = { quantity: 'flow_m3_s', unit: unitCalled('L/min'), sureness: 1 } as const;
    const found = asPossible(flow, [read(6.04), read(24.29), read(59.78)]);
    expect([found.unit?.unit, found.sureness]).toEqual(['m³/min', 0.5]);
  });
});
