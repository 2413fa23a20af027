import { acrossAt, lengthOf, type PageLine } from './page-lines.ts';

/** Lines that cross or meet each other: a frame with its grid, a table, a text box, a drawing. */
export type LineWeb = { readonly upright: PageLine[]; readonly level: PageLine[] };

/** Where an upright and a level line cross, carried on straight beyond their ends; null where they run alike. */
export function crossing(upright: PageLine, level: PageLine): readonly [number, number] | null {
  let y = level.c[0];
  let x = upright.c[0];
  for (let round = 0; round < 8; round++) {
    x = acrossAt(upright, y);
    const next = acrossAt(level, x);
    if (Math.abs(next - y) < 0.05) return [x, next];
    y = next;
  }
  return Math.abs(acrossAt(level, acrossAt(upright, y)) - y) < 1 ? [x, y] : null;
}

/** How far short of each other two lines may stop and still meet: the ends of a line are lost in its corner. */
const REACH_PX = 5;
const REACH_SHARE = 0.01;

const reachOf = (line: PageLine) => REACH_PX + REACH_SHARE * lengthOf(line);

/** Groups of lines that hang together by crossings, and ladders: lines of one direction that begin and end together. */
export function lineWebs(lines: readonly PageLine[]): LineWeb[] {
  const upright = lines.filter((l) => l.upright);
  const level = lines.filter((l) => !l.upright);
  return [...crossingWebs(upright, level), ...ladders(upright), ...ladders(level)];
}

function crossingWebs(upright: readonly PageLine[], level: readonly PageLine[]): LineWeb[] {
  const groups = new Groups(upright.length + level.length);
  const boxes = level.map(boxOf);
  upright.forEach((u, i) => {
    const box = boxOf(u);
    level.forEach((l, j) => {
      const other = boxes[j]!;
      if (box[0] > other[2] || box[2] < other[0] || box[1] > other[3] || box[3] < other[1]) return;
      if (groups.areOne(i, upright.length + j)) return;
      const at = crossing(u, l);
      if (at && isOn(u, at[1]) && isOn(l, at[0])) groups.join(i, upright.length + j);
    });
  });
  return groups
    .members()
    .map((ids) => ({
      upright: ids.filter((i) => i < upright.length).map((i) => upright[i]!),
      level: ids.filter((i) => i >= upright.length).map((i) => level[i - upright.length]!),
    }))
    .filter((w) => w.upright.length && w.level.length);
}

/** A chart may have level grid lines only: three at least, of one length, one above the other. */
function ladders(lines: readonly PageLine[]): LineWeb[] {
  const groups = new Groups(lines.length);
  lines.forEach((a, i) => {
    for (let j = i + 1; j < lines.length; j++) {
      const b = lines[j]!;
      const both = Math.min(a.to, b.to) - Math.max(a.from, b.from);
      if (both > 0.85 * Math.max(lengthOf(a), lengthOf(b))) groups.join(i, j);
    }
  });
  return groups
    .members()
    .filter((ids) => ids.length >= 3)
    .map((ids) => {
      const rungs = ids.map((i) => lines[i]!);
      return rungs[0]!.upright ? { upright: rungs, level: [] } : { upright: [], level: rungs };
    });
}

/** Disjoint sets of numbers 0..n-1. */
class Groups {
  #parent: Int32Array;

  constructor(count: number) {
    this.#parent = Int32Array.from({ length: count }, (_, i) => i);
  }

  join(a: number, b: number): void {
    this.#parent[this.#root(a)] = this.#root(b);
  }

  areOne(a: number, b: number): boolean {
    return this.#root(a) === this.#root(b);
  }

  members(): number[][] {
    const by = new Map<number, number[]>();
    for (let i = 0; i < this.#parent.length; i++) {
      const root = this.#root(i);
      const group = by.get(root);
      if (group) group.push(i);
      else by.set(root, [i]);
    }
    return [...by.values()];
  }

  #root(i: number): number {
    let at = i;
    while (this.#parent[at]! !== at) at = this.#parent[at] = this.#parent[this.#parent[at]!]!;
    return at;
  }
}

const isOn = (line: PageLine, along: number) => along >= line.from - reachOf(line) && along <= line.to + reachOf(line);

/** Left, top, right, bottom of a line, with its reach. */
function boxOf(line: PageLine): [number, number, number, number] {
  const reach = reachOf(line);
  const across = [acrossAt(line, line.from), acrossAt(line, line.middle), acrossAt(line, line.to)];
  const [low, high] = [Math.min(...across) - reach, Math.max(...across) + reach];
  return line.upright
    ? [low, line.from - reach, high, line.to + reach]
    : [line.from - reach, low, line.to + reach, high];
}
