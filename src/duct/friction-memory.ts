/** What a full visit of a friction item leaves for the next: where it was, and 1/√f with its first two derivatives by ln Re. */
export type FrictionMemory = {
  /** 1 / flow of the visit [s/m3]; 0 before the first */
  readonly inverseFlow: Float64Array;
  readonly inverseRoot: Float64Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
};

/** No visit yet. Any plausible 1/√f will do for a start; 7 is f = 0.0204. */
export const emptyMemory = (items: number): FrictionMemory => ({
  inverseFlow: new Float64Array(items),
  inverseRoot: new Float64Array(items).fill(7),
  first: new Float64Array(items),
  second: new Float64Array(items),
});
