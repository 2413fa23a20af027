import { stat } from 'node:fs/promises';
import type { Photo } from '../../src/chart/index.ts';
import { decodePhoto } from './decode.ts';

/**
 * The last few photos, decoded: while somebody moves a corner or taps one curve after the other the same picture is
 * read again and again. A 12-megapixel photo takes about 60 MB here.
 */
const KEPT = 3;
const recent = new Map<string, Promise<Photo>>();

/** The photo in a file, decoded now or a moment ago; a changed file is decoded anew. Throws what `decodePhoto` throws. */
export async function recentPhoto(file: string): Promise<Photo> {
  const { mtimeMs, size } = await stat(file);
  const key = `${file}|${mtimeMs}|${size}`;
  const known = recent.get(key);
  if (known) {
    recent.delete(key);
    recent.set(key, known);
    return known;
  }
  const photo = decodePhoto(file);
  recent.set(key, photo);
  photo.catch(() => recent.delete(key));
  for (const old of recent.keys()) {
    if (recent.size <= KEPT) break;
    recent.delete(old);
  }
  return photo;
}
