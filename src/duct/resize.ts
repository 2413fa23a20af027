import { elementKind, type Element } from './elements/index.ts';

type Pipe = Extract<Element, { kind: 'pipe' }>;

/** The pieces of a run that carry dust: all before the first cyclone or filter. */
const dustyLength = (elements: readonly Element[]): number => {
  const at = elements.findIndex(({ kind }) => elementKind(kind).catchesDust === true);
  return at < 0 ? elements.length : at;
};

/** The pipes of a run that carry dust. */
export const dustyPipes = (elements: readonly Element[]): Pipe[] =>
  elements.slice(0, dustyLength(elements)).filter((element) => element.kind === 'pipe');

/**
 * A run with the round pieces of its dusty part built in other inside diameters [m]. What has a width that is not named
 * stays, and so do hoods and machines' ports, which are what the machine has.
 * @param widths new inside diameter by the one that is there
 */
export function resizedRun(elements: readonly Element[], widths: ReadonlyMap<number, number>): Element[] {
  const dusty = dustyLength(elements);
  return elements.map((element, index) => {
    if (index >= dusty || !('diameter_m' in element) || element.kind === 'entry') return element;
    const to_m = widths.get(element.diameter_m);
    return to_m === undefined ? element : { ...element, diameter_m: to_m };
  });
}
