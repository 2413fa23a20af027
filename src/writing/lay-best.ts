import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { layFlat, type Outline } from './lay-flat.ts';
import { outlineAroundLetters } from './outline/around-letters.ts';
import { findOutline, wholePhoto } from './outline/find-outline.ts';
import { turnUpright, type Upright } from './upright.ts';

/** An inner frame may have been taken for the plate's edge: text a little outside is read too. */
const MARGIN_PX = 40;

/** Lines read worse than this on average are as likely none: the outline may be wrong. */
const POOR = 0.45;

/**
 * A plate laid flat the right way up; `margin`: so many flat pixels around it are laid flat too; `isOutlined`: its edges were
 * found, or pointed at.
 */
export type Laid = Upright & { readonly margin: number; readonly isOutlined: boolean };

/** The plate laid flat within its edges; where its lines can't be read so, within a rectangle around its letters. */
export async function layBest(photo: Photo, words: WordReader, known: Outline | undefined): Promise<Laid | null> {
  const outline = known ?? findOutline(photo);
  const flat = await laidFlat(photo, words, outline ?? wholePhoto(photo), outline ? MARGIN_PX : 0);
  const first = flat && { ...flat, isOutlined: outline !== null };
  if (known || (first && first.readability >= POOR)) return first;
  const around = outlineAroundLetters(photo);
  const second = around && (await laidFlat(photo, words, around, 0));
  return second && (!first || second.readability > first.readability) ? { ...second, isOutlined: false } : first;
}

async function laidFlat(photo: Photo, words: WordReader, outline: Outline, margin: number) {
  const lying = layFlat(photo, outline, margin);
  return lying && { ...(await turnUpright(lying, words)), margin };
}
