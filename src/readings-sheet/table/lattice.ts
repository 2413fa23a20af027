export type Xy = readonly [number, number];

/**
 * Where a table's rulings cross: `nodes[r][c]` in photo pixels, from the top left as the photo is seen. Where rulings run on
 * beyond the last that crosses them, or none cross, their ends stand for one that is not drawn.
 */
export type Lattice = {
  readonly nodes: readonly (readonly Xy[])[];
  readonly isDrawn: { readonly level: readonly boolean[]; readonly upright: readonly boolean[] };
};

/** The same lattice in other coordinates. */
export const mapped = ({ nodes, isDrawn }: Lattice, to: (at: Xy) => Xy): Lattice => ({
  nodes: nodes.map((row) => row.map(to)),
  isDrawn,
});

/** Rows of nodes as columns. */
export const transposed = (nodes: readonly (readonly Xy[])[]): Xy[][] =>
  nodes[0]!.map((_, c) => nodes.map((row) => row[c]!));
