import { describe, expect, it } from 'vitest';
import { toPhoto, toStage } from '../../../../web/photo/view.ts';
import { fingers, LANDSCAPE, PHOTO, PORTRAIT } from './fingers.ts';

describe('a finger on the photo', () => {
  it('taps: the page hears where on the photo', () => {
    const f = fingers();
    f.down(200, 200);
    f.move(202, 201);
    f.up(202, 201);
    expect(f.path).toEqual(['pressing-paper', 'idle']);
    const at = toPhoto(f.stage.view, [200, 200]);
    expect(f.effects).toEqual([{ type: 'tap', at }]);
  });

  it('pans when it moves, and then it was no tap', () => {
    const f = fingers();
    f.down(150, 100);
    f.down(250, 100, 2);
    f.move(30, 100);
    f.move(370, 100, 2);
    f.up(370, 100, 2);
    expect(f.gesture).toBe('panning');
    const before = f.stage.view;
    f.move(60, 90);
    expect(f.stage.view.x).toBeCloseTo(before.x + 30, 6);
    expect(f.stage.view.scale).toBe(before.scale);
    f.up(60, 90);
    expect(f.effects).toEqual([]);
    expect(f.path).toEqual(['pressing-paper', 'pinching', 'panning', 'idle']);
  });

  it('two fingers hold two places of the photo under them', () => {
    const f = fingers();
    const left = toPhoto(f.stage.view, [160, 200]);
    const right = toPhoto(f.stage.view, [230, 210]);
    f.down(160, 200);
    f.down(230, 210, 2);
    f.move(120, 190);
    f.move(260, 210, 2);
    const [lx, ly] = toStage(f.stage.view, left);
    const [rx, ry] = toStage(f.stage.view, right);
    expect(Math.hypot(rx - lx, ry - ly)).toBeCloseTo(Math.hypot(140, 20), 3);
    expect((lx + rx) / 2).toBeCloseTo(190, 3);
    expect((ly + ry) / 2).toBeCloseTo(200, 0);
  });

  it('Escape puts a pinched or pushed photo back', () => {
    const f = fingers();
    const start = f.stage.view;
    f.down(160, 200);
    f.down(230, 200, 2);
    f.move(60, 200);
    expect(f.stage.view.scale).toBeGreaterThan(start.scale);
    f.escape();
    expect(f.stage.view).toEqual(start);
    expect(f.gesture).toBe('idle');
  });

  it('is never lost from sight, never smaller than whole', () => {
    const f = fingers();
    f.down(200, 200);
    f.move(5000, -5000);
    f.up(5000, -5000);
    const [x0, y0] = toStage(f.stage.view, [0, 0]);
    const [x1, y1] = toStage(f.stage.view, [PHOTO.width, PHOTO.height]);
    expect(x0).toBeGreaterThanOrEqual(-1e-9);
    expect(x1).toBeLessThanOrEqual(PORTRAIT.width + 1e-9);
    expect([y0, y1]).toEqual([0, PORTRAIT.height]);
  });

  it('a turned phone shows the same middle at the same zoom, and ends the gesture', () => {
    const f = fingers();
    f.down(150, 200);
    f.down(240, 200, 2);
    f.move(10, 200);
    f.move(380, 230, 2);
    f.up(380, 230, 2);
    f.up(10, 200);
    const middle = toPhoto(f.stage.view, [PORTRAIT.width / 2, PORTRAIT.height / 2]);
    f.down(100, 100);
    f.turn(LANDSCAPE);
    expect(f.gesture).toBe('idle');
    const after = toPhoto(f.stage.view, [LANDSCAPE.width / 2, LANDSCAPE.height / 2]);
    expect(after[0]).toBeCloseTo(middle[0], 3);
    expect(after[1]).toBeCloseTo(middle[1], 3);
  });

  it('an interrupted press is no tap', () => {
    const f = fingers();
    f.down(200, 200);
    f.interrupt();
    expect(f.gesture).toBe('idle');
    expect(f.effects).toEqual([]);
  });
});
