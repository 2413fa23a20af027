import { describe, expect, test } from 'vitest';
import { doubtfulSpeeds, speedsOffLaw } from '../../../../src/chart/lines/speed-doubts.ts';
import type { UnderstoodWord } from '../../../../src/chart/lines/near-words.ts';

const label = (speed_rpm: number, confidence: number) => ({ speed_rpm, confidence }) as UnderstoodWord;

describe('speeds that rest on one label', () => {
  test('a clear one stands by itself', () => {
    expect(doubtfulSpeeds([1450], [label(1450, 0.9)], 0)).toEqual([]);
  });

  test('one that was hard to read does not', () => {
    expect(doubtfulSpeeds([2430, 2060], [label(2430, 0.61), label(2060, 0.95)], 1)).toEqual([0]);
  });

  test('the surest of several labels counts', () => {
    expect(doubtfulSpeeds([2430], [label(2430, 0.4), label(2430, 0.88)], 0)).toEqual([]);
  });

  test('a clear speed bears out another where the fan laws say so closely', () => {
    const labels = [label(1760, 0.61), label(1550, 0.95)];
    expect(doubtfulSpeeds([1760, 1550], labels, 1, [1, 0.881])).toEqual([]);
    expect(doubtfulSpeeds([1780, 1550], [label(1780, 0.61), labels[1]!], 1, [1, 0.881])).toEqual([0]);
    expect(doubtfulSpeeds([1760, 1550], [labels[0]!, label(1550, 0.6)], 1, [1, 0.881])).toEqual([0, 1]);
  });

  test('no wheel turns as slowly as a speed that lost its first figure says, however clearly it is read', () => {
    expect(doubtfulSpeeds([170], [label(170, 0.92)], 0)).toEqual([0]);
  });

  test('three curves that follow from each other bear out each other`s speeds; one without a speed is not doubted', () => {
    expect(doubtfulSpeeds([2900, 2430, 2060], [label(2900, 0.6)], 2)).toEqual([]);
    expect(doubtfulSpeeds([null], [], 0)).toEqual([]);
  });
});

describe('a speed that lies off the fan laws', () => {
  const shares = [1, 1550.9 / 1750, 1348.8 / 1750, 1151 / 1750, 949 / 1750];

  test('is asked about where the others follow from each other', () => {
    expect(speedsOffLaw([1750, 1550, 1350, 1130, 950], shares)).toEqual([3]);
    expect(speedsOffLaw([1750, 1550, 1350, 1150, 950], shares)).toEqual([]);
  });

  test('tells nothing among few curves, or where all of them are drawn roughly', () => {
    expect(speedsOffLaw([1750, 1550, null, 1130, null], shares)).toEqual([]);
    expect(speedsOffLaw([1750, 1590, 1310, 1180, 940], shares)).toEqual([]);
  });
});
