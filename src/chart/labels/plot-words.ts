import type { WordReader } from '../../words/word-reader.ts';
import type { Word } from './chains.ts';
import { cropOf } from './crops.ts';
import type { Pieces } from './pieces.ts';
import type { Surroundings } from './surroundings.ts';

/** A piece of text in the plot or near it: where its middle and its box lie, in shares of the frame. */
export type PlotWord = {
  readonly text: string;
  readonly confidence: number;
  readonly u: number;
  readonly v: number;
  readonly box: { readonly u0: number; readonly v0: number; readonly u1: number; readonly v1: number };
  /** 0 level, 90 from the bottom up, degrees */
  readonly angle: 0 | 90;
  readonly isInside: boolean;
};

const MOST_INSIDE = 20;
const MOST_SINGLE = 14;
const MOST_OUTSIDE = 6;
const LEAST_SURE = 0.3;

/**
 * Reads what is written in the plot (speeds, names of curves, legends) and the lines near it (captions, speed, density).
 * @param lines those that are neither tick labels nor titles
 * @param size height of the tick labels, pixels
 */
export async function readPlotWords(
  all: Surroundings,
  pieces: Pieces,
  lines: readonly Word[],
  size: number,
  reader: WordReader,
): Promise<PlotWord[]> {
  const { frame } = all;
  const isInside = (w: Word) => {
    const x = (w.x0 + w.x1) / 2;
    const y = (w.y0 + w.y1) / 2;
    return x > frame.x0 && x < frame.x1 && y > frame.y0 && y < frame.y1;
  };
  const like = lines.filter((w) => w.size > 0.55 * size && w.size < 1.8 * size && !isStroke(w));
  const inside = like.filter(isInside);
  const words = inside.filter((w) => w.pieces.length > 1 || w.x1 - w.x0 > 1.6 * w.size);
  const single = inside.filter((w) => !words.includes(w) && w.run === 'level' && w.size > 0.7 * size);
  const near = like
    .filter((w) => !isInside(w) && w.run === 'level' && w.pieces.length > 3 && w.x1 - w.x0 < 40 * w.size)
    .map((w) => ({
      w,
      far: Math.max(frame.y0 - w.y1, w.y0 - frame.y1, 0) + Math.max(frame.x0 - w.x1, w.x0 - frame.x1, 0),
    }))
    .filter(({ far }) => far < 14 * size)
    .sort((a, b) => a.far - b.far)
    .slice(0, MOST_OUTSIDE)
    .map(({ w }) => w);
  const texts = [...bySize(words, size).slice(0, MOST_INSIDE), ...near];
  // markers look like letters; a chart has more of them than of names
  const letters = single.length <= MOST_SINGLE ? single : [];
  const read = await reader(
    texts.map((w) => cropOf(all, pieces, w)),
    'text',
  );
  const glyphs = await reader(
    letters.map((w) => cropOf(all, pieces, w)),
    'glyph',
  );
  return [...texts.map((w, i) => ({ w, r: read[i]! })), ...letters.map((w, i) => ({ w, r: glyphs[i]! }))]
    .filter(({ r }) => r.confidence >= LEAST_SURE && /[\p{L}\p{N}%°]/u.test(r.text))
    .map(({ w, r }) => {
      const [u0, u1] = [w.x0, w.x1].map((x) => (x - frame.x0) / (frame.x1 - frame.x0)) as [number, number];
      const [v1, v0] = [w.y0, w.y1].map((y) => 1 - (y - frame.y0) / (frame.y1 - frame.y0)) as [number, number];
      return {
        text: r.text,
        confidence: r.confidence,
        u: (u0 + u1) / 2,
        v: (v0 + v1) / 2,
        box: { u0, v0, u1, v1 },
        angle: w.run === 'level' ? 0 : 90,
        isInside: isInside(w),
      } as const;
    });
}

/** A single dash of a line, a bit of grid. */
function isStroke(w: Word): boolean {
  const [width, height] = [w.x1 - w.x0, w.y1 - w.y0];
  return w.pieces.length === 1 && Math.min(width, height) < 0.22 * Math.max(width, height);
}

/** Those most like the tick labels first. */
const bySize = (words: readonly Word[], size: number): Word[] =>
  [...words].sort((a, b) => Math.abs(Math.log(a.size / size)) - Math.abs(Math.log(b.size / size)));
