import type { Element } from '../../../src/duct/elements/index.ts';
import type { Metrics } from './metrics.ts';
import { bendRadius, pipeWidth, widestOfRoute } from './pipe-width.ts';
import type { Point } from './polyline.ts';
import { clearOfCorners, lengthOf, pointAt, slice, stationsAlong } from './polyline.ts';
import type { PipeRef, PlacedMark, PlacedPipe, Route } from './sheet.ts';

type Pipe = Extract<Element, { kind: 'pipe' }>;

const HOSES: readonly string[] = ['flexible-hose', 'smooth-bore-hose', 'aluminium-flex'];
export const isHose = (pipe: Pipe): boolean => HOSES.includes(pipe.surface ?? '');

/** Shortest piece that can still be seen and touched [px]; metres of pipe count by their square root, or one long run would hide the rest. */
const SHORTEST = 18;
const MARK_STEP = 15;

/** Cuts a route into its lengths of pipe, in flow order, and sets gates (at the height `handY` where they can), cones and collars on them. */
export function cutRoute(route: Route, metrics: Metrics, handY: number): { pipes: PlacedPipe[]; marks: PlacedMark[] } {
  const lengths = route.refs.filter((ref): ref is PipeRef & { element: Pipe } => ref.element.kind === 'pipe');
  const radius = bendRadius(pipeWidth(widestOfRoute(route), metrics));
  const whole = lengthOf(route.points);
  if (lengths.length === 0) {
    const pipe = {
      place: { section: route.section, index: null },
      points: route.points,
      diameter_m: route.diameter_m,
      hose: false,
    };
    const width = pipeWidth(widestOfRoute(route), metrics);
    return { pipes: [{ ...pipe, width, radius }], marks: marksOn(route, [0, whole], [route.section], metrics, handY) };
  }
  const cuts = cutsOf(
    lengths.map((ref) => ref.element.length_m),
    route.points,
    radius,
  );
  const pipes = lengths.map(({ section, index, element }, i): PlacedPipe => ({
    place: { section, index },
    points: slice(route.points, cuts[i]!, cuts[i + 1]!),
    width: pipeWidth(element.diameter_m, metrics),
    radius,
    hose: isHose(element),
    diameter_m: element.diameter_m,
  }));
  const collars = pipes.slice(1).map((pipe): PlacedMark => {
    const { point, across } = spotAt(route.points, cuts[pipes.indexOf(pipe)]!);
    return { place: pipe.place, kind: 'collar', at: point, across, width: pipe.width };
  });
  return {
    pipes,
    marks: [
      ...collars,
      ...marksOn(
        route,
        cuts,
        lengths.map((ref) => ref.section),
        metrics,
        handY,
      ),
    ],
  };
}

function cutsOf(lengths_m: number[], points: readonly Point[], radius: number): number[] {
  const whole = lengthOf(points);
  const weights = lengths_m.map((length) => Math.sqrt(Math.max(length, 0.05)));
  const sum = weights.reduce((a, b) => a + b, 0);
  const spare = Math.max(0, whole - SHORTEST * weights.length);
  const shortest = Math.min(SHORTEST, whole / weights.length);
  const cuts = [0];
  for (const weight of weights) cuts.push(cuts.at(-1)! + shortest + (spare * weight) / sum);
  return cuts.map((cut, i) => (i === 0 ? 0 : i === weights.length ? whole : clearOfCorners(points, cut, radius)));
}

function spotAt(points: readonly Point[], along: number): { point: Point; across: boolean } {
  const { point, direction } = pointAt(points, along);
  return { point, across: Math.abs(direction.x) > Math.abs(direction.y) };
}

const MARKED: readonly string[] = ['gate', 'reducer', 'fixed-resistance'];

function marksOn(route: Route, cuts: number[], owners: string[], metrics: Metrics, handY: number): PlacedMark[] {
  const width = pipeWidth(widestOfRoute(route), metrics);
  const whole = cuts.at(-1)!;
  const taken = new Map<number, number>();
  const marks: PlacedMark[] = [];
  let behind = 0;
  for (const { section, index, element } of route.refs) {
    if (element.kind === 'pipe') behind += 1;
    if (!MARKED.includes(element.kind)) continue;
    const place = Math.min(behind, cuts.length - 1);
    if (element.kind === 'gate') {
      const piece = Math.min(place, cuts.length - 2);
      const { point, across } = spotAt(route.points, gateSpot(route.points, cuts[piece]!, cuts[piece + 1]!, handY));
      marks.push({ place: { section, index }, kind: 'gate', at: point, across, width });
      continue;
    }
    const nth = taken.get(place) ?? 0;
    taken.set(place, nth + 1);
    const along =
      Math.min(whole - 14, Math.max(14, cuts[place]!)) + (nth + 1) * MARK_STEP * (place === cuts.length - 1 ? -1 : 1);
    const { point, across } = spotAt(route.points, Math.min(whole, Math.max(0, along)));
    marks.push({ place: { section, index }, kind: element.kind as PlacedMark['kind'], at: point, across, width });
  }
  for (const section of route.gates) {
    if (section.elements.some((element) => element.kind === 'gate')) continue;
    const first = Math.max(0, owners.indexOf(section.id));
    const last = Math.max(first, owners.lastIndexOf(section.id));
    const { point, across } = spotAt(
      route.points,
      gateSpot(route.points, cuts[first]!, cuts[last + 1] ?? whole, handY),
    );
    marks.push({ place: { section: section.id, index: null }, kind: 'gate', at: point, across, width });
  }
  return marks;
}

/** On the longest straight stretch between two cuts: at a hand's height on a riser, so that gates stand in a row; else past its middle. */
function gateSpot(points: readonly Point[], from: number, to: number, handY: number): number {
  const stops = [from, ...stationsAlong(points).filter((along) => along > from && along < to), to];
  let best = { start: from, length: 0 };
  for (let i = 1; i < stops.length; i++) {
    const length = stops[i]! - stops[i - 1]!;
    if (length > best.length) best = { start: stops[i - 1]!, length };
  }
  const { point, direction } = pointAt(points, best.start + 0.1);
  const climbs = Math.abs(direction.y) > 0.9;
  const wanted = climbs ? (handY - point.y) / direction.y : best.length * 0.6;
  return best.start + Math.min(best.length * 0.85, Math.max(best.length * 0.2, wanted));
}
