/** Seeded randomness: the same seed and index give the same rig on every machine. */
export type Random = {
  uniform(low?: number, high?: number): number;
  normal(): number;
  chance(p: number): boolean;
  pick<T>(from: readonly T[]): T;
  integer(low: number, high: number): number;
};

/** Source: C. Doty-Humphrey's small fast counting generator (sfc32); Box–Muller for the normal. */
export function randomFrom(seed: number, index: number): Random {
  let [a, b, c, d] = [mixed(seed), mixed(index + 0x632be5ab), mixed(Math.imul(index, 0x9e3779b1) ^ seed), 1];
  const next = () => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return ((t >>> 0) + 0.5) / 4294967296;
  };
  for (let i = 0; i < 20; i++) next();
  const uniform = (low = 0, high = 1) => low + (high - low) * next();
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next()),
    chance: (p) => next() < p,
    pick: (from) => from[Math.floor(next() * from.length)]!,
    integer: (low, high) => low + Math.floor(next() * (high - low + 1)),
  };
}

/** Spreads the bits of a small number. Source: finaliser of MurmurHash3. */
function mixed(n: number): number {
  let h = (n + 0x9e3779b9) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) | 0;
}
