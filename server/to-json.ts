import { pointer } from '../src/issues/result.ts';

/** JSON Pointer of the first number in `value` that JSON cannot carry (NaN, an infinity), or undefined. */
export function firstBadNumber(value: unknown): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : '';
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = firstBadNumber(inner);
    if (found !== undefined) return pointer(key) + found;
  }
  return undefined;
}

/**
 * Text of an answer. A NaN or an infinity would silently become null in JSON, so it is an error here.
 * @throws RangeError naming the place of the number
 */
export function toJson(value: unknown): string {
  const bad = firstBadNumber(value);
  if (bad !== undefined) throw new RangeError(`the answer holds a number that is not finite at ${bad || 'its root'}`);
  return JSON.stringify(value);
}
