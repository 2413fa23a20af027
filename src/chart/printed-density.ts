import type { PlotWord } from './labels/plot-words.ts';

/** "1.2 kg/m³", "1,184 kg / m3", with what a reader makes of the little three. */
const DENSITY = /(\d[.,]\d{1,3})\s*kg\s*[/|]\s*m/i;
/** Air at any place where people work [kg/m3]; the lower end is hot and high, the upper frost at the sea. */
const [LEAST, MOST] = [0.5, 1.5];

/**
 * The density of the chart's air as printed in or near the plot [kg/m3].
 * @returns null where none is printed, or two that differ
 */
export function printedDensity(words: readonly Pick<PlotWord, 'text'>[]): number | null {
  const found = words.flatMap(({ text }) => {
    const value = Number(DENSITY.exec(text)?.[1]?.replace(',', '.'));
    return value >= LEAST && value <= MOST ? [value] : [];
  });
  return new Set(found).size === 1 ? found[0]! : null;
}
