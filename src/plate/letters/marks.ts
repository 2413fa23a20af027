import type { ReadWord } from '../../writing/written.ts';

/** What a character may be, likeliest first; shares sum to at most 1. An empty text: nothing stands there. */
export type Option = { readonly text: string; readonly share: number };

/** One character of a plate: what it may be, and where it stands. */
export type Mark = { readonly options: readonly Option[]; readonly x0: number; readonly x1: number };

/** Spellings of one and the same sign. */
const SAME: Readonly<Record<string, string>> = {
  μ: 'µ',
  '–': '-',
  '—': '-',
  '−': '-',
  '∼': '~',
  '〜': '~',
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  º: '°',
  ϕ: 'φ',
  '∆': 'Δ',
  '÷': '-',
  '…': '-',
};

const plain = (text: string): string => SAME[text] ?? text;

/** The characters of a word, each with everything some reading saw there. */
export function marksOf(word: ReadWord): Mark[] {
  return word.glyphs.flatMap(({ text, share, others, x0, x1 }) => {
    const characters = [...text];
    // two characters read as one piece share its width
    return characters.map((character, i) => ({
      options: [
        { text: plain(character), share },
        ...(characters.length === 1 ? others.map((o) => ({ text: plain(o.text), share: o.share })) : []),
      ],
      x0: x0 + ((x1 - x0) * i) / characters.length,
      x1: x0 + ((x1 - x0) * (i + 1)) / characters.length,
    }));
  });
}

/** What most readings say. */
export const textOf = (marks: readonly Mark[]): string => marks.map((mark) => mark.options[0]!.text).join('');
