import type { Section } from '../../../src/job/types.ts';
import { standEquipment, stands } from './equipment.ts';
import type { Metrics } from './metrics.ts';
import type { Line } from './path-tree.ts';
import { bendRadius, pipeWidth, widestOf, widestOfRoute, widestPipe } from './pipe-width.ts';
import { placeMachine } from './place-machine.ts';
import type { Point } from './polyline.ts';
import type { Drawing, OpenRoute } from './sheet.ts';

const levelY = (metrics: Metrics, level: number): number => metrics.top + level * metrics.levelStep;

/** A line that only climbs from its machine into the main above it needs no main of its own. */
const isRiser = (line: Line): boolean =>
  line.branches.flat().length === 0 && !line.sections.some((section) => section.elements.some(stands));

/** How many mains run one below the other, the root's own not counted. */
export const levelsBelow = (line: Line): number =>
  Math.max(0, ...line.branches.flat().map((branch) => (isRiser(branch) ? 0 : 1 + levelsBelow(branch))));

const opened = (section: string, points: Point[], from: OpenRoute['from'], diameter_m: number): OpenRoute => ({
  section,
  points,
  from,
  diameter_m,
  refs: [],
  gates: [],
});

const widthOf = (open: OpenRoute, metrics: Metrics): number => pipeWidth(widestOfRoute(open), metrics);

/** Leads an open route back up to its main; nothing to do when it is there already. */
function toMain(drawing: Drawing, open: OpenRoute, y: number): void {
  if (open.from === 'main') return;
  const last = open.points.at(-1)!;
  const radius = bendRadius(widthOf(open, drawing.metrics));
  const x =
    open.from === 'up' ? last.x : Math.max(last.x, drawing.right, drawing.risersRight) + drawing.metrics.gap + radius;
  if (x !== last.x) {
    open.points.push({ x, y: last.y });
    drawing.right = Math.max(drawing.right, x + radius);
  }
  const end = x + radius + drawing.metrics.stub;
  open.points.push({ x, y }, { x: end, y });
  drawing.risersRight = Math.max(drawing.risersRight, end);
  open.from = 'main';
}

/** Climbs at `x` and melts into the main at `y` at an angle; answers where. */
function meltIn(drawing: Drawing, open: OpenRoute, x: number, y: number, mainWidth: number): Point {
  const drop = Math.max(drawing.metrics.join, mainWidth / 2 + 18);
  const end = { x: x + drop * 0.85, y };
  open.points.push({ x, y: y + drop }, end);
  drawing.routes.push(open);
  drawing.risersRight = Math.max(drawing.risersRight, end.x - drop * 0.4);
  return end;
}

function placeBranch(drawing: Drawing, line: Line, level: number, mainWidth: number): Point {
  const y = levelY(drawing.metrics, level);
  const first = line.sections[0]!;
  if (isRiser(line)) {
    const open = opened(first.id, placeMachine(drawing, first), 'up', widestPipe([first]));
    for (const section of line.sections) take(open, section);
    return meltIn(drawing, open, open.points.at(-1)!.x, y, mainWidth);
  }
  const open = placeLine(drawing, line, level + 1);
  toMain(drawing, open, levelY(drawing.metrics, level + 1));
  const x = open.points.at(-1)!.x + bendRadius(widthOf(open, drawing.metrics));
  open.points.push({ x, y: open.points.at(-1)!.y });
  return meltIn(drawing, open, x, y, mainWidth);
}

function take(open: OpenRoute, section: Section): void {
  if (section.gate) open.gates.push(section);
  for (const [index, element] of section.elements.entries()) open.refs.push({ section: section.id, index, element });
}

/**
 * Draws a line from its machine on: riser, main, all that melts into it, and the equipment in its way. The last stretch
 * is handed back open, for only the caller knows where it leads: into a bigger main, or to the blower.
 */
export function placeLine(drawing: Drawing, line: Line, level: number): OpenRoute {
  const { metrics } = drawing;
  const y = levelY(metrics, level);
  const first = line.sections[0]!;
  const foot = placeMachine(drawing, first);
  const bend = bendRadius(pipeWidth(widestPipe([first]), metrics));
  const x = foot.at(-1)!.x;
  let open = opened(first.id, [...foot, { x, y }, { x: x + bend + metrics.stub, y }], 'main', widestPipe([first]));
  for (const [i, section] of line.sections.entries()) {
    if (line.branches[i]!.length > 0) open = placeJunction(drawing, open, section, line.branches[i]!, level);
    if (section.gate) open.gates.push(section);
    for (const [index, element] of section.elements.entries()) {
      if (!stands(element)) {
        open.refs.push({ section: section.id, index, element });
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
      drawing.equipment.push({ place: { section: section.id, index }, element, box });
      drawing.right = box.x + box.width;
      open = opened(section.id, [outlet.at], outlet.from, widestOfRoute(open));
    }
  }
  return open;
}

/** Ends what is open at the junction, draws every branch that meets there, and opens the main behind them. */
function placeJunction(
  drawing: Drawing,
  open: OpenRoute,
  section: Section,
  branches: Line[],
  level: number,
): OpenRoute {
  const { metrics } = drawing;
  toMain(drawing, open, levelY(metrics, level));
  drawing.routes.push(open);
  const start = open.points.at(-1)!;
  const diameter_m = widestOf(section.elements, widestOfRoute(open));
  const width = pipeWidth(diameter_m, metrics);
  let x = start.x;
  for (const branch of branches) {
    // a branch never lands on the collar of the section it flows into, nor on its neighbour
    drawing.risersRight = Math.max(drawing.risersRight, x + metrics.tail);
    x = placeBranch(drawing, branch, level, width).x;
  }
  const end = { x: x + width / 2 + metrics.tail, y: start.y };
  return { ...opened(section.id || open.section, [start, end], 'main', diameter_m), atJunction: true };
}
