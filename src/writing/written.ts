/** What was read on a plate or a sheet laid flat, before anybody asks what it means. Pixels are the flat picture's. */

/** One character: what most readings of it say, and what the others say. */
export type VotedGlyph = {
  readonly text: string;
  /** share of the readings that say so, each weighed by its own confidence, 0..1 */
  readonly share: number;
  /** other characters some readings saw here, likeliest first; an empty text: some saw nothing */
  readonly others: readonly { readonly text: string; readonly share: number }[];
  readonly x0: number;
  readonly x1: number;
};

/** One word: characters without a blank between them. */
export type ReadWord = {
  readonly text: string;
  readonly glyphs: readonly VotedGlyph[];
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** height of its capitals and figures */
  readonly capitalHeight: number;
  /** words of one number stand in one line of print, close together */
  readonly line: number;
  /** readings that saw this word at all, and how many there were */
  readonly seen: number;
  readonly passes: number;
  /** read only when looked at again, with dots run together: right more often than not */
  readonly isSecondLook?: boolean;
  /** something stands close before or behind it that could not be read: it may be only a part */
  readonly cutBefore: boolean;
  readonly cutBehind: boolean;
};

/** A printed or engraved line, a box's side, the edge of a field. */
export type Ruling = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

export type Writing = {
  readonly width: number;
  readonly height: number;
  readonly words: readonly ReadWord[];
  readonly rulings: readonly Ruling[];
  /** corners of the plate or sheet in the photo, from the top left clockwise as one reads it */
  readonly corners_px: readonly (readonly [number, number])[];
  /** whether the plate's edges were found; else a rectangle around its letters or the whole photo was read */
  readonly isOutlined: boolean;
  /** a place of the flat picture in the photo */
  readonly toPhoto: (x: number, y: number) => readonly [number, number];
};
