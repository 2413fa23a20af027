/**
 * The door between geometry and letters: whoever finds a piece of text in a picture hands it over upright, and gets
 * back what stands there. Who reads is decided outside `src`.
 */

/** One line of text: dark on light, upright, digits about 40 px high, a white border all round. One byte a pixel. */
export type WordCrop = { readonly grey: Uint8Array; readonly width: number; readonly height: number };

/** One character, and where it stands in the crop, pixels. */
export type Glyph = {
  readonly text: string;
  /** 0..1 */
  readonly confidence: number;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
};

/** What was read: an empty text where nothing was. */
export type WordRead = { readonly text: string; readonly confidence: number; readonly glyphs: readonly Glyph[] };

/** `number`: digits and what stands among them; `text`: a line of anything; `glyph`: one character. */
export type WordKind = 'number' | 'text' | 'glyph';

/** Reads crops, in their order. Rejects where the reader can't work at all; a crop it can't read is an empty text. */
export type WordReader = (crops: readonly WordCrop[], want: WordKind) => Promise<WordRead[]>;
