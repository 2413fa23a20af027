import type { Section } from '../../../src/job/types.ts';
import { machineKind } from './machine-kinds.ts';
import { textWidth } from './metrics.ts';
import { pipeWidth, widestPipe } from './pipe-width.ts';
import type { Point } from './polyline.ts';
import type { Drawing } from './sheet.ts';
import { wrapName } from './wrap-name.ts';

/** Stands the section's machine on the floor and answers the pipe from its port to the foot of its riser. */
export function placeMachine(drawing: Drawing, section: Section): Point[] {
  const { metrics, floorY } = drawing;
  const width = pipeWidth(widestPipe([section]), metrics);
  if (!section.pickup) {
    // a draft without its machine yet: an open mouth above the floor
    const x = Math.max(drawing.right + metrics.gap, drawing.risersRight) + width / 2;
    drawing.right = x + width / 2;
    drawing.risersRight = x + width / 2 + metrics.speedRoom;
    return [{ x, y: floorY - metrics.riser * 0.2 }];
  }
  const name = section.pickup.machine ?? section.label ?? section.id;
  const kind = machineKind(name);
  const s = metrics.machine;
  const nameLines = wrapName(name, metrics.nameWidth, metrics.font);
  const halfName = Math.max(...nameLines.map((line) => textWidth(line, metrics.font))) / 2;
  const start = drawing.right + metrics.gap;
  const portX = kind.port.x * s;
  // the riser beside a machine, seen from the middle of its foot
  const aside = kind.port.way === 'up' ? portX : Math.max(portX + width + 4, kind.right * s - width / 2);
  const nameAside = kind.port.way === 'up' ? 0 : (aside + width / 2 - kind.left * s) / 2;
  const x = Math.max(
    start + kind.left * s,
    drawing.namesRight + 4 + halfName - nameAside,
    drawing.risersRight + width / 2 - aside,
  );
  const port = { x: x + portX, y: floorY + kind.port.y * s };
  const riserX = x + aside;
  drawing.machines.push({
    section: section.id,
    kind: kind.kind,
    x,
    nameX: x + nameAside,
    box: {
      x: x - kind.left * s,
      y: floorY - kind.height * s,
      width: (kind.left + kind.right) * s,
      height: kind.height * s,
    },
    name,
    nameLines,
  });
  drawing.right = Math.max(x + kind.right * s, riserX + width / 2 + 3);
  drawing.namesRight = x + nameAside + halfName;
  drawing.risersRight = riserX + width / 2 + metrics.speedRoom;
  return kind.port.way === 'up' ? [port] : [port, { x: riserX, y: port.y }];
}
