/** A picture format that is accepted, told from the first bytes; the name and type a client gives are not asked. */
export type PictureFormat = { ending: 'jpg' | 'png' | 'webp' | 'gif' | 'heic' | 'avif'; isDecodable: boolean };

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
  { ending: 'gif', isDecodable: true, matches: (bytes) => startsWith(bytes, 0, 'GIF8') },
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

/**
 * Whether a PNG holds several pictures shown one after the other: its animation chunk stands before the first picture's.
 * The picture library shows the first and says nothing of the others. Source: W3C PNG (third edition) 11.3.7.
 */
export function isMovingPng(bytes: Uint8Array): boolean {
  if (!startsWith(bytes, 0, '\x89PNG\r\n\x1a\n')) return false;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 8; at + 8 <= bytes.length; at += 12 + view.getUint32(at)) {
    if (startsWith(bytes, at + 4, 'acTL')) return true;
    if (startsWith(bytes, at + 4, 'IDAT')) return false;
  }
  return false;
}
