import sharp from 'sharp';
import { preparePhoto, type Photo } from '../../src/chart/index.ts';
import { MOST_PIXELS } from './limits.ts';

/**
 * File → pixels, ready for reading. The orientation tag is applied (a file that was stored upright has none, so doing
 * it again does no harm), transparency is laid on white, any colour space becomes sRGB.
 * Throws what sharp throws for a file that is no picture or larger than `MOST_PIXELS`.
 */
export async function decodePhoto(file: string): Promise<Photo> {
  const { data, info } = await sharp(file, { limitInputPixels: MOST_PIXELS })
    .autoOrient()
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return preparePhoto({ width: info.width, height: info.height, rgb: threeChannels(data, info.channels) });
}

/** Grey pictures come with one channel. */
function threeChannels(data: Buffer, channels: number): Uint8Array {
  const bytes = new Uint8Array(data.buffer, data.byteOffset, data.length);
  if (channels === 3) return bytes;
  const n = bytes.length / channels;
  const rgb = new Uint8Array(n * 3);
  for (let i = 0; i < n; i++)
    for (let c = 0; c < 3; c++) rgb[3 * i + c] = bytes[i * channels + (channels > 3 ? c : 0)]!;
  return rgb;
}
