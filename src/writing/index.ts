import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { layBest } from './lay-best.ts';
import type { Outline } from './lay-flat.ts';
import { readBoxes } from './read-boxes.ts';
import { lookAgain } from './second-look.ts';
import type { Writing } from './written.ts';

export type { Ruling, ReadWord, VotedGlyph, Writing } from './written.ts';
export type { Surface, TextBox } from './surface.ts';
export { layFlat, type Outline } from './lay-flat.ts';
export { flatGrey } from './flat-grey.ts';
export { readBoxes } from './read-boxes.ts';
export { sampleBox, BORDER_PX, CAPITAL_PX, type Sample } from './crop/sample-box.ts';
export { prepare, type Preparation } from './crop/preparations.ts';
export { voteOnLine, type VotedWord } from './vote/vote.ts';
export { findLines, type FoundLines } from './lines/find-lines.ts';
export type { TextLine } from './lines/text-lines.ts';

export type ReadingOptions = {
  /** corners somebody pointed at, photo pixels, from the top left clockwise; found by itself without */
  readonly outline?: Outline;
};

/**
 * Reads what is written on a plate or a sheet.
 * @returns words and rulings of the plate laid flat, the right way up; null where no text was found at all
 */
export async function readWriting(
  photo: Photo,
  words: WordReader,
  options: ReadingOptions = {},
): Promise<Writing | null> {
  const laid = await layBest(photo, words, options.outline);
  if (!laid) return null;
  const { surface, found, margin } = laid;
  const { width, height } = surface;
  const isRuled = (x: number, y: number) => found.ruled[Math.round(y) * width + Math.round(x)] === 1;
  const read = await lookAgain(surface, found, await readBoxes(surface, found.lines, words, isRuled), words);
  if (!read.length) return null;
  return {
    width,
    height,
    words: read,
    rulings: found.rulings,
    corners_px: [
      surface.toPhoto(margin, margin),
      surface.toPhoto(width - margin, margin),
      surface.toPhoto(width - margin, height - margin),
      surface.toPhoto(margin, height - margin),
    ],
    isOutlined: laid.isOutlined,
    toPhoto: surface.toPhoto,
  };
}
