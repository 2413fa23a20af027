import { textWidth } from './layout/metrics.ts';
import type { Label } from './layout/labels.ts';
import type { Metrics, PlacedPipe, Sheet } from './layout.ts';
import { STILL_M_S } from './airflow.ts';
import type { PipeAir } from './airflow.ts';
import { dune } from './dune.ts';
import type { DrawingTexts } from './drawing.tsx';
import { isDrum } from './glyphs/equipment.tsx';

/** Ribs of a hose, dashes of the air (0.75 px long for each m/s), the dune where dust comes to rest. */
export function PipeInside({ pipe, d, air }: { pipe: PlacedPipe; d: string; air: PipeAir }) {
  const moving = air.speed_m_s > STILL_M_S;
  const dash = Math.min(30, air.speed_m_s * 0.75);
  const heap = air.settles ? dune(pipe) : null;
  return (
    <>
      {pipe.hose && <path class={moving ? 'ribs' : 'ribs still'} d={d} stroke-width={pipe.width} />}
      {moving && (
        <path
          class={air.settles ? 'flow settles' : 'flow'}
          d={d}
          stroke-width={Math.max(1.6, pipe.width * 0.16)}
          stroke-dasharray={`${dash.toFixed(1)} 7`}
          style={{
            '--p': `${(-dash - 7).toFixed(1)}px`,
            animationDuration: `${(0.42 + 9 / (air.speed_m_s + 6)).toFixed(2)}s`,
          }}
        />
      )}
      {heap && <path class="dune" d={heap.outline} />}
      {heap?.grains.map((grain) => (
        <circle key={grain.x} class="grain" r="1" cx={grain.x} cy={grain.y} />
      ))}
    </>
  );
}

export function Floor({ sheet }: { sheet: Sheet }) {
  const y = sheet.floorY;
  let hatch = '';
  for (let x = 4; x < sheet.width; x += 11) hatch += `M${x} ${y + 1}l-6 7`;
  return (
    <>
      <path class="floor" d={`M-40 ${y}H${sheet.width + 40}`} />
      <path class="hatch" d={hatch} />
    </>
  );
}

/** The wall of the shop, open where the pipe goes through. */
export function Wall({ sheet, wallX }: { sheet: Sheet; wallX: number }) {
  const { tip } = sheet.wayOut;
  const half = 20;
  return (
    <path
      class="line wall"
      d={[wallX, wallX + 8]
        .map((x) => `M${x} ${Math.max(8, tip.y - 70)}V${tip.y - half}M${x} ${tip.y + half}V${sheet.floorY}`)
        .join('')}
    />
  );
}

export function WayOutArrow({
  sheet,
  metrics,
  flowing,
  text,
}: {
  sheet: Sheet;
  metrics: Metrics;
  flowing: boolean;
  text: string;
}) {
  const { tip, way } = sheet.wayOut;
  const up = way === 'up';
  return (
    <>
      {flowing && (
        <path class="tip" d="M-7 -5.6L7 0L-7 5.6z" transform={`translate(${tip.x} ${tip.y}) rotate(${up ? -90 : 0})`} />
      )}
      <text
        class="halo"
        x={up ? tip.x - 14 : (sheet.wayOut.wallX ?? tip.x) - 6}
        y={up ? tip.y + 6 : tip.y - 26}
        font-size={metrics.font}
        text-anchor="end"
      >
        {text}
      </text>
    </>
  );
}

export function Names({
  sheet,
  metrics,
  texts,
  open,
}: {
  sheet: Sheet;
  metrics: Metrics;
  texts: DrawingTexts;
  open: ReadonlySet<string>;
}) {
  const line = metrics.font * 1.25;
  const y = sheet.floorY + 10 + metrics.font;
  const standing = apart(
    [
      ...sheet.equipment.map(({ box, element }) => ({
        x: box.x + box.width / 2,
        text:
          element.kind === 'filters'
            ? texts.filters(element.count)
            : element.kind === 'cyclone' && !isDrum(element)
              ? texts.cone
              : texts.drum,
      })),
      { x: sheet.blower.at.x, text: texts.blower },
    ],
    metrics.font,
  );
  return (
    <>
      {sheet.machines.map((machine) => (
        <text
          key={machine.section}
          class={open.has(machine.section) ? 'name on' : 'name'}
          x={machine.nameX}
          font-size={metrics.font}
          text-anchor="middle"
        >
          {machine.nameLines.map((text, i) => (
            <tspan key={text} x={machine.nameX} y={y + i * line}>
              {text}
            </tspan>
          ))}
        </text>
      ))}
      {standing.map(({ x, text, row }) => (
        <text key={x} class="name" x={x} y={y + row * line} font-size={metrics.font} text-anchor="middle">
          {text}
        </text>
      ))}
    </>
  );
}

/** Names under equipment that stands close together: one that would touch its neighbour goes a line lower. */
function apart(names: { x: number; text: string }[], font: number): { x: number; text: string; row: number }[] {
  const ends = [-Infinity, -Infinity];
  return [...names]
    .sort((a, b) => a.x - b.x)
    .map(({ x, text }) => {
      const half = textWidth(text, font) / 2;
      const row = x - half < ends[0]! + 5 ? 1 : 0;
      ends[row] = x + half;
      return { x, text, row };
    });
}

/** A name stands in ink, a speed in the blue of what moves, and plain ink where dust settles. */
export function Lettering({ label, font }: { label: Label; font: number }) {
  const titled = label.lines.length > 1;
  return (
    <text class="halo" text-anchor={label.anchor} font-size={font}>
      {label.lines.map((text, i) => (
        <tspan
          key={text}
          x={label.at.x}
          y={label.at.y + font * (0.95 + i * 1.28)}
          class={titled && i === 0 ? 'strong' : label.tone === 'air' ? 'strong air' : ''}
        >
          {text}
        </tspan>
      ))}
    </text>
  );
}
