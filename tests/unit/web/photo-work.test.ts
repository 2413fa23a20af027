import { describe, expect, it } from 'vitest';
import { moveCorners } from '../../../web/edits/move-corners.ts';
import { setAxis, withoutSecondAxis, withSecondAxis } from '../../../web/edits/set-axis.ts';
import { removeTap, setTapSpeed, tapCurve } from '../../../web/edits/tap-curve.ts';
import { withCorner, type CornerIndex } from '../../../web/photo/corners.ts';
import { axisHint, densityOf, hintsOf, missingIn, readyForTap } from '../../../web/photo/hints.ts';
import { startWork, type PhotoWork } from '../../../web/photo/photo-work.ts';

const photo = { photoId: 'p', width_px: 3000, height_px: 4000 };
const size = { width: 3000, height: 4000 };

const placed = (work: PhotoWork): PhotoWork =>
  ([0, 1, 2, 3] as CornerIndex[]).reduce(
    (now, i) => moveCorners(withCorner(now.corners, i, [now.corners[i][0] + 7, now.corners[i][1] + 5], size))(now),
    work,
  );

describe('what a finger and a keyboard say about a chart', () => {
  it('nothing said is no hint at all; whatever is said becomes one, and the rest is left to the reader', () => {
    let work = startWork(photo);
    expect(hintsOf(work)).toEqual({});
    work = placed(work);
    expect(hintsOf(work)).toEqual({ frameCorners_px: work.corners });
    work = setAxis('x', { maxText: '3,000' })(work);
    work = setAxis('y1', { maxText: '150 mm WG', unit: 'Pa' })(work);
    work = tapCurve([1200, 1500], 'y1')(work);
    work = setTapSpeed('t1', '2900')(work);
    expect(missingIn(work)).toEqual([]);
    const hints = hintsOf(work)!;
    expect(hints.frameCorners_px).toEqual(work.corners);
    expect(hints.axes![0]).toEqual({
      id: 'x',
      quantity: 'flow',
      unit: 'm³/h',
      scale: 'linear',
      min: 0,
      max: expect.closeTo(3000, 6) as number,
    });
    expect(hints.axes![1]!.max).toBeCloseTo(1471, 0);
    expect(hints.seeds).toEqual([
      { yAxis: 'y1', quantity: 'static_pressure', speed_rpm: 2900, point_px: [1200, 1500] },
    ]);
  });

  it('a corner moved once counts as placed, its neighbours do not', () => {
    const work = startWork(photo);
    const moved = moveCorners(withCorner(work.corners, 2, [10, 10], size))(work);
    expect(moved.placed).toEqual([false, false, true, false]);
    expect(moveCorners(moved.corners)(moved).placed).toEqual([false, false, true, false]);
  });

  it('waits while something is half said: a corner of four, one end of a scale, corners to be put by hand', () => {
    const work = startWork(photo);
    const corner = moveCorners(withCorner(work.corners, 2, [10, 10], size))(work);
    expect([missingIn(corner), hintsOf(corner)]).toEqual([['corners'], null]);
    expect(missingIn(setAxis('x', { unit: 'CFM' })(work))).toEqual(['x']);
    expect(missingIn({ ...work, byHand: true })).toEqual(['corners']);
    expect(missingIn({ ...placed(work), byHand: true })).toEqual([]);
  });

  it('takes no axis without length, and no log axis from zero', () => {
    const axis = startWork(photo).axes[1]!;
    expect(axisHint({ ...axis, minText: '5', maxText: '5' })).toBeNull();
    expect(axisHint({ ...axis, minText: '0', maxText: '500', scale: 'log' })).toBeNull();
    expect(axisHint({ ...axis, minText: '10', maxText: '500', scale: 'log' })).not.toBeNull();
    expect(axisHint({ ...axis, maxText: 'many' })).toBeNull();
  });

  it('a second scale brings its own taps, with the speed of the curve before, and takes them along', () => {
    let work = setTapSpeed('t1', '1450')(tapCurve([1, 1], 'y1')(startWork(photo)));
    work = tapCurve([2, 2], 'y2')(withSecondAxis(work));
    expect(work.seeds.map((seed) => [seed.id, seed.yAxis, seed.speedText])).toEqual([
      ['t1', 'y1', '1450'],
      ['t2', 'y2', '1450'],
    ]);
    work = withoutSecondAxis(work);
    expect(work.axes.map((axis) => axis.id)).toEqual(['x', 'y1']);
    expect(work.seeds.map((seed) => seed.id)).toEqual(['t1']);
    expect(tapCurve([3, 3], 'y1')(removeTap('t1')(tapCurve([2, 2], 'y1')(work))).seeds.map((s) => s.id)).toEqual([
      't2',
      't3',
    ]);
  });

  it('what was read stays while a second scale is still being typed; a tap on its curve has to wait for it', () => {
    let work = placed(startWork(photo));
    work = setAxis('y1', { maxText: '2000' })(setAxis('x', { maxText: '3000' })(work));
    expect(readyForTap(work, 'y1')).toBe(true);
    work = withSecondAxis(tapCurve([1, 1], 'y1')(work));
    expect(hintsOf(work)!.axes!.map((axis) => axis.id)).toEqual(['x', 'y1']);
    expect([readyForTap(work, 'y1'), readyForTap(work, 'y2')]).toEqual([true, false]);
    work = setAxis('y2', { maxText: '3' })(work);
    expect(readyForTap(work, 'y2')).toBe(true);
    work = setAxis('y2', { maxText: '' })(tapCurve([2, 2], 'y2')(work));
    expect(missingIn(work)).toEqual(['y2']);
  });

  it('leaves speed and weight of air open where nothing is written', () => {
    expect(densityOf('')).toBeNull();
    expect(densityOf('1.15')).toBeCloseTo(1.15, 9);
  });
});
