import { describe, expect, test } from 'vitest';
import { voteOnLine } from '../../../src/writing/index.ts';
import type { WordRead } from '../../../src/words/word-reader.ts';

/** A reading whose characters stand 20 px apart, each 16 px wide; a dot leaves a place empty. */
function readOf(text: string, confidence = 0.9): WordRead {
  const glyphs = [...text].flatMap((c, i) =>
    c === ' ' || c === '·' ? [] : [{ text: c, confidence, x0: 20 * i, x1: 20 * i + 16, y0: 0, y1: 34 }],
  );
  return { text: text.replaceAll('·', ''), confidence, glyphs };
}
const textsOf = (reads: WordRead[]) => voteOnLine(reads, 34).map(({ glyphs }) => glyphs.map((g) => g.text).join(''));

describe('a vote on a line', () => {
  test('is held for each place by itself', () => {
    const [word] = voteOnLine([readOf('7,39'), readOf('7,89'), readOf('1,39')], 34);
    expect(word!.glyphs.map(({ text }) => text).join('')).toBe('7,39');
    expect(word!.glyphs[1]!.share).toBe(1);
    expect(word!.glyphs[0]!.others).toEqual([{ text: '1', share: expect.closeTo(1 / 3) }]);
  });

  test('a character nobody agrees on leaves its neighbours where they are', () => {
    expect(textsOf([readOf('cos @ 0,93'), readOf('cos o 0,93'), readOf('cos · 0,93')])).toEqual(['cos', '@', '0,93']);
  });

  test('what one reading dropped is kept, and the others say how likely it is', () => {
    const [word] = voteOnLine([readOf('1.1'), readOf('1·1'), readOf('1.1')], 34);
    expect(word!.glyphs[1]).toMatchObject({ text: '.', x0: 20 });
    expect(word!.glyphs[1]!.others[0]!.text).toBe('');
    expect(word!.glyphs[1]!.share).toBeGreaterThan(0.6);
    expect(word!.glyphs[1]!.share).toBeLessThan(0.8);
  });

  test('a sure reading outweighs an unsure one', () => {
    expect(textsOf([readOf('8', 0.3), readOf('3', 0.9)])).toEqual(['3']);
  });

  test('blanks part words where most readings saw one', () => {
    expect(textsOf([readOf('50 Hz'), readOf('50·Hz'), readOf('50 Hz')])).toEqual(['50', 'Hz']);
  });

  test('says how many readings saw a word', () => {
    const words = voteOnLine([readOf('50 Hz'), readOf('50···'), readOf('50 Hz'), readOf('')], 34);
    expect(words.map(({ seen, passes }) => [seen, passes])).toEqual([
      [3, 4],
      [2, 4],
    ]);
  });

  test('nothing read is no word', () => {
    expect(voteOnLine([readOf(''), readOf('')], 34)).toEqual([]);
  });
});
