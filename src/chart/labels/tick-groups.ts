import type { Word } from './chains.ts';
import type { Surroundings } from './surroundings.ts';

export type Side = 'bottom' | 'top' | 'left' | 'right';

/** Words in a row or a column beside the frame (or just inside it) that may be the labels of one scale. */
export type TickGroup = {
  readonly side: Side;
  readonly isInside: boolean;
  /** distance from the frame's side, letter heights */
  readonly distance: number;
  readonly words: readonly Word[];
};

const FEWEST = 3;
const LONGEST = 7.5;
/** Further out, letter heights, stands no scale of the plot: the table it lies on, a page beside it. */
const FURTHEST = 24;

/** Rows under and over the frame, columns left and right of it, nearest and fullest first. */
export function findTickGroups(all: Surroundings, words: readonly Word[]): TickGroup[] {
  const { frame } = all;
  const [width, height] = [frame.x1 - frame.x0, frame.y1 - frame.y0];
  const level = words.filter(
    (w) => w.run === 'level' && w.pieces.length <= 11 && w.x1 - w.x0 < LONGEST * w.size && w.size >= 6,
  );
  const middleX = (w: Word) => (w.x0 + w.x1) / 2;
  const middleY = (w: Word) => (w.y0 + w.y1) / 2;
  const beside = level.filter(
    (w) => middleY(w) > frame.y0 - 0.05 * height && middleY(w) < frame.y1 + 0.05 * height + w.size,
  );
  const above = level.filter((w) => middleX(w) > frame.x0 - 0.05 * width && middleX(w) < frame.x1 + 0.05 * width);
  const zones: { side: Side; words: Word[]; distance: (w: Word) => number }[] = [
    {
      side: 'left',
      words: beside.filter((w) => middleX(w) < frame.x0 + 0.12 * width),
      distance: (w) => frame.x0 - w.x1,
    },
    {
      side: 'right',
      words: beside.filter((w) => middleX(w) > frame.x1 - 0.12 * width),
      distance: (w) => w.x0 - frame.x1,
    },
    {
      side: 'bottom',
      words: above.filter((w) => middleY(w) > frame.y1 - 0.12 * height && w.y0 < frame.y1 + 7 * w.size + 0.04 * height),
      distance: (w) => w.y0 - frame.y1,
    },
    {
      side: 'top',
      words: above.filter((w) => middleY(w) < frame.y0 + 0.12 * height && w.y1 > frame.y0 - 5 * w.size - 0.04 * height),
      distance: (w) => frame.y0 - w.y1,
    },
  ];
  return zones.flatMap(({ side, words: some, distance }) => {
    const upright = side === 'left' || side === 'right';
    // a tick that touches a figure makes its word longer on one side
    const edges: ((w: Word) => number)[] = upright
      ? [(w) => w.x1, (w) => w.x0, middleX]
      : [(w) => w.y1, (w) => w.y0, middleY];
    const span = upright ? height : width;
    const places = upright ? middleY : middleX;
    const near = some.filter((w) => distance(w) < FURTHEST * w.size);
    return alignedGroups(near, edges, places, span).map((group) => {
      const away = median(group.map((w) => distance(w) / w.size));
      return { side, isInside: away < -0.5, distance: away, words: group };
    });
  });
}

/** The fullest aligned set first, its words taken out, and again. */
function alignedGroups(
  words: readonly Word[],
  edges: readonly ((w: Word) => number)[],
  place: (w: Word) => number,
  span: number,
): Word[][] {
  let left = [...words];
  const groups: Word[][] = [];
  for (let round = 0; round < 7 && left.length >= FEWEST; round++) {
    let best: Word[] = [];
    let bestScore = 0;
    for (const seed of left)
      for (const edge of edges) {
        const members = left.filter(
          (w) =>
            Math.abs(edge(w) - edge(seed)) < 0.55 * seed.size && w.size < 1.45 * seed.size && seed.size < 1.45 * w.size,
        );
        const places = members.map(place);
        const reach = (Math.max(...places) - Math.min(...places)) / span;
        const score = members.length * Math.min(1, reach / 0.5);
        if (score > bestScore) [best, bestScore] = [members, score];
      }
    if (best.length < FEWEST) break;
    const taken = new Set(best);
    left = left.filter((w) => !taken.has(w));
    const places = best.map(place);
    if (Math.max(...places) - Math.min(...places) > 0.25 * span) groups.push(best);
  }
  return groups;
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;
