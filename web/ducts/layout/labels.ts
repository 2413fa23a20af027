import { textWidth } from './metrics.ts';
import type { Metrics } from './metrics.ts';
import type { Point } from './polyline.ts';
import type { Box, PlacedPipe, Sheet } from './sheet.ts';

/** What somebody would like to read beside a pipe, longest wish first; each wish is one or two lines. */
export type Wish = { pipe: PlacedPipe; lines: string[][]; tone: 'air' | 'ink' };

export type Label = { at: Point; anchor: 'start' | 'middle' | 'end'; lines: string[]; tone: Wish['tone']; box: Box };

const LINE = 1.28;

const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Every straight of a pipe as a box, so that no lettering runs over it. */
function pipeBoxes(pipe: PlacedPipe): Box[] {
  const half = pipe.width / 2 + 2;
  return pipe.points.slice(1).map((to, i) => {
    const from = pipe.points[i]!;
    const left = Math.min(from.x, to.x) - half;
    const top = Math.min(from.y, to.y) - half;
    return { x: left, y: top, width: Math.abs(to.x - from.x) + 2 * half, height: Math.abs(to.y - from.y) + 2 * half };
  });
}

/** Gate blades stick out to the right of a standing pipe and below a lying one. */
function markBox(mark: Sheet['marks'][number]): Box {
  const reach = mark.kind === 'gate' ? mark.width + 26 : mark.width / 2 + 3;
  return mark.across
    ? { x: mark.at.x - 8, y: mark.at.y - mark.width / 2 - 4, width: 16, height: mark.width / 2 + 4 + reach }
    : { x: mark.at.x - mark.width / 2 - 4, y: mark.at.y - 8, width: mark.width / 2 + 4 + reach, height: 16 };
}

type Straight = { from: Point; to: Point; length: number; level: boolean };

const straightsOf = (pipe: PlacedPipe): Straight[] =>
  pipe.points
    .slice(1)
    .map((to, i) => ({
      from: pipe.points[i]!,
      to,
      length: Math.hypot(to.x - pipe.points[i]!.x, to.y - pipe.points[i]!.y),
      level: Math.abs(to.y - pipe.points[i]!.y) < 1,
    }))
    .sort((a, b) => b.length - a.length);

type Try = { at: Point; anchor: Label['anchor'] };

/** Above a lying pipe, else below; right of a standing one at several heights, else left. */
function tries(pipe: PlacedPipe, height: number): Try[] {
  return straightsOf(pipe).flatMap(({ from, to, level, length }): Try[] => {
    if (length < 24) return [];
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const off = pipe.width / 2 + 6;
    if (level) {
      return [0, -0.2, 0.2].flatMap((shift) => [
        { at: { x: middle.x + shift * length, y: middle.y - off - height }, anchor: 'middle' as const },
        { at: { x: middle.x + shift * length, y: middle.y + off }, anchor: 'middle' as const },
      ]);
    }
    return [0, 0.18, -0.18, 0.32, -0.32].flatMap((shift) => {
      const y = middle.y + shift * (to.y - from.y) - height / 2;
      return [
        { at: { x: middle.x + off + 3, y }, anchor: 'start' as const },
        { at: { x: middle.x - off - 3, y }, anchor: 'end' as const },
      ];
    });
  });
}

function boxOf({ at, anchor }: Try, lines: string[], font: number): Box {
  const width = Math.max(...lines.map((line) => textWidth(line, font)));
  const x = anchor === 'start' ? at.x : anchor === 'end' ? at.x - width : at.x - width / 2;
  return { x, y: at.y, width, height: lines.length * font * LINE };
}

/** Puts each wish where it covers nothing; a wish that fits nowhere stays unsaid (the table says it). Earlier wishes go first. */
export function placeLabels(sheet: Sheet, wishes: readonly Wish[], metrics: Metrics): Label[] {
  const { font } = metrics;
  const taken: Box[] = [
    ...sheet.pipes.flatMap(pipeBoxes),
    ...sheet.marks.map(markBox),
    ...sheet.machines.map((machine) => machine.box),
    ...sheet.equipment.map((equipment) => equipment.box),
    sheet.blower.box,
    { x: sheet.wayOut.tip.x - 74, y: sheet.wayOut.tip.y - 42, width: 90, height: 56 },
    ...(sheet.wayOut.wallX === null ? [] : [{ x: sheet.wayOut.wallX - 3, y: 0, width: 14, height: sheet.floorY }]),
    { x: -1e4, y: -1e4, width: 2e4 + sheet.width, height: 1e4 },
    { x: -1e4, y: sheet.floorY - 2, width: 2e4 + sheet.width, height: 1e4 },
    { x: -1e4, y: 0, width: 1e4 + 2, height: 1e4 },
    { x: sheet.width - 2, y: 0, width: 1e4, height: 1e4 },
  ];
  const labels: Label[] = [];
  for (const { pipe, lines: choices, tone } of wishes) {
    const label = firstFit(pipe, choices, font, taken);
    if (!label) continue;
    taken.push(label.box);
    labels.push({ ...label, tone });
  }
  return labels;
}

function firstFit(
  pipe: PlacedPipe,
  choices: string[][],
  font: number,
  taken: readonly Box[],
): Omit<Label, 'tone'> | null {
  for (const lines of choices) {
    for (const place of tries(pipe, lines.length * font * LINE)) {
      const box = boxOf(place, lines, font);
      if (!taken.some((other) => overlaps(box, other))) return { ...place, lines, box };
    }
  }
  return null;
}
