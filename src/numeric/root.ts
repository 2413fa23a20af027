/**
 * Root of a function inside a bracket: inverse quadratic steps where they are safe, halving where not.
 * @param f     function with f(low) and f(high) of opposite sign (or zero)
 * @param tolerance absolute width of the last bracket
 * @returns a place within `tolerance` of a change of sign; never outside the bracket
 * Source: T. R. Chandrupatla, Adv. Eng. Softw. 28 (1997) 145–149.
 * Throws RangeError when the ends do not bracket a sign change: a caller's mistake.
 */
export function bracketedRoot(f: (x: number) => number, low: number, high: number, tolerance: number): number {
  let [a, b] = [high, low];
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0)
    throw new RangeError(`bracket: expected a sign change, received f(${low}) = ${fb} and f(${high}) = ${fa}`);
  let t = 0.5;
  for (let i = 0; i < 200; i++) {
    const x = a + t * (b - a);
    const fx = f(x);
    let c: number;
    let fc: number;
    if (fx > 0 === fa > 0) [c, fc] = [a, fa];
    else [c, fc, b, fb] = [b, fb, a, fa];
    [a, fa] = [x, fx];
    const [best, fBest] = Math.abs(fa) < Math.abs(fb) ? [a, fa] : [b, fb];
    const least = tolerance / Math.abs(b - a);
    if (least > 0.5 || fBest === 0 || !Number.isFinite(least)) return best;
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    const safe = phi * phi < xi && (1 - phi) ** 2 < 1 - xi;
    t = safe ? ((fa / (fb - fa)) * fc) / (fb - fc) + ((((c - a) / (b - a)) * fa) / (fc - fa)) * (fb / (fc - fb)) : 0.5;
    t = Math.min(1 - least, Math.max(least, t));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
