import type { ReadWord, Ruling, VotedGlyph, Writing } from '../../../src/writing/written.ts';

/** Pixels of one character and one line of a plate set in a fixed pitch. */
const PITCH = 14;
const CAPITAL = 20;
const LEADING = 44;

/** A word as a perfect reader gives it. `voted` may change what its characters were read as. */
export function wordAt(
  text: string,
  x: number,
  y: number,
  line: number,
  voted: (character: string, index: number) => VotedGlyph['others'] | null = () => null,
  pitch = PITCH,
): ReadWord {
  const glyphs = [...text].map((character, i): VotedGlyph => {
    const options = voted(character, i) ?? [{ text: character, share: 0.97 }];
    const [first, ...others] = options;
    return { ...first!, others, x0: x + i * pitch, x1: x + (i + 0.85) * pitch };
  });
  return {
    text: glyphs.map((g) => g.text).join(''),
    glyphs,
    x0: x,
    x1: x + [...text].length * pitch,
    y0: y,
    y1: y + CAPITAL,
    capitalHeight: CAPITAL,
    line,
    seen: 4,
    passes: 4,
    cutBefore: false,
    cutBehind: false,
  };
}

/** A plate written line by line; three blanks or more part lines of print, `|` is a ruling down the line. */
export function printed(lines: readonly string[], rulings: readonly Ruling[] = []): Writing {
  let line = 0;
  const found: Ruling[] = [...rulings];
  const words = lines.flatMap((text, row) => {
    line++;
    const y = 20 + row * LEADING;
    return [...text.matchAll(/\S+/g)].flatMap((match) => {
      const before = text.slice(0, match.index);
      if (/ {3,}$/.test(before) || before.endsWith('| ')) line++;
      const x = 20 + [...before].length * PITCH;
      if (match[0] === '|') {
        found.push({ x0: x, x1: x, y0: y - 10, y1: y + LEADING - 12 });
        return [];
      }
      return [wordAt(match[0], x, y, line)];
    });
  });
  return written(words, found);
}

/** Words and rulings as a plate that fills its photo. */
export function written(words: readonly ReadWord[], rulings: readonly Ruling[] = []): Writing {
  const width = Math.max(...words.map((w) => w.x1), 100) + 20;
  const height = Math.max(...words.map((w) => w.y1), 100) + 20;
  return {
    width,
    height,
    words,
    rulings,
    corners_px: [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    isOutlined: true,
    toPhoto: (x, y) => [x, y],
  };
}
