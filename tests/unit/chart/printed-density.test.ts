import { expect, test } from 'vitest';
import { printedDensity } from '../../../src/chart/printed-density.ts';

const said = (...texts: string[]): number | null => printedDensity(texts.map((text) => ({ text })));

test('the density of the chart’s air is found among the words near the plot', () => {
  expect(said('At 2900 rpm, air 1.2 kg/m³.', 'Type K-4')).toBe(1.2);
  expect(said('Luftdichte 1,184 kg / m3')).toBe(1.184);
  expect(said('Air 1.2 kg/m*', 'density 1.20 kg/m?')).toBe(1.2);
});

test('what is no air, or said in two ways, is nothing', () => {
  expect(said('steel 7.8 kg/m', 'mass 12 kg')).toBeNull();
  expect(said('1.2 kg/m3', '0.9 kg/m3')).toBeNull();
  expect(said()).toBeNull();
});
