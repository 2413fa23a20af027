import { expect, test } from 'vitest';
import { findFrames, type FoundFrame } from '../../../../src/chart/page/find-frames.ts';
import { preparePhoto } from '../../../../src/chart/index.ts';
import { Paper, type Xy } from '../paper.ts';

type Quad = readonly [Xy, Xy, Xy, Xy];

/** Bottom-left, bottom-right, top-right, top-left of a frame seen somewhat from below and aside. */
const FRAME: Quad = [
  [212, 716],
  [1118, 690],
  [1086, 168],
  [240, 150],
];

/** The place at shares of the frame's sides, straight lines staying straight enough for the eye. */
const at = ([bl, br, tr, tl]: Quad, u: number, v: number): Xy =>
  [0, 1].map((k) => (1 - v) * ((1 - u) * bl[k]! + u * br[k]!) + v * ((1 - u) * tl[k]! + u * tr[k]!)) as unknown as Xy;

const INK: [number, number, number] = [25, 25, 30];
const FAINT: [number, number, number] = [150, 152, 155];

function drawGrid(paper: Paper, frame: Quad, across: number, down: number, width: number, colour = FAINT): void {
  for (let k = 0; k <= across; k++) paper.line([at(frame, k / across, 0), at(frame, k / across, 1)], width, colour);
  for (let k = 0; k <= down; k++) paper.line([at(frame, 0, k / down), at(frame, 1, k / down)], width, colour);
}

function drawCurve(paper: Paper, frame: Quad, top: number, colour = INK): void {
  const points = Array.from({ length: 60 }, (_, k) => at(frame, (0.9 * k) / 59, top * (1 - (k / 59) ** 2)));
  paper.line(points, 2.2, colour);
}

/** Numbers beside an axis, each a little group of strokes. */
function drawWord(paper: Paper, [x, y]: Xy, letters: number, colour = INK): void {
  for (let k = 0; k < letters; k++) {
    const left = x + 11 * k;
    paper.line(
      [
        [left, y],
        [left + 6, y + 2],
        [left + 1, y + 12],
        [left + 7, y + 11],
      ],
      1.8,
      colour,
    );
  }
}

function drawLabels(paper: Paper, frame: Quad, colour = INK): void {
  for (let k = 0; k <= 5; k++) {
    const [bx, by] = at(frame, k / 5, 0);
    drawWord(paper, [bx - 12, by + 14], 3, colour);
    const [lx, ly] = at(frame, 0, k / 5);
    drawWord(paper, [lx - 46, ly - 6], 3, colour);
  }
}

function drawText(paper: Paper, [left, top]: Xy, lines: number, width: number): void {
  for (let row = 0; row < lines; row++)
    for (let x = left; x < left + width - 60; x += 66) drawWord(paper, [x, top + 26 * row], 3 + ((x + row) % 3));
}

const found = (paper: Paper): FoundFrame[] => findFrames(preparePhoto(paper.grain(8)));

/** Largest distance of a corner from the truth, pixels. */
const off = (frame: FoundFrame | undefined, truth: Quad): number =>
  frame ? Math.max(...truth.map(([x, y], k) => Math.hypot(frame.corners[k]![0] - x, frame.corners[k]![1] - y))) : NaN;

test('a boxed plot with a grid, seen aslant', () => {
  const paper = new Paper(1300, 900);
  drawGrid(paper, FRAME, 6, 5, 1.2);
  paper.line([...FRAME, FRAME[0]], 2.6, INK);
  drawCurve(paper, FRAME, 0.85);
  drawLabels(paper, FRAME);
  const [best] = found(paper);
  expect(off(best, FRAME)).toBeLessThan(3);
  expect(best).toMatchObject({ polarity: 'dark', kind: 'boxed' });
  expect(best!.confidence).toBeGreaterThan(0.8);
});

test('a table and a boxed paragraph below the plot come behind it', () => {
  const paper = new Paper(1300, 1500);
  paper.line([...FRAME, FRAME[0]], 2.4, INK);
  drawCurve(paper, FRAME, 0.8);
  drawCurve(paper, FRAME, 0.5);
  drawLabels(paper, FRAME);
  const table: Quad = [
    [160, 1120],
    [1160, 1120],
    [1160, 820],
    [160, 820],
  ];
  drawGrid(paper, table, 8, 8, 2, INK);
  for (let row = 0; row < 8; row++)
    for (let column = 0; column < 8; column++) drawWord(paper, [180 + 125 * column, 832 + 37.5 * row], 4);
  const box: Quad = [
    [160, 1460],
    [900, 1460],
    [900, 1200],
    [160, 1200],
  ];
  paper.line([...box, box[0]], 2.4, INK);
  drawText(paper, [180, 1215], 9, 700);
  const frames = found(paper);
  expect(off(frames[0], FRAME)).toBeLessThan(3);
  for (const other of [table, box])
    for (const f of frames) if (off(f, other) < 20) expect(f.confidence).toBeLessThan(0.8 * frames[0]!.confidence);
});

test('axes open at the top and right end the plot where they end', () => {
  const paper = new Paper(1300, 900);
  const frame: Quad = [
    [220, 720],
    [1100, 720],
    [1100, 160],
    [220, 160],
  ];
  paper.line([frame[3], frame[0], frame[1]], 2.6, INK);
  drawCurve(paper, frame, 0.9);
  drawLabels(paper, frame);
  const [best] = found(paper);
  expect(off(best, frame)).toBeLessThan(8);
  expect(best!.kind).toBe('open');
});

/** Dark for light and light for dark. */
function invert({ rgb }: Paper): void {
  for (let i = 0; i < rgb.length; i++) rgb[i] = 255 - rgb[i]!;
}

test('light lines on a dark plate', () => {
  const paper = new Paper(1300, 900, [225, 213, 185]);
  drawGrid(paper, FRAME, 6, 5, 1.4);
  paper.line([...FRAME, FRAME[0]], 2.6, INK);
  drawCurve(paper, FRAME, 0.85);
  drawLabels(paper, FRAME);
  invert(paper);
  const [best] = found(paper);
  expect(off(best, FRAME)).toBeLessThan(3);
  expect(best!.polarity).toBe('light');
});

test('a tinted panel ends where its white grid ends, not at the last grid line', () => {
  const paper = new Paper(1300, 900, [5, 5, 5]);
  for (let y = 160; y <= 720; y++) paper.rgb.fill(33, (y * 1300 + 220) * 3, (y * 1300 + 1100) * 3);
  const frame: Quad = [
    [220, 720],
    [1100, 720],
    [1100, 160],
    [220, 160],
  ];
  for (let k = 1; k < 8; k++) {
    paper.line([at(frame, k / 8 - 0.03, 0), at(frame, k / 8 - 0.03, 1)], 2.2, [3, 3, 3]);
    paper.line([at(frame, 0, k / 8 - 0.03), at(frame, 1, k / 8 - 0.03)], 2.2, [3, 3, 3]);
  }
  invert(paper);
  drawCurve(paper, frame, 0.9);
  drawLabels(paper, frame);
  const [best] = found(paper);
  expect(off(best, frame)).toBeLessThan(8);
  expect(best!.kind).toBe('grid');
});

test('two panels over one axis are two frames that know of each other', () => {
  const paper = new Paper(1300, 1100);
  const upper: Quad = [
    [220, 640],
    [1100, 640],
    [1100, 140],
    [220, 140],
  ];
  const lower: Quad = [
    [220, 960],
    [1100, 960],
    [1100, 665],
    [220, 665],
  ];
  for (const panel of [upper, lower]) {
    drawGrid(paper, panel, 5, 4, 1.2);
    paper.line([...panel, panel[0]], 2.4, INK);
    drawCurve(paper, panel, 0.8);
  }
  drawLabels(paper, lower);
  const frames = found(paper);
  expect(off(frames[0], upper)).toBeLessThan(3);
  expect(frames[0]!.panels).toHaveLength(1);
  expect(off({ ...frames[0]!, corners: frames[0]!.panels![0]! }, lower)).toBeLessThan(3);
});

test.each([
  ['a bare wall', (paper: Paper) => void paper.grain(14)],
  ['a page of text', (paper: Paper) => drawText(paper, [120, 90], 28, 1060)],
])('%s has no plot on it', (_, draw) => {
  const paper = new Paper(1300, 900);
  draw(paper);
  for (const f of found(paper)) expect(f.confidence).toBeLessThan(0.3);
});
