import { quantile } from '../../numeric/quantile.ts';
import type { UnderstoodWord } from './near-words.ts';

/** A reading of a speed as sure as this stands by itself. */
export const SURE_ALONE = 0.75;
/** Pairs of curves that follow from each other by the fan laws with these speeds: so many bear out each other's figures. */
const BORNE_OUT = 2;
/** Wheels of workshop blowers hardly ever turn slower: a figure may be lost, 1170 read as 170. Common practice, no source. */
const SLOWEST_RPM = 250;

/** Two curves tell the ratio of their speeds this closely, and a misread figure changes a speed by more. */
const AGREES = 0.004;

/** So many curves of one wheel tell how well its curves follow from each other. */
const ENOUGH_CURVES = 4;
/** A speed so far off the laws, and so many times further than the others are, is likely one figure off. */
const OFF_LAW = 0.01;
const TIMES_OFF = 5;

/**
 * Which speeds lie off the fan laws by more than drawing does: 1130 among 1750, 1550, 1350 and 950, where the curves say
 * 1150.
 * @param shares speeds as the curves have them by the fan laws, of the fastest's; null where they do not tell
 * @returns indices into `speeds`
 */
export function speedsOffLaw(speeds: readonly (number | null)[], shares: readonly (number | null)[]): number[] {
  const told = speeds.flatMap((speed, k) => (speed && shares[k] ? [{ k, ratio: speed / shares[k] }] : []));
  if (told.length < ENOUGH_CURVES) return [];
  const middle = quantile(
    Float64Array.from(told, ({ ratio }) => ratio),
    0.5,
  );
  const off = told.map(({ ratio }) => Math.abs(ratio / middle - 1));
  const usual = quantile(Float64Array.from(off), 0.5);
  return told.flatMap(({ k }, i) => (off[i]! > Math.max(OFF_LAW, TIMES_OFF * usual) ? [k] : []));
}

/**
 * Which speeds rest on one label that was hard to read, or are no likely speed of a wheel, with nothing to bear them out.
 * @param lawful pairs of curves whose speeds the fan laws bear out; two speeds alone may both be read a little wrong
 * @param shares speeds as the curves have them by the fan laws, of the fastest's: a clearly read speed bears out another
 * @returns indices into `speeds`
 */
export function doubtfulSpeeds(
  speeds: readonly (number | null)[],
  words: readonly UnderstoodWord[],
  lawful: number,
  shares: readonly (number | null)[] = [],
): number[] {
  if (lawful >= BORNE_OUT) return [];
  const labelsOf = (speed: number) => words.filter((w) => w.speed_rpm === speed);
  const isClear = (speed: number) => labelsOf(speed).some(({ confidence }) => confidence >= SURE_ALONE);
  const isBorneOut = (k: number) =>
    speeds.some(
      (speed, j) =>
        speed !== null &&
        speed !== speeds[k] &&
        isClear(speed) &&
        shares[j] &&
        shares[k] &&
        Math.abs((speeds[k]! / shares[k] / speed) * shares[j] - 1) < AGREES,
    );
  return speeds.flatMap((speed, k) => {
    if (speed === null) return [];
    // a speed no label says as it is was mended by the fan laws
    const isFaint = labelsOf(speed).length > 0 && !isClear(speed) && !isBorneOut(k);
    return isFaint || speed < SLOWEST_RPM ? [k] : [];
  });
}
