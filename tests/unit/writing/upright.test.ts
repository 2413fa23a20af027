import { describe, expect, it } from 'vitest';
import type { WordReader } from '../../../src/words/word-reader.ts';
import { turnUpright } from '../../../src/writing/upright.ts';
import type { Surface } from '../../../src/writing/surface.ts';
import { photoOf } from './pictures.ts';

/** Rows of twelve letters: bars of ink, closer together along the row than from row to row. */
const isInk = (along: number, across: number) =>
  along > 40 && along < 280 && across > 40 && across < 240 && along % 20 < 11 && across % 50 < 22;

const surfaceOf = (width: number, height: number, isDark: (x: number, y: number) => boolean): Surface => ({
  width,
  height,
  photo: photoOf(width, height, (x, y) => (isDark(x, y) ? [40, 40, 40] : [200, 200, 200])),
  photoPixels: 1,
  toPhoto: (x, y) => [x, y],
});

/** A reader that is sure of whatever it sees, as one is of an `H` on its side, which is an `I`. */
const readsAnything: WordReader = async (crops) =>
  crops.map(({ width, height }) => ({
    text: 'I',
    confidence: 0.9,
    glyphs: [{ text: 'I', confidence: 0.9, x0: 12, x1: width - 12, y0: 12, y1: height - 12 }],
  }));

describe('which way up a plate is', () => {
  it('leaves a plate alone whose lines run across and are read', async () => {
    const upright = await turnUpright(surfaceOf(320, 280, isInk), readsAnything);
    expect([upright.surface.width, upright.surface.height]).toEqual([320, 280]);
  });

  it('turns a plate whose lines run down, however surely its single letters are read', async () => {
    const lying = surfaceOf(280, 320, (x, y) => isInk(y, x));
    const upright = await turnUpright(lying, readsAnything);
    expect([upright.surface.width, upright.surface.height]).toEqual([320, 280]);
    expect(Math.max(...upright.found.lines.map(({ letters }) => letters.length))).toBeGreaterThan(8);
  });
});
