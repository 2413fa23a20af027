/** A picture format that is accepted, told from the first bytes; the name and type a client gives are not asked. */
export type PictureFormat = { ending: 'jpg' | 'png' | 'webp' | 'heic' | 'avif'; isDecodable: boolean };

const startsWith = (bytes: Uint8Array, at: number, text: string): boolean =>
  [...text].every((letter, index) => bytes[at + index] === letter.charCodeAt(0));

const isHeif = (bytes: Uint8Array, brands: readonly string[]): boolean =>
  startsWith(bytes, 4, 'ftyp') && brands.some((brand) => startsWith(bytes, 8, brand));

const FORMATS: readonly (PictureFormat & { matches: (bytes: Uint8Array) => boolean })[] = [
  { ending: 'jpg', isDecodable: true, matches: (bytes) => startsWith(bytes, 0, '\xff\xd8\xff') },
  { ending: 'png', isDecodable: true, matches: (bytes) => startsWith(bytes, 0, '\x89PNG\r\n\x1a\n') },
  {
    ending: 'webp',
    isDecodable: true,
    matches: (bytes) => startsWith(bytes, 0, 'RIFF') && startsWith(bytes, 8, 'WEBP'),
  },
  { ending: 'avif', isDecodable: true, matches: (bytes) => isHeif(bytes, ['avif']) },
  // the decoder of HEVC is patented and not in the picture library's ready-made builds; where it is, it works
  {
    ending: 'heic',
    isDecodable: false,
    matches: (bytes) => isHeif(bytes, ['heic', 'heix', 'heim', 'heis', 'mif1', 'hevc']),
  },
];

/** Format of a file by its first bytes, or undefined when it is none of the accepted pictures. */
export const pictureFormat = (bytes: Uint8Array): PictureFormat | undefined =>
  FORMATS.find(({ matches }) => matches(bytes));
