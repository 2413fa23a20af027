import type { Ink } from './masks.ts';

/** A connected piece of ink: its box (x1, y1 just outside), its pixels, and how steep its border is, steps of grey a pixel. */
export type Piece = {
  readonly id: number;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly area: number;
  readonly edge: number;
  /** how much the brightness varies around it */
  readonly deviation: number;
};

/** All pieces, and for every pixel the id of its piece (0: no ink). */
export type Pieces = { readonly list: readonly Piece[]; readonly labels: Int32Array };

/**
 * Cuts ink into connected pieces (eight neighbours). The border of the picture has to be empty.
 * Source: A. Rosenfeld & J. L. Pfaltz, J. ACM 13 (1966) 471, two passes with a table of equal labels.
 */
export function findPieces(ink: Ink): Pieces {
  const { width, height, mask } = ink;
  const labels = new Int32Array(mask.length);
  const parent: number[] = [0];
  const root = (a: number): number => {
    while (parent[a] !== a) a = parent[a] = parent[parent[a]!]!;
    return a;
  };
  const join = (a: number, b: number) => {
    const [ra, rb] = [root(a), root(b)];
    parent[Math.max(ra, rb)] = Math.min(ra, rb);
  };
  for (let y = 1; y < height - 1; y++)
    for (let x = 1, k = y * width + 1; x < width - 1; x++, k++) {
      if (!mask[k]) continue;
      const left = labels[k - 1]!;
      const above = labels[k - width]!;
      const aboveLeft = labels[k - width - 1]!;
      const aboveRight = labels[k - width + 1]!;
      let label = left || above || aboveLeft || aboveRight;
      if (!label) {
        label = parent.length;
        parent.push(label);
      } else if (aboveRight && !above) join(label, aboveRight);
      if (left && above && left !== above) join(left, above);
      labels[k] = label;
    }
  return collect(ink, labels, parent, root);
}

function collect(ink: Ink, labels: Int32Array, parent: number[], root: (a: number) => number): Pieces {
  const { width, height, edge, deviation } = ink;
  const ids = new Int32Array(parent.length);
  let count = 0;
  for (let a = 1; a < parent.length; a++) if (root(a) === a) ids[a] = ++count;
  for (let a = 1; a < parent.length; a++) ids[a] = ids[root(a)]!;
  const box = new Int32Array(4 * (count + 1));
  for (let id = 1; id <= count; id++) box.set([width, height, 0, 0], 4 * id);
  const area = new Int32Array(count + 1);
  const border = new Int32Array(count + 1);
  const edges = new Float64Array(count + 1);
  const deviations = new Float64Array(count + 1);
  for (let y = 1; y < height - 1; y++)
    for (let x = 1, k = y * width + 1; x < width - 1; x++, k++) {
      if (!labels[k]) continue;
      const id = (labels[k] = ids[labels[k]!]!);
      const b = 4 * id;
      if (x < box[b]!) box[b] = x;
      if (y < box[b + 1]!) box[b + 1] = y;
      if (x >= box[b + 2]!) box[b + 2] = x + 1;
      if (y >= box[b + 3]!) box[b + 3] = y + 1;
      area[id]!++;
      const { mask } = ink;
      if (mask[k - 1] && mask[k + 1] && mask[k - width] && mask[k + width]) continue;
      border[id]!++;
      edges[id]! += edge[k]!;
      deviations[id]! += deviation[k]!;
    }
  const list: Piece[] = [];
  for (let id = 1, b = 4; id <= count; id++, b += 4)
    list.push({
      id,
      x0: box[b]!,
      y0: box[b + 1]!,
      x1: box[b + 2]!,
      y1: box[b + 3]!,
      area: area[id]!,
      edge: edges[id]! / Math.max(1, border[id]!),
      deviation: deviations[id]! / Math.max(1, border[id]!),
    });
  return { list, labels };
}
