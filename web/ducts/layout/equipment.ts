import type { Element } from '../../../src/duct/elements/index.ts';
import type { Metrics } from './metrics.ts';
import type { Point } from './polyline.ts';
import { bendRadius, pipeWidth, widestOf, widestOfRoute } from './pipe-width.ts';
import type { Box, OpenRoute } from './sheet.ts';

/** Equipment that stands on the floor in the way of the air; everything else is drawn on the pipe. */
export const stands = (element: Element): boolean => element.kind === 'cyclone' || element.kind === 'filters';

export type Standing = { box: Box; way: Point[]; outlet: { at: Point; from: OpenRoute['from'] } };

/** a drum's lid stands proud of its wall [px] */
export const LID = 5;

type Spot = {
  metrics: Metrics;
  floorY: number;
  /** nothing may stand left of here */ right: number;
  risersRight: number;
  open: OpenRoute;
};

/** Stands a drum or a filter box on the floor behind what is drawn, and leads the open pipe into it. */
export function standEquipment(element: Element, spot: Spot): Standing {
  const { metrics, floorY, open } = spot;
  const size = element.kind === 'cyclone' ? metrics.cyclone : metrics.filters;
  const width = pipeWidth(Math.max(widestOfRoute(open), widestOf([element], 0)), metrics);
  const radius = bendRadius(width);
  const top = floorY - size.height;
  const drawn = (x: number): Box => ({ x, y: top, width: size.width, height: size.height });
  // a main's last leg to the floor keeps room beside it for its speed
  const start = Math.max(spot.right + metrics.gap, open.from === 'main' ? spot.risersRight : 0);
  const clear =
    open.points.at(-1)!.x +
    (open.from === 'side' ? 3 * radius + metrics.gap : open.from === 'up' ? 2 * radius : radius * 0.8);
  if (element.kind === 'cyclone') {
    // the inlet of a drum sits in its side, just under the lid
    const inletY = top + Math.max(width / 2 + 8, size.height * 0.1);
    const down = Math.max(start + width / 2, clear);
    const box = drawn(down + radius + metrics.stub);
    const way = [...over(open, down, spot, radius), { x: down, y: inletY }, { x: box.x, y: inletY }];
    return { box, way, outlet: { at: { x: box.x + box.width * 0.5, y: top - LID }, from: 'up' } };
  }
  const x = Math.max(start, clear - size.width / 2);
  const box = drawn(x);
  const middle = x + size.width / 2;
  const way = [...over(open, middle, spot, radius), { x: middle, y: top }];
  return { box, way, outlet: { at: { x: x + size.width, y: floorY - metrics.shaftHeight }, from: 'side' } };
}

/** From where the pipe is open to a point straight above `x`, over whatever stands between. */
export function over(
  open: OpenRoute,
  x: number,
  { metrics, floorY }: Pick<Spot, 'metrics' | 'floorY'>,
  radius: number,
): Point[] {
  const last = open.points.at(-1)!;
  if (open.from === 'main') return [{ x, y: last.y }];
  const tallest = floorY - Math.max(metrics.cyclone.height, metrics.filters.height);
  const y = Math.min(last.y, tallest) - Math.max(metrics.hoop, radius + 10);
  if (open.from === 'up')
    return [
      { x: last.x, y },
      { x, y },
    ];
  const climb = last.x + metrics.gap + radius;
  return [
    { x: climb, y: last.y },
    { x: climb, y },
    { x, y },
  ];
}
