import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { layFlat, type Outline } from './lay-flat.ts';
import { outlineAroundLetters } from './outline/around-letters.ts';
import { findOutline, wholePhoto } from './outline/find-outline.ts';
import { readBoxes } from './read-boxes.ts';
import { lookAgain } from './second-look.ts';
import { turnUpright, type Upright } from './upright.ts';
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

/** An inner frame may have been taken for the plate's edge: text a little outside is read too. */
const MARGIN_PX = 40;

export type ReadingOptions = {
  /** corners somebody pointed at, photo pixels, from the top left clockwise; found by itself without */
  readonly outline?: Outline;
};

/** Lines read worse than this on average are as likely none: the outline may be wrong. */
const POOR = 0.45;

/**
 * Reads what is written on a plate or a sheet.
 * @returns words and rulings of the plate laid flat, the right way up; null where no text was found at all
 */
export async function readWriting(
  photo: Photo,
  words: WordReader,
  options: ReadingOptions = {},
): Promise<Writing | null> {
  const laid = await bestLaid(photo, words, options.outline);
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

type Laid = Upright & { readonly margin: number; readonly isOutlined: boolean };

/** The plate laid flat within its edges; where its lines can't be read so, within a rectangle around its letters. */
async function bestLaid(photo: Photo, words: WordReader, known: Outline | undefined): Promise<Laid | null> {
  const outline = known ?? findOutline(photo);
  const first = await laidFlat(photo, words, outline, outline ? MARGIN_PX : 0);
  if (known || (first && first.readability >= POOR)) return first;
  const around = outlineAroundLetters(photo);
  const second = around && (await laidFlat(photo, words, around, 0));
  return second && (!first || second.readability > first.readability) ? second : first;
}

async function laidFlat(
  photo: Photo,
  words: WordReader,
  outline: Outline | null,
  margin: number,
): Promise<Laid | null> {
  const lying = layFlat(photo, outline ?? wholePhoto(photo), margin);
  return lying && { ...(await turnUpright(lying, words)), margin, isOutlined: outline !== null };
}
