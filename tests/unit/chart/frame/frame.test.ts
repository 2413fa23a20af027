import { expect, test } from 'vitest';
import { frameMapOf } from '../../../../src/chart/frame/frame-map.ts';
import { snapFrame } from '../../../../src/chart/frame/frame-snap.ts';
import { preparePhoto } from '../../../../src/chart/index.ts';
import { photoPoint, type Corners } from '../../../../src/chart/spaces.ts';
import { boxedPaper, CORNERS, Paper, type Xy } from '../paper.ts';

const corners = (points: readonly Xy[]): Corners => points.map(([x, y]) => photoPoint(x, y)) as unknown as Corners;
const missed = CORNERS.map(([x, y], k): Xy => [x + [22, -18, 15, -24][k]!, y + [-20, 23, 17, 12][k]!]);

/** A frame whose sides bow out by `bow` pixels in the middle. */
const bowed = (bow: number): { paper: Paper; side: (k: number, f: number) => Xy } => {
  const side = (k: number, f: number): Xy => {
    const [a, b] = [CORNERS[k]!, CORNERS[(k + 1) % 4]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const e = (4 * bow * f * (1 - f)) / length;
    return [a[0] + f * (b[0] - a[0]) - e * (b[1] - a[1]), a[1] + f * (b[1] - a[1]) + e * (b[0] - a[0])];
  };
  const paper = new Paper(1200, 800);
  for (let k = 0; k < 4; k++)
    paper.line(
      Array.from({ length: 81 }, (_, i) => side(k, i / 80)),
      2.4,
    );
  return { paper, side };
};

test('corners 25 pixels off are moved onto the printed frame', () => {
  const frame = snapFrame(preparePhoto(boxedPaper().grain(12)), corners(missed));
  expect(frame.polarity).toBe('dark');
  frame.corners.forEach(([x, y], k) => expect(Math.hypot(x - CORNERS[k]![0], y - CORNERS[k]![1])).toBeLessThan(0.5));
});

test('of a frame and the grid lines beside it the frame is taken', () => {
  const paper = boxedPaper();
  for (let k = 1; k < 40; k++)
    paper.line(
      [
        [120 + 24 * k, 80],
        [120 + 24 * k, 720],
      ],
      1.2,
      [170, 175, 175],
    );
  const frame = snapFrame(preparePhoto(paper), corners(missed));
  frame.corners.forEach(([x, y], k) => expect(Math.hypot(x - CORNERS[k]![0], y - CORNERS[k]![1])).toBeLessThan(0.5));
});

test.each([
  ['a neighbouring panel close by is not taken for the frame', 1, 720],
  ['a grid line as strong as the frame does not stand for it', -1, 720],
])('%s', (_, way, bottom) => {
  const gap = 28 * way;
  const [left, right] = [120, 1080];
  const paper = boxedPaper().line(
    [
      [left, bottom + gap],
      [right, bottom + gap],
    ],
    2.4,
  );
  if (way > 0)
    for (const x of [left, right])
      paper.line(
        [
          [x, bottom + gap],
          [x, bottom + gap + 40],
        ],
        2.4,
      );
  const between = CORNERS.map(([x, y], k): Xy => [x + [9, -8, 5, -4][k]!, y + (k < 2 ? 0.4 * gap : 6)]);
  const frame = snapFrame(preparePhoto(paper.grain(8)), corners(between));
  frame.corners.forEach(([x, y], k) => expect(Math.hypot(x - CORNERS[k]![0], y - CORNERS[k]![1])).toBeLessThan(0.5));
});

test('a light frame on a dark plate is found too', () => {
  const paper = boxedPaper().grain(6);
  for (let i = 0; i < paper.rgb.length; i++) paper.rgb[i] = 255 - paper.rgb[i]!;
  const frame = snapFrame(preparePhoto(paper), corners(missed));
  expect(frame.polarity).toBe('light');
  frame.corners.forEach(([x, y], k) => expect(Math.hypot(x - CORNERS[k]![0], y - CORNERS[k]![1])).toBeLessThan(0.5));
});

test('the edge of a tinted panel without a line serves as its side', () => {
  const paper = new Paper(1200, 800, [252, 252, 252]);
  for (let y = 80; y <= 720; y++)
    for (let x = 120; x <= 1080; x++) paper.rgb.fill(228, (y * 1200 + x) * 3, (y * 1200 + x) * 3 + 3);
  const frame = snapFrame(preparePhoto(paper.grain(5)), corners(missed));
  expect(Object.values(frame.sides).map((s) => s.kind)).toEqual(['edge', 'edge', 'edge', 'edge']);
  frame.corners.forEach(([x, y], k) => expect(Math.hypot(x - CORNERS[k]![0], y - CORNERS[k]![1])).toBeLessThan(2));
});

test('on bare paper the sides are open and the corners stay', () => {
  const frame = snapFrame(preparePhoto(new Paper(1200, 800).grain(10)), corners(missed));
  expect(Object.values(frame.sides).map((s) => s.kind)).toEqual(['open', 'open', 'open', 'open']);
  frame.corners.forEach(([x, y], k) =>
    expect([x, y]).toEqual([expect.closeTo(missed[k]![0], 6), expect.closeTo(missed[k]![1], 6)]),
  );
});

test('the patch follows sides that bow, and comes back', () => {
  const { paper, side } = bowed(9);
  const frame = snapFrame(preparePhoto(paper), corners(missed));
  const map = frameMapOf(frame)!;
  for (const f of [0.2, 0.5, 0.85]) {
    const [x, y] = map.toPhoto(f, 0);
    const [ex, ey] = side(0, f);
    expect(Math.hypot(x - ex, y - ey)).toBeLessThan(0.6);
  }
  for (const [u, v] of [
    [0.3, 0.4],
    [0.9, 0.1],
    [0.02, 0.97],
  ] as const) {
    const [x, y] = map.toPhoto(u, v);
    const [bu, bv] = map.toFrame(x, y);
    expect(bu).toBeCloseTo(u, 5);
    expect(bv).toBeCloseTo(v, 5);
  }
});
