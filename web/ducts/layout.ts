import type { Ductwork } from '../../src/job/types.ts';
import { over, standEquipment, stands } from './layout/equipment.ts';
import { cutRoute } from './layout/cut-route.ts';
import type { Metrics } from './layout/metrics.ts';
import { lineTree } from './layout/path-tree.ts';
import { bendRadius, pipeWidth, widestOf, widestOfRoute } from './layout/pipe-width.ts';
import { levelsBelow, placeLine } from './layout/place-lines.ts';
import { DISCHARGE } from './layout/sheet.ts';
import type { BlowerSpot, Drawing, OpenRoute, Sheet, WayOut } from './layout/sheet.ts';

export { between, DESK, PHONE, TIGHT } from './layout/metrics.ts';
export type { Metrics } from './layout/metrics.ts';
export * from './layout/sheet.ts';

/** Gates of machines hang in a row this high above the floor, as a share of the riser. */
const GATE_HEIGHT = 0.64;

/**
 * The side view of a shop: every machine on the floor line, its pipe up to the main, branches melting in, drum and
 * filter box in the air's way, the blower, and the run to the open air. Widths of pipes are to scale, lengths are not.
 * Grows to the right with the number of machines and downwards with mains that run under mains; nothing overlaps.
 */
export function layout(ductwork: Ductwork, metrics: Metrics): Sheet {
  const { root, unplaced } = lineTree(ductwork.sections);
  const levels = root ? levelsBelow(root) : 0;
  const floorY = metrics.top + (levels > 0 ? levels * metrics.levelStep + metrics.riserUnderLevels : 0);
  const drawing: Drawing = {
    metrics,
    floorY: Math.max(floorY, metrics.top + metrics.riser),
    machines: [],
    equipment: [],
    routes: [],
    right: metrics.edge - metrics.gap,
    risersRight: metrics.edge,
    namesRight: 0,
  };
  const open = root ? placeLine(drawing, root, 0) : null;
  const blower = placeBlower(drawing, open);
  const wayOut = placeWayOut(drawing, blower, ductwork);
  const cut = drawing.routes.map((route) => cutRoute(route, metrics, drawing.floorY - GATE_HEIGHT * metrics.riser));
  return {
    width: drawing.right + metrics.edge,
    height: drawing.floorY + metrics.belowFloor,
    floorY: drawing.floorY,
    machines: drawing.machines,
    equipment: drawing.equipment,
    pipes: cut.flatMap((pieces) => pieces.pipes),
    marks: [...cut.flatMap((pieces) => pieces.marks), ...mainCollars(drawing)],
    blower,
    wayOut,
    unplaced,
  };
}

function placeBlower(drawing: Drawing, open: OpenRoute | null): BlowerSpot {
  const { metrics, floorY } = drawing;
  const s = metrics.blower;
  const shaftY = floorY - metrics.shaftHeight;
  let left = drawing.right + metrics.gap;
  if (open) {
    const radius = bendRadius(pipeWidth(widestOfRoute(open), metrics));
    const last = open.points.at(-1)!;
    if (open.from !== 'side') {
      const down = Math.max(drawing.right + metrics.gap, last.x + (open.from === 'up' ? 2 : 1) * radius);
      open.points.push(...over(open, down, drawing, radius), { x: down, y: shaftY });
      left = down + radius;
    }
    open.points.push({ x: left + metrics.stub + 10 * s, y: shaftY });
    drawing.routes.push(open);
    left += metrics.stub;
  }
  const at = { x: left + 22 * s, y: shaftY };
  drawing.right = at.x + 25 * s;
  return {
    at,
    scale: s,
    box: { x: left, y: shaftY - 27 * s, width: 47 * s, height: 27 * s + metrics.shaftHeight },
    eye: { x: at.x - 20 * s, y: shaftY },
    outlet: { x: at.x + 17.8 * s, y: shaftY - 27 * s },
  };
}

/** The run from the blower's outlet to the open air, with drum and filters where a shop blows through them. */
function placeWayOut(drawing: Drawing, blower: BlowerSpot, ductwork: Ductwork): WayOut {
  const { metrics } = drawing;
  const elements = ductwork.discharge ?? [];
  const diameter_m = widestOf(elements, Math.max(0.1, ...drawing.routes.slice(-1).map(widestOfRoute)));
  const opened = (at: OpenRoute['points'][number], from: OpenRoute['from']): OpenRoute => ({
    section: DISCHARGE,
    points: [at],
    from,
    refs: [],
    gates: [],
    diameter_m,
  });
  let open = opened(blower.outlet, 'up');
  for (const [index, element] of elements.entries()) {
    if (!stands(element)) {
      open.refs.push({ section: DISCHARGE, index, element });
      continue;
    }
    const { box, way, outlet } = standEquipment(element, {
      metrics,
      floorY: drawing.floorY,
      right: drawing.right,
      risersRight: drawing.risersRight,
      open,
    });
    open.points.push(...way);
    drawing.routes.push(open);
    drawing.equipment.push({ place: { section: DISCHARGE, index }, element, box });
    drawing.right = box.x + box.width;
    open = opened(outlet.at, outlet.from);
  }
  if (elements.length === 0) return freely(drawing, open);
  drawing.routes.push(open);
  return leave(drawing, open, ductwork.exhaust !== 'returned');
}

/** Nothing on the outlet: the air leaves where it is. */
function freely(drawing: Drawing, open: OpenRoute): WayOut {
  const at = open.points.at(-1)!;
  return { tip: { x: at.x, y: at.y - 12 * drawing.metrics.blower }, way: 'up', wallX: null };
}

function leave(drawing: Drawing, open: OpenRoute, outdoors: boolean): WayOut {
  const { metrics } = drawing;
  const last = open.points.at(-1)!;
  const width = pipeWidth(widestOfRoute(open), metrics);
  const radius = bendRadius(width);
  if (metrics.wayOut === 'up' && open.from === 'up') {
    const end = { x: last.x, y: metrics.top - 12 };
    open.points.push(end);
    drawing.right = Math.max(drawing.right, end.x + width / 2 + 4);
    return { tip: { x: end.x, y: end.y - 12 }, way: 'up', wallX: null };
  }
  const wallX = outdoors ? Math.max(drawing.right, last.x + radius) + metrics.gap : null;
  const end = {
    // air that comes back into the room leaves on a stub long enough to say so above it
    x: wallX === null ? Math.max(drawing.right, last.x + radius) + metrics.font * 6 : wallX + metrics.gap,
    y: open.from === 'up' ? metrics.top : last.y,
  };
  if (open.from === 'up') open.points.push({ x: last.x, y: end.y });
  open.points.push(end);
  drawing.right = end.x + 16;
  return { tip: { x: end.x + 8, y: end.y }, way: 'right', wallX };
}

/** A collar where each main begins, on the pipe of the section behind the junction. */
const mainCollars = (drawing: Drawing): Sheet['marks'] =>
  drawing.routes
    .filter((route) => route.atJunction)
    .map((route) => ({
      place: { section: route.section, index: null },
      kind: 'collar' as const,
      at: route.points[0]!,
      across: true,
      width: pipeWidth(widestOfRoute(route), drawing.metrics),
    }));
