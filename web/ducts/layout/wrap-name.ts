import { textWidth } from './metrics.ts';

/** A name in at most two lines of a given width; what does not fit ends in an ellipsis. */
export function wrapName(name: string, width: number, font: number): string[] {
  const fits = (text: string) => textWidth(text, font) <= width;
  if (fits(name)) return [name];
  const words = name.split(/\s+/);
  let first = words.shift()!;
  while (words[0] && fits(`${first} ${words[0]}`)) first += ` ${words.shift()}`;
  return [first, words.join(' ')].filter(Boolean).map((line) => shorten(line, width, font));
}

function shorten(text: string, width: number, font: number): string {
  if (textWidth(text, font) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && textWidth(`${letters.join('')}…`, font) > width) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}
