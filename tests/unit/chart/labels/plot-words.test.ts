import { describe, expect, test } from 'vitest';
import { withoutMarkers } from '../../../../src/chart/labels/plot-words.ts';

const read = (...texts: string[]) => texts.map((text) => ({ r: { text } }));

describe('what was read in a plot', () => {
  test('the same letter at many places is a marker', () => {
    expect(withoutMarkers(read('2600 rpm', 'A', 'A', 'a', '“A', 'O', 'x.', 'X', '×x'))).toEqual(read('2600 rpm', 'O'));
  });

  test('names and speeds stay, however often they are printed', () => {
    const names = read('ps', 'pt', '60%', '60%', '60%', '1450', '1450', '1450', 'A', 'B');
    expect(withoutMarkers(names)).toEqual(names);
  });
});
