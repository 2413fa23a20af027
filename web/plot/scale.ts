/** One pair of maps between a value and its place on the paper [px]. */
export type Scale = { place: (value: number) => number; value: (place: number) => number };

export function linearScale(from: readonly [number, number], to: readonly [number, number]): Scale {
  const stretch = (to[1] - to[0]) / (from[1] - from[0] || 1);
  return {
    place: (value) => to[0] + (value - from[0]) * stretch,
    value: (place) => from[0] + (place - to[0]) / stretch,
  };
}

/** A polyline through points already on the paper. */
export const pathThrough = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

/** A closed band between an upper and a lower line over the same places. */
export const bandBetween = (
  upper: readonly (readonly [number, number])[],
  lower: readonly (readonly [number, number])[],
): string => (upper.length === 0 ? '' : `${pathThrough(upper)}${pathThrough([...lower].reverse()).replace('M', 'L')}Z`);
