import { describe, expect, test } from 'vitest';
import { chooseLines } from '../../../../src/chart/lines/choose-lines.ts';
import { bestRatio, matchAtRatio, rangesApart } from '../../../../src/chart/lines/fan-laws.ts';
import { joints } from '../../../../src/chart/lines/join-pieces.ts';
import type { LineValues } from '../../../../src/chart/lines/line-values.ts';
import { withSharedEnds } from '../../../../src/chart/lines/shared-ends.ts';
import { meaningOfWord } from '../../../../src/chart/lines/word-meanings.ts';

const range = (from: number, to: number) => Array.from({ length: to - from }, (_, k) => from + k);
const never = () => false;
const trace = (y: (x: number) => number, from: number, to: number) => {
  const x = Float64Array.from({ length: Math.round((to - from) / 2.5) + 1 }, (_, i) => from + 2.5 * i);
  return { x, y: Float64Array.from(x, y), seen: new Float64Array(x.length).fill(1) };
};

describe('the set of ways that explains the print best', () => {
  test('leaves out a way that explains nothing new', () => {
    const ways = [range(0, 30), range(30, 60), range(5, 25)].map((explains) => ({ explains, fault: 0 }));
    expect(
      chooseLines(ways, 60, never)
        .map((c) => c.index)
        .sort(),
    ).toEqual([0, 1]);
  });

  test('takes the smooth pair where two pairs explain the same', () => {
    const [left, right, up, down] = [range(0, 20), range(20, 40), range(40, 60), range(60, 80)];
    const ways = [
      { explains: [...left!, ...right!], fault: 5 },
      { explains: [...up!, ...down!], fault: 5 },
      { explains: [...left!, ...down!], fault: 0 },
      { explains: [...up!, ...right!], fault: 0 },
    ];
    const chosen = chooseLines(ways, 80, never);
    expect(chosen.map((c) => c.index).sort()).toEqual([2, 3]);
    // the other pair would be worse by its kinks
    for (const { margin } of chosen) expect(margin).toBeCloseTo(10, 6);
  });
});

describe('pieces of one line', () => {
  const arc = (x: number) => 200 + 0.0006 * (x - 100) ** 2;
  const piece = (from: number, to: number, shift = 0) => ({
    trace: trace((x) => arc(x) + shift, from, to),
    colour: [200, 200, 200] as const,
    width: 3,
  });

  test('are joined over a gap', () => {
    const [joint] = joints([piece(260, 500), piece(0, 200)], 90);
    expect([joint!.first, joint!.second]).toEqual([1, 0]);
    const middle = joint!.trace.x.findIndex((x) => x > 230);
    expect(Math.abs(joint!.trace.y[middle]! - arc(joint!.trace.x[middle]!))).toBeLessThan(1);
  });

  const label = { left: 40, top: 150, right: 150, bottom: 260 };

  test('a scrap goes on with a line behind a label, and not over bare paper', () => {
    const [line, scrap] = [piece(150, 500), piece(20, 40)];
    const [joint] = joints([line, scrap], 100, [label], 1);
    expect([joint!.first, joint!.second]).toEqual([1, 0]);
    expect(joint!.trace.x[0]).toBe(20);
    expect(joints([line, scrap], 100, [], 1)).toEqual([]);
  });

  test('scraps make no line by themselves', () => {
    expect(joints([piece(50, 70), piece(20, 40)], 90, [label], 2)).toEqual([]);
  });

  test('a label may cover a dip; bare paper may not', () => {
    const dip = (x: number) => (x < 95 ? 200 + 0.8 * (x - 40) : 260 - 0.12 * (x - 150));
    const sides = [0, 1].map((k) => ({ ...piece(0, 10), trace: k ? trace(dip, 150, 400) : trace(dip, -100, 40) }));
    expect(joints(sides, 130, [{ ...label, top: 180, bottom: 280 }])).toHaveLength(1);
    expect(joints(sides, 130)).toEqual([]);
  });

  test('are not joined beside each other, nor over a long gap', () => {
    expect(joints([piece(0, 200), piece(220, 500, 14)], 90)).toEqual([]);
    expect(joints([piece(0, 200), piece(320, 500)], 90)).toEqual([]);
  });

  test('are joined over a label that interrupts the line, however long, and over nothing else as long', () => {
    const apart = [piece(0, 200), piece(330, 600)];
    const label = { left: 208, right: 322, top: 185, bottom: 225 };
    const [joint] = joints(apart, 90, [label]);
    expect([joint!.first, joint!.second]).toEqual([0, 1]);
    for (const [k, x] of joint!.trace.x.entries()) expect(Math.abs(joint!.trace.y[k]! - arc(x))).toBeLessThan(1);
    expect(joints(apart, 90, [{ ...label, top: 100, bottom: 140 }])).toEqual([]);
  });

  test('that part from another line have its beginning too', () => {
    const whole = trace((x) => 0.2 * x, 0, 500);
    const branch = trace((x) => 0.2 * x - 0.0008 * Math.max(0, x - 100) ** 2, 110, 500);
    const [, longer] = withSharedEnds([whole, branch]);
    expect(longer!.x[0]).toBe(0);
    expect(longer!.x.at(-1)).toBe(500);
  });
});

describe('the fan laws', () => {
  const curve = (n: number, to = 1): LineValues => {
    const flow = Array.from({ length: 48 }, (_, k) => (to * n * k) / 47);
    const value = flow.map((q) => n * n * (1 - (q / n) ** 2));
    return { u: flow, v: value, flow, value };
  };

  test('bring a slow curve onto a fast one', () => {
    expect(matchAtRatio(curve(1), curve(0.7), 1 / 0.7, 'static_pressure').apart).toBeLessThan(0.002);
    expect(matchAtRatio(curve(1), curve(0.7), 1.2, 'static_pressure').apart).toBeGreaterThan(0.1);
    expect(bestRatio(curve(1), curve(0.7), 'static_pressure')!.ratio).toBeCloseTo(1 / 0.7, 1);
  });

  test('tell that a curve was cut short', () => {
    expect(rangesApart(curve(1, 0.6), curve(0.7), 1 / 0.7).last).toBeCloseTo(-0.4, 6);
  });
});

describe('a word beside a line', () => {
  test.each([
    ['1450 rpm', 1450],
    ['3500 r.p.m.', 3500],
    ['n=1900', 1900],
    ['1300 1/min', 1300],
    ['n = 2850 об/мин', 2850],
    ['1 450 min⁻¹', 1450],
    ['2,900 RPM', 2900],
    ['1440', 1440],
    ['77%', null],
    ['35°', null],
    ['Air 1.2 kg/m³', null],
  ])('%s is the speed %s', (text, speed) => expect(meaningOfWord(text).speed_rpm).toBe(speed));

  test.each([
    ['P', 'shaft_power'],
    ['Pw', 'shaft_power'],
    ['η', 'efficiency'],
    ['ηs', 'efficiency'],
    ['Δps', 'static_pressure'],
    ['pt', 'total_pressure'],
    ['1450 rpm', null],
    ['System 1', null],
  ])('%s means %s', (text, quantity) => expect(meaningOfWord(text).quantity).toBe(quantity));
});
