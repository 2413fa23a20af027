import type { Family } from '../../../src/fan/families.ts';
import type { Element } from '../../../src/duct/elements/index.ts';
import type { BlowerSpot, Box } from '../layout.ts';
import { bladePath, bladesToDraw } from './blades.ts';

/** Stipple of a heap, the same every time: an even scatter (R2 sequence). */
const HEAP = Array.from({ length: 46 }, (_, i) => ({ u: (0.5 + i * 0.7548777) % 1, v: (0.5 + i * 0.569840291) % 1 }));

/** Drum with hoops and lid, or a cone where there is no drum; the spiral shows only while air moves. */
export function Cyclone({ box, drum, running }: { box: Box; drum: boolean; running: boolean }) {
  const { x, y, width: w, height: h } = box;
  const right = x + w;
  const bottom = y + h;
  const coneTop = y + h * 0.42;
  const binTop = y + h * 0.8;
  const throat = { left: x + w * 0.38, right: x + w * 0.62 };
  const bulk = drum
    ? `M${x} ${y}H${right}V${bottom}H${x}z`
    : `M${x} ${y}H${right}V${coneTop}L${throat.right} ${binTop}V${binTop}H${right - w * 0.1}V${bottom}H${x + w * 0.1}V${binTop}H${throat.left}L${x} ${coneTop}z`;
  const spiral = { left: x + w * 0.14, right: x + w * 0.86, top: y + h * 0.1, step: h * 0.12 };
  const turn = (i: number) => (i % 2 ? spiral.right : spiral.left);
  let swirl = `M${spiral.right} ${spiral.top}`;
  for (let i = 0; i < (drum ? 3 : 2); i++) {
    const from = spiral.top + i * spiral.step;
    swirl += `C${turn(i + 1)} ${from + spiral.step * 0.8} ${turn(i)} ${from + spiral.step * 0.3} ${turn(i)} ${from + spiral.step}`;
  }
  const heapHeight = drum ? h * 0.26 : h * 0.12;
  const heapWidth = drum ? w - 10 : w * 0.7;
  return (
    <g class="glyph">
      <path class="built" d={bulk} />
      <path
        class="line"
        d={`M${x - 4} ${y}H${right + 4}M${x - 4} ${y - 5}H${right + 4}M${x - 4} ${y - 5}v5M${right + 4} ${y - 5}v5`}
      />
      {drum && (
        <path
          class="line thin"
          d={`M${x - 2.5} ${y + h * 0.4}H${right + 2.5}M${x - 2.5} ${y + h * 0.7}H${right + 2.5}`}
        />
      )}
      {HEAP.map(({ u, v }, i) => (
        <circle
          key={i}
          class="dust"
          r="1.3"
          cx={x + w / 2 + (u - 0.5) * heapWidth}
          cy={bottom - 4 - v * heapHeight * (1 - Math.abs(u - 0.45) * 1.1)}
        />
      ))}
      {running && <path class="swirl" d={swirl} />}
    </g>
  );
}

/** Filter box with a pleated element for every filter in it, up to a dozen; above that the figure under the box says it. */
export function FilterBox({ box, count }: { box: Box; count: number }) {
  const { x, y, width: w, height: h } = box;
  const shown = Math.max(1, Math.min(12, Math.ceil(count)));
  const columns = shown > 6 ? 3 : shown > 1 ? 2 : 1;
  const rows = Math.ceil(shown / columns);
  const gap = 4;
  const cell = {
    w: (w - 14 - gap * (columns - 1)) / columns,
    h: Math.min(h * 0.26, (h * 0.78 - gap * (rows - 1)) / rows),
  };
  const pleats = (px: number, py: number) => {
    const folds = Math.max(3, Math.round(cell.w / 3.2));
    const step = cell.w / folds / 2;
    let d = `M${px} ${py + cell.h - 1}`;
    for (let i = 1; i <= folds * 2; i++) d += `L${px + i * step} ${i % 2 ? py + 2 : py + cell.h - 1}`;
    return `M${px} ${py}h${cell.w}v${cell.h}h${-cell.w}z${d}`;
  };
  return (
    <g class="glyph">
      <path class="built" d={`M${x} ${y}h${w}v${h}h${-w}z`} />
      <path class="line hairline" d={`M${x + 4} ${y + 4}h${w - 8}v${h - 8}h${8 - w}z`} />
      {Array.from({ length: shown }, (_, i) => (
        <path
          key={i}
          class="line hairline"
          d={pleats(x + 7 + (i % columns) * (cell.w + gap), y + 8 + Math.floor(i / columns) * (cell.h + gap))}
        />
      ))}
    </g>
  );
}

/** Scroll with the wheel seen through it, the blades as many and as bent as they are. */
export function BlowerGlyph({
  spot,
  family,
  bladeCount,
}: {
  spot: BlowerSpot;
  family: Family;
  bladeCount: number | null;
}) {
  const count = bladesToDraw(family, bladeCount);
  return (
    <g class="glyph" transform={`translate(${spot.at.x} ${spot.at.y}) scale(${spot.scale})`}>
      <path class="line" d="M-18 31L-12.4 17M19 31L14.4 18.4M-23 31H25" />
      <path
        class="built"
        d="M24.4 -27V0A23.2 22.4 0 0 1 1.2 22.4A21.2 21.2 0 0 1 -20 1.2A20 19.2 0 0 1 0 -18Q8 -18 11.2 -14.8V-27Z"
      />
      <circle class="line thin" r="15.6" fill="none" />
      <circle class="line" r={family === 'forward-curved' ? 2.2 : 4.4} />
      <path
        class={`line blades ${family === 'unknown' ? 'unsure' : ''} ${count > 20 ? 'many' : ''}`}
        d={bladePath(family, count, 4.6, 15)}
      />
    </g>
  );
}

/** Is the air cleaned in a drum (lid, hoops) or in a cone? */
export const isDrum = (element: Extract<Element, { kind: 'cyclone' }>): boolean =>
  Boolean(element.drum) || !element.bodyDiameter_m;
