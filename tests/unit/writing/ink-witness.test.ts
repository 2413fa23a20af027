import { describe, expect, test } from 'vitest';
import type { WordRead } from '../../../src/words/word-reader.ts';
import type { InkBox, InkWitness } from '../../../src/writing/vote/ink-witness.ts';
import { voteOnLine } from '../../../src/writing/vote/vote.ts';

const CAPITAL = 34;
const BASE = 50;
/** A reading whose characters stand 28 px apart, each 20 px wide; a middle dot leaves a place empty. */
function readOf(text: string): WordRead {
  const glyphs = [...text].flatMap((c, i) =>
    c === '·' ? [] : [{ text: c, confidence: 0.9, x0: 28 * i, x1: 28 * i + 20, y0: 16, y1: 50 }],
  );
  return { text: text.replaceAll('·', ''), confidence: 0.9, glyphs };
}
const letterAt = (i: number): InkBox => ({ x0: 28 * i, x1: 28 * i + 20, y0: BASE - CAPITAL, y1: BASE });
const point = (x: number): InkBox => ({ x0: x - 3, x1: x + 3, y0: BASE - 6, y1: BASE });
const inkOf = (letters: number[], marks: InkBox[]): InkWitness => ({
  letters: letters.map(letterAt),
  marks,
  base: BASE,
});
const glyphsOf = (reads: WordRead[], ink: InkWitness) =>
  voteOnLine(reads, CAPITAL, ink).flatMap(({ glyphs }) => glyphs);

describe('blanks in the ink', () => {
  const at = (x0: number, width = 20): InkBox => ({ x0, x1: x0 + width, y0: BASE - CAPITAL, y1: BASE });
  /** Readings that ran over every blank. */
  const readAt = (text: string, places: readonly number[]): WordRead => ({
    text,
    confidence: 0.9,
    glyphs: places.map((x0, i) => ({ text: text[i]!, confidence: 0.9, x0, x1: x0 + 20, y0: 16, y1: 50 })),
  });
  const wordsOf = (text: string, places: readonly number[], widths: readonly number[] = []) =>
    voteOnLine([readAt(text, places), readAt(text, places)], CAPITAL, {
      letters: places.map((x, i) => at(x, widths[i])),
      marks: [],
      base: BASE,
    }).map(({ glyphs }) => glyphs.map((g) => g.text).join(''));

  test('part narrow letters whose blank the readings ran over', () => {
    expect(wordsOf('INSF', [0, 23, 46, 80])).toEqual(['INS', 'F']);
  });

  test('figures of one width stay one number', () => {
    expect(wordsOf('160', [0, 36, 60])).toEqual(['160']);
  });

  test('beside a slim letter a gap is none', () => {
    expect(wordsOf('mini', [0, 36, 50, 84], [30, 6, 28, 6])).toEqual(['mini']);
  });
});

describe('the ink beside a vote', () => {
  test('shows a point between figures that no reading saw, as likely as not', () => {
    const glyphs = glyphsOf([readOf('11'), readOf('11')], inkOf([0, 1], [point(24)]));
    expect(glyphs.map(({ text }) => text)).toEqual(['1', '.', '1']);
    expect(glyphs[1]!.share).toBe(0.5);
    expect(glyphs[1]!.others).toEqual([{ text: '', share: 0.5 }]);
  });

  test('a longer mark that hangs below the base line is a comma', () => {
    const comma = { x0: 21, x1: 27, y0: BASE - 6, y1: BASE + 7 };
    expect(glyphsOf([readOf('11')], inkOf([0, 1], [comma]))[1]!.text).toBe(',');
  });

  test('a minority that saw the point counts', () => {
    const glyphs = glyphsOf([readOf('1·1'), readOf('1·1'), readOf('1.1')], inkOf([0, 2], [point(38)]));
    expect(glyphs[1]).toMatchObject({ text: '.' });
    expect(glyphs[1]!.share).toBeGreaterThan(0.6);
  });

  test('specks above the base line, and beside letters, are no points', () => {
    const high = { x0: 21, x1: 27, y0: 20, y1: 26 };
    expect(glyphsOf([readOf('11')], inkOf([0, 1], [high]))).toHaveLength(2);
    expect(glyphsOf([readOf('AB')], inkOf([0, 1], [point(24)]))).toHaveLength(2);
  });

  test('a letter no reading shows keeps its place', () => {
    const glyphs = glyphsOf([readOf('28·00'), readOf('28·00')], inkOf([0, 1, 2, 3, 4], []));
    expect(glyphs.map(({ text }) => text).join('')).toBe('28?00');
    expect(glyphs[2]!.share).toBeLessThan(0.5);
  });

  test('a letter few readings show is theirs, and unsure', () => {
    const [, glyph] = glyphsOf([readOf('2·0'), readOf('2·0'), readOf('280')], inkOf([0, 1, 2], []));
    expect(glyph!.text).toBe('8');
    expect(glyph!.share).toBeLessThan(0.5);
  });
});
