import { describe, expect, test } from 'vitest';
import { tickNumbers } from '../../../../src/chart/labels/tick-number.ts';

const likeliest = (text: string, after?: number) => tickNumbers(text, after)[0]?.value;

describe('numbers beside ticks', () => {
  test.each([
    ['1200', 1200],
    ['12 000', 12_000],
    ["12'000", 12_000],
    ['12,000', 12_000],
    ['1,250.5', 1250.5],
    ['1.234.567', 1_234_567],
    ['0,5', 0.5],
    ['.5', 0.5],
    ['12.5', 12.5],
    ['0.0', 0],
    ['-10', -10],
    ['−10', -10],
    ['1E3', 1000],
    ['10^3', 1000],
    ['2x10^3', 2000],
    ['80%', 80],
  ])('%s', (text, value) => expect(likeliest(text)).toBe(value));

  test('a mark before three digits is thousands or decimals, and both are told', () => {
    expect(tickNumbers('1.000').map((n) => n.value)).toEqual([1000, 1]);
    expect(tickNumbers('1,500').map((n) => n.value)).toEqual([1500, 1.5]);
    expect(tickNumbers('0.250').map((n) => n.value)).toEqual([0.25]);
  });

  test('a lost point is put back where a nought leads or a mark was seen, and that is said', () => {
    expect(tickNumbers('05')).toEqual([{ value: 0.5, likelihood: 0.9, isRepaired: true }]);
    expect(tickNumbers('25', 1)[0]).toEqual({ value: 2.5, likelihood: 0.8, isRepaired: true });
    expect(tickNumbers('25')).toEqual([{ value: 25, likelihood: 1, isRepaired: false }]);
  });

  test('handwritten figures read as letters count, and for less', () => {
    expect(tickNumbers('yoo')).toEqual([{ value: 400, likelihood: 0.6, isRepaired: false }]);
    expect(likeliest('Goo')).toBe(600);
  });

  test.each(['', 'Pa', 'm³/h', '-', '.', 'x'])('“%s” is no number', (text) => expect(tickNumbers(text)).toEqual([]));
});
