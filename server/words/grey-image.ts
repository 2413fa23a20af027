import type { WordCrop } from '../../src/words/word-reader.ts';

/** A crop as a picture file: portable grey map, a few bytes of header before the pixels. Source: Netpbm, pgm(5). */
export function greyImage({ grey, width, height }: WordCrop): Buffer {
  if (grey.length !== width * height)
    throw new RangeError(`crop: expected ${width} x ${height} bytes, received ${grey.length}`);
  return Buffer.concat([Buffer.from(`P5 ${width} ${height} 255\n`), grey]);
}
