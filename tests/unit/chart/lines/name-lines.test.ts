import { describe, expect, test } from 'vitest';
import { boxedPaper, curvePath } from '../paper.ts';
import { FLOW, POWER, PRESSURE, readPlot, word } from './drawn.ts';

type Course = (flow: number) => number;
const wheel =
  (speed: number): Course =>
  (q) =>
    900 * speed ** 2 * (1 - (q / (3.6 * speed)) ** 2.2);
/** A family by the fan laws, speeds as shares of the fastest. */
const familyPaper = (speeds: readonly number[]) => {
  const paper = boxedPaper();
  for (const n of speeds) paper.line(curvePath(wheel(n), 0, 3.59 * n), 2.6);
  return paper;
};

describe('speeds', () => {
  test('go to the curves they stand beside', () => {
    const words = [word('2900 rpm', 2.75, wheel(1)(2.6) + 60), word('2320 rpm', 2.0, wheel(0.8)(1.8) + 50)];
    const { curves, doubts } = readPlot(familyPaper([1, 0.8]), [FLOW, PRESSURE], words);
    expect(curves.map((c) => c.speed_rpm)).toEqual([2900, 2320]);
    expect(doubts.filter((d) => d.serious)).toEqual([]);
  });

  test('in a legend go by the fan laws: the faster wheel reaches further', () => {
    const words = [word('n = 2030 1/min', 3.4, 900), word('n = 2900 1/min', 3.4, 950)];
    const { curves } = readPlot(familyPaper([1, 0.7]), [FLOW, PRESSURE], words);
    expect(curves.map((c) => c.speed_rpm)).toEqual([2900, 2030]);
  });

  test('that the fan laws do not bear out are doubted', () => {
    const words = [word('2900 rpm', 2.75, wheel(1)(2.6) + 60), word('1320 rpm', 2.0, wheel(0.8)(1.8) + 50)];
    const { doubts } = readPlot(familyPaper([1, 0.8]), [FLOW, PRESSURE], words);
    expect(doubts.filter((d) => d.serious).map((d) => d.warning.text)).toContain(
      'The curves for 2900 and 1320 rpm do not follow from each other by the fan laws: one of the speeds or curves may be read wrong.',
    );
  });

  test('one figure off, among many that bear each other out, are doubted', () => {
    const speeds = [1750, 1550, 1350, 1150, 950];
    const shares = speeds.map((n) => n / 1750);
    const words = speeds.map((n, k) =>
      word(`${n === 1150 ? 1130 : n} rpm`, 2.2 * shares[k]!, wheel(shares[k]!)(2 * shares[k]!)),
    );
    const { curves, doubts } = readPlot(familyPaper(shares), [FLOW, PRESSURE], words);
    expect(curves.map((c) => c.speed_rpm)).toEqual([1750, 1550, 1350, 1130, 950]);
    expect(doubts.filter((d) => d.serious).map((d) => [d.warning.path, d.warning.text])).toEqual([
      [
        '/curves/3',
        'The curves for 1750 and 1130 rpm do not follow from each other by the fan laws: one of the speeds or curves may be read wrong.',
      ],
    ]);
  });

  test('with a figure lost are mended where the fan laws leave one round speed', () => {
    const words = [word('2900 rpm', 2.75, wheel(1)(2.6) + 60), word('320 rpm', 2.0, wheel(0.8)(1.8) + 50)];
    const { curves, doubts } = readPlot(familyPaper([1, 0.8]), [FLOW, PRESSURE], words);
    expect(curves.map((c) => c.speed_rpm)).toEqual([2900, 2320]);
    expect(doubts.filter((d) => d.serious)).toEqual([]);
  });

  test('that are not printed are not made up, and a curve of the same wheel needs none', () => {
    const words = [word('2900 rpm', 2.75, wheel(1)(2.6) + 60), word('2320', 2.0, wheel(0.8)(1.8) + 50)];
    const { curves, doubts } = readPlot(familyPaper([1, 0.8, 0.6]), [FLOW, PRESSURE], words);
    expect(curves.map((c) => c.speed_rpm)).toEqual([2900, 2320, null]);
    expect(doubts.filter((d) => d.warning.code === 'speed-missing').map((d) => d.serious)).toEqual([false]);
  });

  test('of the only label beside several curves are taken where it was read surely, and left open else', () => {
    const label = word('2900 rpm', 2.75, wheel(1)(2.6) + 60);
    const speedsBy = (confidence: number) =>
      readPlot(familyPaper([1, 0.8]), [FLOW, PRESSURE], [{ ...label, confidence }]).curves.map((c) => c.speed_rpm);
    expect(speedsBy(0.9)).toContain(2900);
    expect(speedsBy(0.6)).toEqual([null, null]);
  });

  test('are no bare numbers around a single curve', () => {
    const { curves } = readPlot(familyPaper([1]), [FLOW, PRESSURE], [word('455', 2.75, wheel(1)(2.6) + 60)]);
    expect(curves.map((c) => c.speed_rpm)).toEqual([null]);
  });

  test('without a curve tell that one is missing', () => {
    const words = [
      word('2900 rpm', 2.75, wheel(1)(2.6) + 60),
      word('2320 rpm', 2.0, wheel(0.8)(1.8) + 50),
      word('1740 rpm', 1.2, wheel(0.8)(1.8) + 10),
    ];
    const { doubts } = readPlot(familyPaper([1, 0.8]), [FLOW, PRESSURE], words);
    expect(doubts.some((d) => d.serious && d.warning.code === 'speed-without-curve')).toBe(true);
  });

  test('without a curve tell of the outermost too, though the others fit the fan laws', () => {
    const words = [
      word('2900 rpm', 2.75, wheel(1)(2.6) + 60),
      word('2320 rpm', 2.0, wheel(0.8)(1.8) + 50),
      word('1740 rpm', 1.5, wheel(0.6)(1.4) + 40),
    ];
    const { curves, doubts } = readPlot(familyPaper([0.8, 0.6]), [FLOW, PRESSURE], words);
    expect(curves.map((c) => c.speed_rpm)).toEqual([2320, 1740]);
    expect(doubts.filter((d) => d.serious).map((d) => d.warning.text)).toContain(
      'No curve was found for 2900 rpm: a curve may be missing.',
    );
  });

  test('printed once stand for the only curve', () => {
    const { curves } = readPlot(familyPaper([1]), [FLOW, PRESSURE], [word('3400 RPM', 3.2, 900)]);
    expect(curves.map((c) => c.speed_rpm)).toEqual([3400]);
  });
});

describe('what a line shows', () => {
  // 0.9 kW at no flow, 2.2 kW at 3.4 m³/s: an efficiency of at most 0.7 with the pressure curve
  const power: Course = (q) => 250 * (0.9 + 0.55 * q - 0.05 * q * q);

  test('pressure falls, power does not, whatever they are drawn with', () => {
    const paper = familyPaper([1]).line(curvePath(power, 0, 3.5), 2.6, [20, 20, 20], [16, 9]);
    const { curves, doubts } = readPlot(paper, [FLOW, PRESSURE, POWER]);
    expect(curves.map((c) => [c.quantity, c.yAxis])).toEqual([
      ['static_pressure', 'y1'],
      ['shaft_power', 'y2'],
    ]);
    expect(doubts.filter((d) => d.serious)).toEqual([]);
  });

  test('a power that flow times pressure exceeds is doubted', () => {
    const paper = familyPaper([1]).line(curvePath(power, 0, 3.5), 2.6, [20, 20, 20], [16, 9]);
    const { doubts } = readPlot(paper, [FLOW, PRESSURE, { ...POWER, max: 0.4 }]);
    expect(doubts.some((d) => d.serious && d.warning.code === 'power-implausible')).toBe(true);
  });

  test('a line that rises with the square of the flow is a system, no fan', () => {
    const paper = familyPaper([1, 0.8]).line(
      curvePath((q) => 70 * q * q, 0.05, 3.6),
      1.8,
    );
    const { curves, named } = readPlot(paper);
    expect(curves).toHaveLength(2);
    expect(named.distractors).toHaveLength(1);
  });

  test('a scale without a curve is said', () => {
    const { doubts } = readPlot(familyPaper([1]), [FLOW, PRESSURE, POWER]);
    expect(doubts.map((d) => d.warning.text)).toContain('There is a power scale, but no curve was found for it.');
  });

  test('total pressure rises above static pressure with the square of the flow', () => {
    const dynamic: Course = (q) => wheel(1)(q) + 22 * q * q;
    const paper = familyPaper([1]).line(curvePath(dynamic, 0, 3.55), 2.6);
    expect(
      readPlot(paper)
        .curves.map((c) => c.quantity)
        .sort(),
    ).toEqual(['static_pressure', 'total_pressure']);
  });
});
