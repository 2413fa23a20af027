import { describe, expect, test } from 'vitest';
import { weighColumn } from '../../../src/readings-sheet/columns/weigh-column.ts';

const sure = (text: string) => [{ text, logLikelihood: 0 }];

describe('a column as a witness', () => {
  test('a count is carried on through a doubtful number', () => {
    const cells = [
      sure('1'),
      sure('2'),
      [
        { text: '8', logLikelihood: 0 },
        { text: '3', logLikelihood: -2 },
      ],
      sure('4'),
    ];
    expect(weighColumn(cells, true).map((w) => w!.value)).toEqual([1, 2, 3, 4]);
  });

  test('a point that was not seen is put where the others have theirs', () => {
    const read = weighColumn(
      [sure('3.10'), sure('3.66'), sure('425'), sure('4.88'), sure('5.48'), sure('6.18')],
      false,
    );
    expect(read[2]).toMatchObject({ text: '4.25', value: 4.25 });
  });

  test('of two spellings the one that goes on smoothly is taken', () => {
    const cells = ['2122', '2160', '2000', '1821', '1436', '848'].map(sure);
    cells[3] = [
      { text: '1321', logLikelihood: 0 },
      { text: '1821', logLikelihood: -0.7 },
    ];
    expect(weighColumn(cells, false)[3]!.value).toBe(1821);
  });

  test('an empty cell stays empty', () => {
    expect(weighColumn([sure('1.2'), [], sure('1.4')], false)[1]).toBeNull();
  });
});
