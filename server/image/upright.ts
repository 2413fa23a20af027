import sharp from 'sharp';
import { MOST_PIXELS } from './limits.ts';

const SMALLEST_SIDE_px = 8;

export type UprightPicture = { width_px: number; height_px: number };

/** Why a file did not become a picture. */
export type PictureFault = 'unreadable' | 'too-many-pixels' | 'too-small' | 'moving';

/**
 * Turns a photo the way it was taken (EXIF orientation) and writes it as a plain JPEG without any of its notes.
 * Fine lines matter here, so colour is kept at full resolution.
 */
export async function writeUpright(from: string, to: string): Promise<UprightPicture | PictureFault> {
  try {
    const picture = sharp(from, { limitInputPixels: MOST_PIXELS, failOn: 'truncated', autoOrient: true });
    const { pages = 1 } = await picture.metadata();
    if (pages > 1) return 'moving';
    const { width, height } = await picture
      .flatten({ background: 'white' })
      .jpeg({ quality: 95, chromaSubsampling: '4:4:4' })
      .toFile(to);
    return Math.min(width, height) < SMALLEST_SIDE_px ? 'too-small' : { width_px: width, height_px: height };
  } catch (error) {
    return /pixel limit/i.test((error as Error).message) ? 'too-many-pixels' : 'unreadable';
  }
}

/** A JPEG of an upright picture no wider than `width_px`. */
export const narrowed = (upright: string, width_px: number): Promise<Buffer> =>
  sharp(upright).resize({ width: width_px, withoutEnlargement: true }).jpeg({ quality: 85 }).toBuffer();
