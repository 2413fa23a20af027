import type { PlacedMachine } from '../layout.ts';
import { MACHINE_SHAPES } from './machine-shapes.ts';

/** A machine on the floor line, in the line work of its kind. */
export function MachineGlyph({ machine, floorY, scale }: { machine: PlacedMachine; floorY: number; scale: number }) {
  const shape = MACHINE_SHAPES[machine.kind];
  return (
    <g class="glyph" transform={`translate(${machine.x} ${floorY}) scale(${scale})`}>
      {shape.bodies.map((d) => (
        <path key={d} class="built" d={d} />
      ))}
      {shape.lines.map((d) => (
        <path key={d} class="line" d={d} />
      ))}
      {shape.heavy && <path class="line heavy" d={shape.heavy} />}
    </g>
  );
}
