import { describe, expect, test } from 'vitest';
import { withoutMarkers } from '../../../../src/chart/labels/plot-words.ts';

const read = (...texts: string[]) => texts.map((text) => ({ r: { text } }));

describe('what was read in a plot', () => {
  test('the same letter at many places is a marker', () => {
    expect(withoutMarkers(read('2600 rpm', 'A', 'A', 'a', '“A', 'O', 'x.', 'X', '×x'))).toEqual(read('2600 rpm', 'O'));
  });

  test('rings in a row are markers too, whatever they are read as', () => {
    expect(withoutMarkers(read('830', 'O', 'oO', '— 0', 'QO'))).toEqual(read('830'));
  });

  test('names and speeds stay, however often they are printed', () => {
    const names = read('ps', 'pt', '60%', '60%', '60%', '1450', '1450', '1450', 'A', 'B');
    expect(withoutMarkers(names)).toEqual(names);
  });
});
