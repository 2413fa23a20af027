/** The middle one of some numbers in order, the upper of two; NaN of none. Source: definition (median). */
export const middleOf = (values: readonly number[]): number =>
  values.length ? values.toSorted((a, b) => a - b)[values.length >> 1]! : NaN;
