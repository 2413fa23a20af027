/** Number of single letters to insert, remove or change to turn one word into the other (Levenshtein 1966). */
function editDistance(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = above[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(change, above[j]! + 1, row[j - 1]! + 1));
    }
    above = row;
  }
  return above[b.length]!;
}

const plain = (name: string) => name.toLowerCase().replace(/[-_ ]/g, '');

const LONGEST_NAME = 60;

/**
 * The known name somebody most likely meant, or undefined when none is close: capitals, `-`, `_` and spaces do not
 * count, and up to a third of the letters may differ.
 */
export function nearestName(given: string, known: readonly string[]): string | undefined {
  if (given.length > LONGEST_NAME) return undefined;
  const ranked = known
    .map((name) => ({ name, distance: editDistance(plain(given), plain(name)) }))
    .filter(({ name, distance }) => distance <= Math.max(1, Math.floor(Math.min(name.length, given.length) / 3)))
    .toSorted((a, b) => a.distance - b.distance);
  return ranked[0]?.name;
}
