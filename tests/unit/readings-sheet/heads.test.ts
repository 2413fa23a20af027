import { describe, expect, test } from 'vitest';
import { beforeBlank } from '../../../src/readings-sheet/heads/head-number.ts';
import { headValue } from '../../../src/readings-sheet/heads/head-value.ts';
import { asSaid } from '../../../src/readings-sheet/heads/said-number.ts';
import type { Blot } from '../../../src/readings-sheet/ink/blots.ts';
import { unitCalled } from '../../../src/units/names.ts';
import type { ReadWord } from '../../../src/writing/index.ts';

const blot = (x0: number, x1: number): Blot => ({ x0, x1, y0: 0, y1: 30, pixels: [], cx: 0, cy: 15, level: 1 });
const word = (text: string, cutBefore = false): ReadWord => ({
  text,
  cutBefore,
  cutBehind: false,
  glyphs: [],
  x0: 0,
  x1: 1,
  y0: 0,
  y1: 1,
  capitalHeight: 1,
  line: 0,
  seen: 1,
  passes: 1,
});
const spelling = (text: string, logLikelihood = -0.1) => ({ text, logLikelihood });

describe('a number before its unit', () => {
  test('ends at a blank wider than those between its figures', () => {
    const all = [blot(0, 20), blot(23, 35), blot(38, 50), blot(64, 90)];
    expect(beforeBlank({ blots: all, digit: 30 })?.blots).toHaveLength(3);
  });

  test('is whole where no blank stands out', () => {
    expect(beforeBlank({ blots: [blot(0, 20), blot(26, 46), blot(51, 71)], digit: 30 })).toBeNull();
  });
});

describe('a number read in its line of text too', () => {
  test('is as likely as before where both agree', () => {
    expect(asSaid([spelling('98.3'), spelling('88.3', -4)], [word('98,3'), word('kPa')])[0]).toEqual(spelling('98.3'));
  });

  test('is what the line says where the ink was read badly, and then no sure thing', () => {
    const [best, next] = asSaid([spelling('7', -5.5)], [word('17°C')]);
    expect([best!.text, next!.text]).toEqual(['17', '7']);
    expect(best!.logLikelihood - next!.logLikelihood).toBeLessThan(2);
  });

  test.each(['490s', 'an', '-'])('tells nothing where the line reads “%s”', (text) => {
    expect(asSaid([spelling('405')], [word(text)])).toEqual([spelling('405')]);
  });

  test('tells nothing where a part of it may be missing', () => {
    expect(asSaid([spelling('405')], [word('5', true)])).toEqual([spelling('405')]);
  });
});

describe('a value of the head', () => {
  test('of a unit it cannot have is in the one its size tells, and less likely', () => {
    const value = headValue('barometer_Pa', [spelling('1002')], unitCalled('Pa'));
    expect(value).toMatchObject({ value: 100_200, asPrinted: '1002 hPa' });
    expect(value!.chance).toBeLessThan(0.61);
  });

  test('is no number that begins with a nought', () => {
    expect(headValue('voltage_V', [spelling('0111')], unitCalled('V'))).toBeNull();
  });
});
