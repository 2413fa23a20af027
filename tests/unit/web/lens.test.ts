import { describe, expect, it } from 'vitest';
import { lensFor } from '../../../web/photo/lens.ts';
import { toStage, viewOf, wholePhoto, zoomedAt, toPhoto } from '../../../web/photo/view.ts';

const photo = { width: 3000, height: 4000 };
const stage = { width: 390, height: 420 };
const view = wholePhoto(photo, stage);

describe('the lens', () => {
  it.each([
    [0, 0],
    [3000, 0],
    [3000, 4000],
    [0, 4000],
    [1500, 2000],
    [400, 300],
  ])('shows the corner at %s, %s in its middle, inside the stage, and not under the fingertip', (x, y) => {
    const lens = lensFor([x, y], view, stage);
    const [mx, my] = toStage(lens.view, [x, y]);
    expect(mx).toBeCloseTo(lens.centre[0], 6);
    expect(my).toBeCloseTo(lens.centre[1], 6);
    const finger = toStage(view, [x, y]);
    const away = Math.hypot(lens.centre[0] - finger[0], lens.centre[1] - finger[1]);
    expect(away).toBeGreaterThan(lens.radius + 10);
    expect(lens.centre[0] - lens.radius).toBeGreaterThanOrEqual(0);
    expect(lens.centre[0] + lens.radius).toBeLessThanOrEqual(stage.width);
  });

  it('enlarges four times, within reason', () => {
    expect(lensFor([1, 1], { scale: 0.3, x: 0, y: 0 }, stage).view.scale).toBeCloseTo(1.2, 6);
    expect(lensFor([1, 1], { scale: 0.05, x: 0, y: 0 }, stage).view.scale).toBe(0.6);
    expect(lensFor([1, 1], { scale: 5, x: 0, y: 0 }, stage).view.scale).toBe(2);
  });
});

describe('the view', () => {
  it('zooms about a point that stays', () => {
    const before = toPhoto(view, [200, 300]);
    const closer = zoomedAt(view, [200, 300], 3, photo, stage);
    const after = toPhoto(closer, [200, 300]);
    expect(after[0]).toBeCloseTo(before[0], 6);
    expect(after[1]).toBeCloseTo(before[1], 6);
    expect(zoomedAt(closer, [10, 10], 0.001, photo, stage).scale).toBeCloseTo(view.scale, 9);
  });

  it('fills the stage with the plot and leaves room for lettering', () => {
    const shown = viewOf(
      [
        [1000, 2000],
        [2000, 2000],
        [2000, 1500],
        [1000, 1500],
      ],
      photo,
      stage,
      { sides: 48, top: 30, bottom: 90 },
    );
    expect(toStage(shown, [1000, 2000])[0]).toBeCloseTo(48, 6);
    expect(toStage(shown, [2000, 2000])[0]).toBeCloseTo(342, 6);
    expect(toStage(shown, [1500, 1750])[1]).toBeCloseTo(30 + 150, 6);
  });
});
