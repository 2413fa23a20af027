import type { ReadWord, VotedGlyph } from '../../writing/written.ts';

/**
 * Parts a word at commas that are none of a number: of `Hz,V` and `RPM,HP` each is a word of its own, of `7,39` none.
 * @returns the words from left to right, without those commas
 */
export function partedAtCommas(word: ReadWord): ReadWord[] {
  const { glyphs } = word;
  const isDigit = (i: number) => /^\d$/.test(glyphs[i]?.text ?? '');
  const isParting = glyphs.map(({ text }, i) => (text === ',' || text === ';') && !(isDigit(i - 1) && isDigit(i + 1)));
  if (!isParting.slice(0, -1).some(Boolean)) return [word];
  const parts: VotedGlyph[][] = [[]];
  glyphs.forEach((glyph, i) => {
    // a number may begin with its comma: ,89
    if (isParting[i] && !(i === 0 && isDigit(1))) parts.push([]);
    else parts.at(-1)!.push(glyph);
  });
  return parts
    .filter((part) => part.length > 0)
    .map((part) => ({
      ...word,
      text: part.map(({ text }) => text).join(''),
      glyphs: part,
      x0: part[0]!.x0,
      x1: part.at(-1)!.x1,
    }));
}
