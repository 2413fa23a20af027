import type { MarkerPlace } from './find-markers.ts';

/**
 * The markers that belong to one curve: a chain through the tapped one, from left to right, that turns little and
 * leaps little. Legends' samples and other curves' markers stay out.
 * @param start index of the tapped marker in `places`
 * @returns indices, from left to right
 */
export function chainMarkers(places: readonly MarkerPlace[], start: number, frameWidth: number): number[] {
  const longest = LEAP_SHARE * frameWidth;
  const right = bestChain(places, start, 1, longest);
  const left = bestChain(places, start, -1, longest);
  return [...left.slice(1).reverse(), ...right];
}

/** A leap this long between neighbouring markers costs as much as a good marker earns. */
const LEAP_SHARE = 0.26;
/** Turning by this much between three markers costs about as much as a marker earns: test points are often few and the hump sharp. */
const SOFT_TURN = 1.05;

/** Longest worthwhile chain from the start to one side, by dynamic programming over pairs of markers. */
function bestChain(places: readonly MarkerPlace[], start: number, way: 1 | -1, longest: number): number[] {
  const ahead = places
    .map((_, i) => i)
    .filter((i) => i === start || way * (places[i]!.x - places[start]!.x) > -2)
    .sort((a, b) => (a === start ? -1 : b === start ? 1 : way * (places[a]!.x - places[b]!.x)));
  const n = ahead.length;
  const at = (k: number) => places[ahead[k]!]!;
  // worth[i][j]: best worth of a chain that ends ... i, j
  const worth = Array.from({ length: n }, () => new Float64Array(n).fill(-Infinity));
  const before = Array.from({ length: n }, () => new Int32Array(n).fill(-1));
  let best = { worth: 0, i: -1, j: 0 };
  for (let j = 1; j < n; j++) {
    for (let i = 0; i < j; i++) {
      const dx = at(j).x - at(i).x;
      const dy = at(j).y - at(i).y;
      if (way * dx < -2) continue;
      const leap = Math.hypot(dx, dy);
      const gain = 1.3 * at(j).alike ** 2 - (leap / longest) ** 2;
      if (i === 0) worth[0]![j] = gain;
      else
        for (let h = 0; h < i; h++) {
          if (!(worth[h]![i]! > -Infinity)) continue;
          const a = Math.atan2(at(i).y - at(h).y, at(i).x - at(h).x);
          let turn = Math.abs(Math.atan2(dy, dx) - a);
          if (turn > Math.PI) turn = 2 * Math.PI - turn;
          if (turn > 1.6) continue;
          const w = worth[h]![i]! + gain - (turn / SOFT_TURN) ** 2;
          if (w > worth[i]![j]!) {
            worth[i]![j] = w;
            before[i]![j] = h;
          }
        }
      if (worth[i]![j]! > best.worth) best = { worth: worth[i]![j]!, i, j };
    }
  }
  const chain: number[] = [ahead[best.j]!];
  for (let { i, j } = best; i >= 0;) {
    chain.push(ahead[i]!);
    const h = before[i]![j]!;
    j = i;
    i = h;
  }
  return chain.reverse();
}
