import { describe, expect, test } from 'vitest';
import { headCells } from '../../../src/readings-sheet/heads/head-cells.ts';

const CAPITAL = 20;
/** Words set one after the other: text, where it begins, how wide. */
const words = (...list: readonly (readonly [string, number, number])[]) =>
  list.map(([text, x0, wide]) => ({ text, x0, x1: x0 + wide, capitalHeight: CAPITAL }));

describe('what stands over columns', () => {
  test('without rulings: a heading wider than its column stays whole', () => {
    const row = words(
      ['Ponto', 20, 60],
      ['Pressão', 110, 90],
      ['estática', 208, 90],
      ['daPa', 306, 50],
      ['A', 400, 15],
    );
    expect(headCells(row, { xs: [0, 180, 370, 450], drawn: [] })).toEqual(['Ponto', 'Pressão estática daPa', 'A']);
  });

  test('between rulings every word belongs where it stands', () => {
    const row = words(['Q', 20, 20], ['m³/h', 70, 50], ['I', 140, 8], ['A', 160, 20]);
    expect(headCells(row, { xs: [0, 130, 200], drawn: [0, 130, 200] })).toEqual(['Q m³/h', 'I A']);
  });

  test('where a heading was not read the others keep their places', () => {
    const row = words(['Strom', 210, 60], ['rpm', 330, 40]);
    expect(headCells(row, { xs: [0, 150, 300, 420], drawn: [] })).toEqual(['', 'Strom', 'rpm']);
  });
});
