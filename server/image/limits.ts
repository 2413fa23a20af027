/** More pixels than are of use for reading; a small file can claim far more (a decompression bomb). */
export const MOST_PIXELS = 80_000_000;
