import { describe, expect, it } from 'vitest';
import { setAxis, withoutSecondAxis } from '../../../web/edits/set-axis.ts';
import { removeTap, setTapSpeed } from '../../../web/edits/tap-curve.ts';
import type { ChartReading } from '../../../web/api.ts';
import { hintsOf, readyForTap } from '../../../web/photo/hints.ts';
import { startWork, type PhotoWork } from '../../../web/photo/photo-work.ts';
import { shownWork, TAKEN_OVER, type Part } from '../../../web/photo/shown-work.ts';

const said = startWork({ photoId: 'p', width_px: 3000, height_px: 4000 });
const curve = (quantity: string, yAxis: string, speed_rpm: number | null, x: number) => ({
  id: `c${x}`,
  quantity,
  yAxis,
  speed_rpm,
  confidence: 0.9,
  points: [[0, 1]] as [number, number][],
  points_px: [
    [x, 1],
    [x, 2],
    [x, 3],
  ] as [number, number][],
});
const reading: ChartReading = {
  frameCorners_px: [
    [1, 9],
    [8, 9],
    [8, 2],
    [1, 2],
  ],
  axes: [
    { id: 'x', quantity: 'flow', unit: 'm3/h', scale: 'linear', min: 0, max: 3000, confidence: 0.9 },
    { id: 'y1', quantity: 'static_pressure', unit: 'mmH2O', scale: 'linear', min: 0, max: 200, confidence: 0.9 },
    { id: 'y2', quantity: 'shaft_power', unit: 'kW', scale: 'linear', min: 0, max: 2.5, confidence: 0.9 },
  ],
  curves: [curve('static_pressure', 'y1', 2900, 4), curve('shaft_power', 'y2', null, 5)],
  confidence: { overall: 0.9, needsReview: false },
  warnings: [],
};

/** What the page does when a part is touched. */
const touch = (part: Part, how: (work: PhotoWork) => PhotoWork, before = said): PhotoWork =>
  how({ ...before, ...TAKEN_OVER[part](shownWork(before, reading)) });

describe('what was read stands in for what nobody said', () => {
  it('frame, scales and curves, in the units and words of the page', () => {
    const shown = shownWork(said, reading);
    expect(shown.corners).toEqual(reading.frameCorners_px);
    expect(shown.axes.map(({ id, unit, minText, maxText }) => [id, unit, minText, maxText])).toEqual([
      ['x', 'm³/h', '0', '3000'],
      ['y1', 'mm water', '0', '200'],
      ['y2', 'kW', '0', '2.5'],
    ]);
    expect(shown.seeds.map(({ yAxis, speedText, at }) => [yAxis, speedText, at])).toEqual([
      ['y1', '2900', [4, 2]],
      ['y2', '', [5, 2]],
    ]);
    expect(readyForTap(shown, 'y2')).toBe(true);
    // and says nothing by itself
    expect(hintsOf(said)).toEqual({});
  });

  it('a corrected scale is said, the others are read anew', () => {
    const work = touch('axes', setAxis('y1', { maxText: '250' }));
    expect(hintsOf(work)).toEqual({
      axes: [{ id: 'y1', quantity: 'static_pressure', unit: 'mm water', scale: 'linear', min: 0, max: 250 }],
    });
    expect(shownWork(work, reading).axes.map(({ maxText }) => maxText)).toEqual(['3000', '250', '2.5']);
  });

  it('a curve taken away or renamed makes all curves said', () => {
    const work = touch('curves', setTapSpeed('t1', '1450'));
    expect(hintsOf(work)!.seeds!.map((seed) => [seed.quantity, seed.speed_rpm])).toEqual([
      ['static_pressure', 1450],
      ['shaft_power', null],
    ]);
    const none = touch('curves', removeTap('t1'), touch('curves', removeTap('t2')));
    expect(shownWork(none, reading).seeds).toEqual([]);
  });

  it('a second scale left out takes its curve along and stays away', () => {
    const work = touch('curves', withoutSecondAxis);
    expect(shownWork(work, reading).axes.map(({ id }) => id)).toEqual(['x', 'y1']);
    expect(hintsOf(work)!.seeds).toHaveLength(1);
  });

  it('a pressure said to be total makes its curves total', () => {
    const curves = touch('curves', setTapSpeed('t1', '2900'));
    const work = touch('axes', setAxis('y1', { quantity: 'total_pressure' }), curves);
    expect(hintsOf(work)!.seeds![0]!.quantity).toBe('total_pressure');
  });
});
