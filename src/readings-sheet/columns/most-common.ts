/** The value that stands most often in a list, the first of several, and how often; null in an empty one. */
export function mostCommon(values: readonly number[]): { readonly value: number; readonly count: number } | null {
  const votes = new Map<number, number>();
  for (const value of values) votes.set(value, (votes.get(value) ?? 0) + 1);
  const [best] = [...votes].sort((a, b) => b[1] - a[1]);
  return best ? { value: best[0], count: best[1] } : null;
}
