import { describe, expect, it } from 'vitest';
import { ratingsOf, suitedTo } from '../../../../web/plate/ratings.ts';
import { readingOf } from './readings-of-plates.ts';

const starDelta = readingOf({ voltage_V: [380, 220], current_A: [8.54, 4.94], ratedPower_W: 2200, phases: 3 });
const kenya = { voltage_V: 400, phases: 3, frequency_Hz: 50 } as const;

describe('the ways a motor may be run', () => {
  it('is one way for a plate that prints everything once', () => {
    const [only, ...more] = ratingsOf(readingOf({ voltage_V: [230], current_A: [3.78], phases: 1 }));
    expect(more).toEqual([]);
    expect([only!.values.voltage_V, only!.values.current_A, only!.joint]).toEqual([230, 3.78, null]);
  });

  it('joins higher volts with fewer amps, whatever the order of print, and knows star from delta', () => {
    expect(ratingsOf(starDelta).map(({ values, joint }) => [values.voltage_V, values.current_A, joint])).toEqual([
      [220, 8.54, 'delta'],
      [380, 4.94, 'star'],
    ]);
  });

  it('leaves the amps open where fewer are printed than volts, unless the volts are one range', () => {
    const twice = ratingsOf(readingOf({ voltage_V: [230, 460], current_A: [12.2] }));
    expect(twice.map(({ values }) => values.current_A)).toEqual([undefined, undefined]);
    const range = ratingsOf(readingOf({ voltage_V: [380, 415], current_A: [4.9] }));
    expect(range.map(({ values }) => values.current_A)).toEqual([4.9, 4.9]);
    const both = ratingsOf(readingOf({ voltage_V: [208, 230, 460], current_A: [6.6, 3.3] }));
    expect(both.map(({ values }) => values.current_A)).toEqual([6.6, 6.6, 3.3]);
  });

  it('knows star from delta between two ranges of volts too', () => {
    const ways = ratingsOf(readingOf({ voltage_V: [220, 240, 380, 415], current_A: [2, 1.16] }));
    expect(ways.map(({ values, joint }) => [values.voltage_V, values.current_A, joint])).toEqual([
      [220, 2, 'delta'],
      [240, 2, 'delta'],
      [380, 1.16, 'star'],
      [415, 1.16, 'star'],
    ]);
  });

  it('puts the speed and power of each frequency together', () => {
    const ways = ratingsOf(
      readingOf({ frequency_Hz: [50, 60], speed_rpm: [1420, 1710], ratedPower_W: [1500, 1800], voltage_V: [230] }),
    );
    expect(ways.map(({ values: v }) => [v.frequency_Hz, v.speed_rpm, v.ratedPower_W, v.voltage_V])).toEqual([
      [50, 1420, 1500, 230],
      [60, 1710, 1800, 230],
    ]);
  });

  it('keeps volts that go with their frequency apart from star and delta', () => {
    const ways = ratingsOf(readingOf({ frequency_Hz: [50, 60], voltage_V: [400, 460], current_A: [3.4, 3.4] }));
    expect(ways.map(({ values: v }) => [v.frequency_Hz, v.voltage_V])).toEqual([
      [50, 400],
      [60, 460],
    ]);
  });

  it('takes rating rows as they stand, each with its own star and delta', () => {
    const ways = ratingsOf(
      readingOf(
        { voltage_V: [230, 400, 460], ratedPower_W: [1500, 1800] },
        {
          ratings: [
            { frequency_Hz: 50, voltage_V: [230, 400], current_A: [6.1, 3.5], ratedPower_W: 1500 },
            { frequency_Hz: 60, voltage_V: 460, current_A: 3.6, ratedPower_W: 1800 },
          ],
        },
      ),
    );
    expect(ways.map(({ values: v }) => [v.frequency_Hz, v.voltage_V, v.current_A, v.ratedPower_W])).toEqual([
      [50, 230, 6.1, 1500],
      [50, 400, 3.5, 1500],
      [60, 460, 3.6, 1800],
    ]);
  });
});

describe('the way that suits a mains', () => {
  it('has the nearest volts', () => {
    expect(suitedTo(ratingsOf(starDelta), kenya, 3)).toBe(1);
    expect(suitedTo(ratingsOf(starDelta), { voltage_V: 230, phases: 1 }, 3)).toBe(0);
  });

  it('has the mains’ frequency before its volts', () => {
    const ways = ratingsOf(readingOf({ frequency_Hz: [60, 50], voltage_V: [400, 380] }));
    expect(ways[suitedTo(ways, kenya, 3)]!.values.frequency_Hz).toBe(50);
  });

  it('lets a one-phase motor hang between a line and neutral', () => {
    const ways = ratingsOf(readingOf({ voltage_V: [115, 230], current_A: [12, 6], phases: 1 }));
    expect(ways[suitedTo(ways, kenya, 1)]!.values.voltage_V).toBe(230);
  });

  it('takes usual mains where nothing is said of them', () => {
    const ways = ratingsOf(readingOf({ voltage_V: [400, 690], current_A: [10.8, 6.27] }));
    expect(ways[suitedTo(ways, {}, 3)]!.values.voltage_V).toBe(400);
  });
});
