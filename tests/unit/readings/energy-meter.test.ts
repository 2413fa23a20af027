import { expect, it } from 'vitest';
import { energyMeterPower } from '../../../src/readings/index.ts';

it('a meter that flashes 1000 times a kilowatt hour shows 3600 W at one flash a second', () => {
  // definition: 1000 flashes are 3.6 MJ
  expect(energyMeterPower(1, 1, 1000)).toBe(3600);
  expect(energyMeterPower(20, 48, 800)).toBeCloseTo(1875, 9);
});

it('a disc of 375 turns a kilowatt hour is counted in the same way', () => {
  expect(energyMeterPower(5, 32, 375)).toBeCloseTo(1500, 9);
});

it.each([
  [0, 10, 800],
  [10, 0, 800],
  [10, 10, Number.NaN],
])('%s flashes in %s s at %s a kWh are no figures to work with', (...figures) => {
  expect(() => energyMeterPower(...figures)).toThrow('energyMeterPower: expected positive figures');
});
