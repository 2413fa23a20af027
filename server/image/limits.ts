/** More pixels than any phone takes; a small file can claim far more (a decompression bomb). */
export const MOST_PIXELS = 100_000_000;
