import type { UnderstoodWord } from './near-words.ts';

/** A reading of a speed as sure as this stands by itself. */
export const SURE_ALONE = 0.75;
/** Pairs of curves that follow from each other by the fan laws with these speeds: so many bear out each other's figures. */
const BORNE_OUT = 2;
/** Wheels of workshop blowers hardly ever turn slower: a figure may be lost, 1170 read as 170. Common practice, no source. */
const SLOWEST_RPM = 250;

/**
 * Which speeds rest on one label that was hard to read, or are no likely speed of a wheel, with nothing to bear them out.
 * @param lawful pairs of curves whose speeds the fan laws bear out; two speeds alone may both be read a little wrong
 * @returns indices into `speeds`
 */
export function doubtfulSpeeds(
  speeds: readonly (number | null)[],
  words: readonly UnderstoodWord[],
  lawful: number,
): number[] {
  if (lawful >= BORNE_OUT) return [];
  return speeds.flatMap((speed, k) => {
    if (speed === null) return [];
    const own = words.filter((w) => w.speed_rpm === speed);
    // a speed no label says as it is was mended by the fan laws
    const isFaint = own.length > 0 && own.every(({ confidence }) => confidence < SURE_ALONE);
    return isFaint || speed < SLOWEST_RPM ? [k] : [];
  });
}
