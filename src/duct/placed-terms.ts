import type { LossContext, LossPart, LossTerm } from './elements/element.ts';
import { elementKind, type Element } from './elements/index.ts';

/** A loss, the element it belongs to (−1: none, the blower's bare outlet), and where the budget books it. */
export type PlacedTerm = { term: LossTerm; element: number; part: LossPart };

/** All losses of a run of elements, in order. */
export function placeTerms(elements: readonly Element[], context: LossContext): PlacedTerm[] {
  return elements.flatMap((element, index) => {
    const record = elementKind(element.kind);
    const part = record.part(element);
    return record.losses(element, context).map((term) => ({ term, element: index, part }));
  });
}
