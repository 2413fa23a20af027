import type { Element } from '../../../src/duct/elements/index.ts';
import type { Section } from '../../../src/job/types.ts';
import type { Metrics } from './metrics.ts';
import type { Route } from './sheet.ts';

/** Inside diameters an element names, smallest reading first. */
export function diametersOf(element: Element): number[] {
  if ('diameter_m' in element) return [element.diameter_m];
  if (element.kind === 'reducer') return [element.fromDiameter_m, element.toDiameter_m];
  if (element.kind === 'cyclone')
    return [element.inletDiameter_m ?? element.outletDiameter_m ?? 0].filter((d) => d > 0);
  return [];
}

/** Stands for a pipe that no element names, so that a draft can be drawn. */
export const UNKNOWN_DIAMETER_M = 0.1;

export const widestOf = (elements: readonly Element[], otherwise = UNKNOWN_DIAMETER_M): number =>
  Math.max(0, ...elements.flatMap(diametersOf)) || otherwise;

export const widestOfRoute = (route: Route): number =>
  widestOf(
    route.refs.map((ref) => ref.element),
    route.diameter_m,
  );

export const widestPipe = (sections: readonly Section[]): number =>
  widestOf(sections.flatMap((section) => section.elements));

/** Body of a pipe on the drawing: to scale, but never so thin that its two lines run into one nor as wide as a room. */
export const pipeWidth = (diameter_m: number, metrics: Metrics): number =>
  Math.min(90, Math.max(4, (diameter_m * 1000) / metrics.mmPerPx));

/** Radius of a bend's middle line: about one pipe width, as sold. */
export const bendRadius = (width: number): number => Math.max(8, Math.min(36, width * 1.05));
