import { describe, expect, test } from 'vitest';
import { fromBase, unitCalled } from '../../../../src/units/index.ts';
import { steps, toPx, toValue } from '../../../../web/match/axis.ts';
import { exitOf, placeNames, runsThrough } from '../../../../web/match/place-names.ts';
import { plotFrame, wedge } from '../../../../web/match/plot-frame.ts';
import { letterPlot, SAMPLE, wide } from '../../../../web/match/plot-lettering.ts';
import { needOf, plotModel, readCurve } from '../../../../web/match/plot-model.ts';
import { smooth, smoothSquare } from '../../../../web/match/smooth.ts';
import { caseOf, planOf } from './cases.ts';

const units = { flow: 'm³/h', pressure: 'mm water' };
const both = (open: string[], more = {}) => {
  const loaded = caseOf(open, 0.7);
  const clean = caseOf(open, 0.9, {
    filterState: 'clean',
    systemCurve: { flow_m3_s: [0, 0.125, 0.25, 0.35], totalPressure_Pa: [0, 560, 2240, 4390] },
  });
  return planOf(open, 'unsure', { clean, loaded, worst: loaded, ...more });
};

describe('axes', () => {
  test('there and back', () => {
    const axis = { max: 1200, from: 40, to: 348 };
    expect(toValue(axis, toPx(axis, 900))).toBeCloseTo(900, 9);
  });
  test.each([
    [370, 4, [100, 200, 300]],
    [1450, 4, [400, 800, 1200]],
    [0.42, 5, [0.1, 0.2, 0.3, 0.4]],
    [0, 4, []],
  ])('steps up to %f are round', (max, count, expected) => {
    expect(steps(max, count).map((step) => Math.round(step * 1e6) / 1e6)).toEqual(expected);
  });
});

describe('what the plot shows', () => {
  const plan = both(['planer']);
  const model = plotModel([plan, both(['saw'])], plan, units)!;

  test('points, need and bars stand in the units of the axes', () => {
    expect(model.need).toBeCloseTo(900, 6);
    expect(model.points.loaded!.x).toBeCloseTo(900, 6);
    expect(model.points.loaded!.y).toBeCloseTo(fromBase(2600, unitCalled('mm water')), 6);
    expect(model.bars.map((bar) => bar.state)).toEqual(['clean', 'loaded']);
    expect(model.bars[1]!.low).toBeCloseTo(792, 6);
    expect(model.bars[1]!.high).toBeCloseTo(1080, 6);
  });
  test('the motor curve passes through the running point in percent of the plate', () => {
    const { motor } = model;
    expect(motor!.loaded!.y).toBeCloseTo(72, 6);
    // 72 % at 1500 W of the wheel, so 700 W at shut-off are 33.6 %
    expect(readCurve(motor!.curve, 0)).toBeCloseTo(33.6, 6);
    expect(motor!.max).toBeGreaterThan(100);
  });
  test('everything drawn lies inside the axes', () => {
    for (const bar of model.bars) expect(bar.high).toBeLessThan(model.flowMax);
    expect(model.need!).toBeLessThan(model.flowMax);
    expect(model.points.clean!.y).toBeLessThan(model.pressureMax);
  });
  test('more than three other plans would be a tangle: the least sure are drawn', () => {
    const crowd = Array.from({ length: 6 }, (_, i) => both([`m${i}`], { probability: i / 10 }));
    const shown = plotModel([plan, ...crowd], plan, units)!;
    expect(shown.others.map((other) => other.plan)).toEqual(['m0', 'm1', 'm2']);
  });
  test('a machine nobody has asked leaves no post', () => {
    const asked = caseOf(['a', 'b'], 0.7);
    expect(needOf(asked)).toBeCloseTo(0.5, 9);
    asked.pickups[1]!.requiredFlow_m3_s = null;
    expect(needOf(asked)).toBeNull();
  });
  test('without a shaft power there is no motor strip, and the frame closes up', () => {
    const dark = both(['planer']);
    for (const one of [dark.clean!, dark.loaded!]) one.motor = { ...one.motor, loadFraction: null };
    const bare = plotModel([dark], dark, units)!;
    expect(bare.motor).toBeNull();
    expect(plotFrame(bare, 358).height).toBeLessThan(plotFrame(model, 358).height);
  });
});

describe('curves', () => {
  test('few points are drawn through, without corners, and the square law of ducts is kept', () => {
    const square = smoothSquare({ x: [0, 1, 2, 4], y: [0, 3, 12, 48] });
    expect(square.x.length).toBeGreaterThan(40);
    for (const at of [0.5, 1.5, 3]) expect(readCurve(square, at)).toBeCloseTo(3 * at * at, 1);
    const hump = smooth({ x: [0, 1, 2, 3], y: [10, 12, 12, 5] });
    expect(Math.max(...hump.y)).toBeLessThanOrEqual(12 + 1e-9);
  });
  test('are read straight between points and not beyond them', () => {
    const line = { x: [0, 10], y: [0, 5] };
    expect(readCurve(line, 4)).toBe(2);
    expect(readCurve(line, 11)).toBeNull();
  });
  test('the wedge between new and full filters is one closed area', () => {
    const plan = both(['planer']);
    const model = plotModel([plan], plan, units)!;
    const path = wedge(plotFrame(model, 358), model.clean!, model.loaded!);
    expect(path.match(/M/g)).toHaveLength(1);
    expect(path.endsWith('Z')).toBe(true);
  });
});

describe('names on the plot', () => {
  const area = { left: 40, top: 28, right: 348, bottom: 260 };
  const rising = (reach: number) => ({
    x: [40, 40 + reach * 0.5, 40 + reach, 40 + reach * 1.2],
    y: [260, 202, 28, -80],
  });

  test('a curve leaves through the top, at the right edge, or ends inside', () => {
    expect(exitOf(rising(200), area)).toMatchObject({ y: 28 });
    expect(exitOf({ x: [40, 400], y: [260, 100] }, area)!.x).toBe(348);
    expect(exitOf({ x: [40, 200], y: [260, 100] }, area)).toEqual({ x: 200, y: 100 });
  });
  test('well apart, each is named at its end; close together, they go to the key', () => {
    const apart = placeNames(
      [
        { id: 'a', width: 30, curve: rising(110) },
        { id: 'b', width: 30, curve: rising(230) },
      ],
      [],
      [],
      area,
      12.5,
    );
    expect(apart.left).toEqual([]);
    expect(apart.placed.map((name) => name.id)).toEqual(['a', 'b']);
    const close = placeNames(
      [
        { id: 'a', width: 90, curve: rising(296) },
        { id: 'b', width: 90, curve: rising(300) },
        { id: 'c', width: 90, curve: rising(303) },
      ],
      [],
      [],
      area,
      12.5,
    );
    expect(close.left.length).toBeGreaterThan(0);
  });
  test('no name lies on another curve or another name', () => {
    const curves = [rising(120), rising(150), rising(260)];
    const { placed } = placeNames(
      curves.map((curve, i) => ({ id: String(i), width: 40, curve })),
      [],
      [],
      area,
      12.5,
    );
    const boxes = placed.map((name) => ({
      left: name.anchor === 'end' ? name.x - 40 : name.x,
      right: name.anchor === 'end' ? name.x : name.x + 40,
      top: name.y - 12.5,
      bottom: name.y + 3,
    }));
    placed.forEach((name, i) => {
      curves.forEach((curve, j) => name.id !== String(j) && expect(runsThrough(curve, boxes[i]!)).toBe(false));
      boxes
        .slice(i + 1)
        .forEach((other) =>
          expect(
            boxes[i]!.right <= other.left ||
              other.right <= boxes[i]!.left ||
              boxes[i]!.bottom <= other.top ||
              other.bottom <= boxes[i]!.top,
          ).toBe(true),
        );
    });
  });
  test('the chosen name and the key stay inside the plot, long names cut to the room', () => {
    const plan = both(['planer']);
    const others = ['a', 'b', 'c'].map((id) => both([id]));
    const model = plotModel([plan, ...others], plan, units)!;
    const frame = plotFrame(model, 358);
    const words = {
      blower: 'what the blower can do',
      chosen: ['Thickness planer,', 'as filters fill up'],
      others: ['Saw and planer and sander together', 'Band saw', 'Table saw'],
    };
    const lettering = letterPlot(model, frame, words);
    expect(lettering.key).toHaveLength(3);
    for (const line of words.chosen)
      expect(lettering.chosen.x + wide(line, frame.font)).toBeLessThanOrEqual(frame.area.right + 1);
    for (const { text } of lettering.key)
      expect(lettering.chosen.x + SAMPLE + wide(text, frame.font)).toBeLessThanOrEqual(frame.area.right + 1);
    expect(lettering.chosen.y).toBeGreaterThan(frame.area.top);
  });
});
