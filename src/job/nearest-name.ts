import { editDistance } from '../words/edit-distance.ts';

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
