/** How much of a long instruction stands in a box before the rest is folded away. */
const LONGEST = 88;

/** The beginning of a text, cut at a clause or a word; null where the text is short enough to stand whole. */
export function firstWords(text: string, longest = LONGEST): string | null {
  if (text.length <= longest) return null;
  const head = text.slice(0, longest);
  const clause = Math.max(head.lastIndexOf('; '), head.lastIndexOf(': '), head.lastIndexOf('. '));
  if (clause > longest * 0.4) return `${head.slice(0, clause)} …`;
  return `${head.slice(0, head.lastIndexOf(' '))} …`;
}
