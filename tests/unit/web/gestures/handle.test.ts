import { describe, expect, it } from 'vitest';
import { cornerAt, fingers, LANDSCAPE, startStage } from './fingers.ts';

describe('a finger on a corner', () => {
  it('presses before it drags: a thumb that trembles changes nothing', () => {
    const f = fingers();
    const [x, y] = cornerAt(f.stage, 0);
    const before = f.stage.corners;
    f.down(x + 8, y - 6);
    expect(f.gesture).toBe('pressing-handle');
    f.move(x + 10, y - 5);
    f.up(x + 10, y - 5);
    expect(f.path).toEqual(['pressing-handle', 'idle']);
    expect(f.stage.corners).toBe(before);
    expect(f.effects).toEqual([]);
  });

  it('moves the corner by as much as the finger, without a jump to the fingertip', () => {
    const f = fingers();
    const [x, y] = cornerAt(f.stage, 2);
    f.down(x + 15, y + 10);
    f.move(x + 15 + 40, y + 10 - 20);
    expect(f.gesture).toBe('dragging-handle');
    const [cx, cy] = cornerAt(f.stage, 2);
    expect(cx).toBeCloseTo(x + 40, 6);
    expect(cy).toBeCloseTo(y - 20, 6);
    f.up(x + 15 + 41, y + 10 - 20);
    expect(f.gesture).toBe('idle');
    expect(f.effects).toEqual([{ type: 'corners', corners: f.stage.corners }]);
  });

  it('does not drift: ten thousand small moves end where one large one does', () => {
    const small = fingers();
    const large = fingers();
    const [x, y] = cornerAt(small.stage, 1);
    small.down(x, y);
    for (let i = 1; i <= 10_000; i += 1) small.move(x + i * 0.003, y + i * 0.002);
    large.down(x, y);
    large.move(x + 30, y + 20);
    expect(small.stage.corners[1][0]).toBeCloseTo(large.stage.corners[1][0], 9);
    expect(small.stage.corners[1][1]).toBeCloseTo(large.stage.corners[1][1], 9);
  });

  it('goes back on Escape, and tells the page nothing', () => {
    const f = fingers();
    const start = f.stage.corners;
    const [x, y] = cornerAt(f.stage, 0);
    f.down(x, y);
    f.move(x + 60, y + 10);
    f.escape();
    expect(f.stage.corners).toEqual(start);
    expect(f.gesture).toBe('idle');
    expect(f.effects).toEqual([]);
    f.move(x + 90, y + 10);
    expect(f.stage.corners).toEqual(start);
  });

  it('a second finger lets the corner go back and pinches instead', () => {
    const f = fingers();
    const start = f.stage.corners;
    const [x, y] = cornerAt(f.stage, 0);
    f.down(x, y);
    f.move(x + 50, y);
    f.down(x + 120, y, 2);
    expect(f.gesture).toBe('pinching');
    expect(f.stage.corners).toEqual(start);
  });

  it('the phone is turned in the middle of a drag: the corner keeps its place on the photo and the finger goes on from there', () => {
    const f = fingers();
    const [x, y] = cornerAt(f.stage, 3);
    f.down(x, y);
    f.move(x - 20, y - 30);
    const dragged = f.stage.corners[3];
    f.turn(LANDSCAPE);
    expect(f.gesture).toBe('dragging-handle');
    expect(f.stage.corners[3]).toEqual(dragged);
    expect(f.stage.size).toEqual(LANDSCAPE);
    expect(f.effects).toEqual([{ type: 'corners', corners: f.stage.corners }]);
    f.move(x - 20 + 12, y - 30);
    expect(f.stage.corners[3][0]).toBeCloseTo(dragged[0] + 12 / f.stage.view.scale, 6);
    expect(f.stage.corners[3][1]).toBeCloseTo(dragged[1], 6);
  });

  it('a touch the system takes away (a call, a turned phone) keeps what was done', () => {
    const f = fingers();
    const [x, y] = cornerAt(f.stage, 3);
    f.down(x, y);
    f.move(x - 25, y);
    const dragged = f.stage.corners;
    f.interrupt();
    expect(f.gesture).toBe('idle');
    expect(f.stage.corners).toEqual(dragged);
    expect(f.effects).toEqual([{ type: 'corners', corners: dragged }]);
  });

  it('another pointer’s moves and lifts are not its own', () => {
    const f = fingers();
    const [x, y] = cornerAt(f.stage, 0);
    f.down(x, y);
    f.move(x + 20, y);
    const there = f.stage.corners;
    f.move(x + 90, y, 7);
    f.up(x + 90, y, 7);
    f.interrupt(7);
    expect(f.stage.corners).toEqual(there);
    expect(f.gesture).toBe('dragging-handle');
  });

  it('never leaves the photo', () => {
    const f = fingers();
    const [x, y] = cornerAt(f.stage, 0);
    f.down(x, y);
    f.move(x - 900, y + 900);
    expect(f.stage.corners[0]).toEqual([0, 4000]);
  });

  it('is found by a fingertip however far one has zoomed, the nearest first', () => {
    const stage = startStage();
    const near = { ...stage, corners: [...stage.corners] as unknown as typeof stage.corners };
    const f = fingers({ ...near, view: { ...near.view, scale: near.view.scale } });
    const [x, y] = cornerAt(f.stage, 1);
    f.down(x + 29, y);
    expect(f.gesture).toBe('pressing-handle');
    f.up(x + 29, y);
    f.down(x + 31, y);
    expect(f.gesture).toBe('pressing-paper');
  });
});
