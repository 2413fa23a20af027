import { describe, expect, test } from 'vitest';
import { frameMapOf } from '../../../../src/chart/frame/frame-map.ts';
import { snapFrame } from '../../../../src/chart/frame/frame-snap.ts';
import { preparePhoto } from '../../../../src/chart/index.ts';
import { findPieces } from '../../../../src/chart/labels/pieces.ts';
import { layOut } from '../../../../src/chart/labels/surroundings.ts';
import { turnedFrame, turnedSurroundings } from '../../../../src/chart/labels/turned.ts';
import { photoPoint, type Corners } from '../../../../src/chart/spaces.ts';
import { boxedPaper, CORNERS } from '../paper.ts';

/** A plot with one mark outside each side, each at another place along it. */
const paper = boxedPaper(null).ring([300, 750], 9).ring([1120, 200], 9).ring([800, 50], 9).ring([80, 600], 9);
const photo = preparePhoto(paper);
const frame = snapFrame(photo, CORNERS.map(([x, y]) => photoPoint(x, y)) as unknown as Corners);
const map = frameMapOf(frame)!;
const around = layOut(photo, map, frame.polarity);
const pieces = findPieces(around);

describe.each([1, 2, 3] as const)('looked at after %i quarter turns', (turns) => {
  const other = turnedFrame(frame, turns);
  const otherMap = frameMapOf(other)!;
  const turned = turnedSurroundings(around, pieces, otherMap, turns);

  test('every piece of ink stays at its place in the photo', () => {
    expect(pieces.list.length).toBeGreaterThanOrEqual(4);
    for (const p of pieces.list) {
      const q = turned.pieces.list.find(({ id }) => id === p.id)!;
      const before = around.toPhoto((p.x0 + p.x1 - 1) / 2, (p.y0 + p.y1 - 1) / 2);
      const after = turned.around.toPhoto((q.x0 + q.x1 - 1) / 2, (q.y0 + q.y1 - 1) / 2);
      expect(Math.hypot(after[0] - before[0], after[1] - before[1])).toBeLessThan(0.1);
    }
  });

  test('ink and the numbers of its pieces lie inside the boxes', () => {
    const { width, height, ink } = turned.around;
    for (const { id, x0, y0, x1, y1, area } of turned.pieces.list) {
      let own = 0;
      for (let y = y0; y < y1; y++) for (let x = x0; x < x1; x++) if (turned.pieces.labels[y * width + x] === id) own++;
      expect(own).toBe(area);
    }
    expect(ink.length).toBe(width * height);
  });

  test('the frame is the one that another laying out would make', () => {
    const anew = layOut(photo, otherMap, other.polarity);
    for (const k of ['x0', 'y0', 'x1', 'y1'] as const)
      expect(Math.abs(anew.frame[k] - turned.around.frame[k])).toBeLessThanOrEqual(1);
  });
});
