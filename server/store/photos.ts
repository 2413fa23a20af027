import { randomBytes } from 'node:crypto';
import { mkdir, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { clearAbandoned, flushFolder, unfinishedBeside, writeFlushed } from './whole-file.ts';

const PHOTO_ID = /^[A-Za-z0-9_-]{16}$/;

export type PhotoSize = { width_px: number; height_px: number };
export type StoredPhoto = PhotoSize & { photoId: string; uprightFile: string };

/** Writes the upright picture of `original` to `upright` and tells its size, or why that cannot be. */
export type MakeUpright<Fault> = (original: string, upright: string) => Promise<PhotoSize | Fault>;

/**
 * Photos as folders `<id>/` with `original.<ending>` as it came, `upright.jpg` as it is worked on and `size.json`.
 * A folder appears when all of it is there.
 */
export async function openPhotoStore(folder: string) {
  await clearAbandoned(folder, Date.now());

  return {
    /** The stored photo, or the fault that `makeUpright` found; nothing is kept then. */
    async add<Fault extends string>(
      bytes: Uint8Array,
      ending: string,
      makeUpright: MakeUpright<Fault>,
    ): Promise<StoredPhoto | Fault> {
      const photoId = randomBytes(12).toString('base64url');
      const whole = join(folder, photoId);
      const unfinished = unfinishedBeside(whole);
      await mkdir(unfinished, { recursive: true });
      try {
        const original = join(unfinished, `original.${ending}`);
        await writeFlushed(original, bytes);
        const size = await makeUpright(original, join(unfinished, 'upright.jpg'));
        if (typeof size === 'string') return size;
        await writeFlushed(join(unfinished, 'size.json'), Buffer.from(JSON.stringify(size)));
        await flushFolder(unfinished);
        await rename(unfinished, whole);
        await flushFolder(folder);
        return { photoId, uprightFile: join(whole, 'upright.jpg'), ...size };
      } finally {
        await rm(unfinished, { recursive: true, force: true });
      }
    },

    /** null when there is no such photo, or its id is none. */
    async find(photoId: string): Promise<StoredPhoto | null> {
      if (!PHOTO_ID.test(photoId)) return null;
      const whole = join(folder, photoId);
      const size = await readFile(join(whole, 'size.json'), 'utf8').catch(() => null);
      if (size === null) return null;
      const { width_px, height_px } = JSON.parse(size) as PhotoSize;
      return { photoId, uprightFile: join(whole, 'upright.jpg'), width_px, height_px };
    },
  };
}

export type PhotoStore = Awaited<ReturnType<typeof openPhotoStore>>;
