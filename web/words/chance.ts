/** A probability as a craftsman says it: n in 10, and finer only near the ends. */
export type Chance = { n: number; of: number };

export function chanceOf(probability: number): Chance {
  if (probability >= 0.995) return { n: 99, of: 100 };
  if (probability >= 0.95) return { n: 19, of: 20 };
  if (probability < 0.005) return { n: 0, of: 100 };
  if (probability < 0.05) return { n: 1, of: 20 };
  return { n: Math.min(9, Math.max(1, Math.round(probability * 10))), of: 10 };
}
