import type { Case } from '../../src/assessment.ts';
import type { Family } from '../../src/fan/families.ts';
import type { Ductwork } from '../../src/job/types.ts';
import { airInPipes, STILL_M_S } from './airflow.ts';
import type { PipeAir } from './airflow.ts';
import { BlowerGlyph, Cyclone, FilterBox, isDrum } from './glyphs/equipment.tsx';
import { MachineGlyph } from './glyphs/machine.tsx';
import { Gate, OtherMark } from './glyphs/marks.tsx';
import type { Label } from './layout/labels.ts';
import { textWidth } from './layout/metrics.ts';
import { roundedPath } from './layout/polyline.ts';

import type { Metrics, Place, PlacedPipe, Sheet } from './layout.ts';
import { dune } from './dune.ts';
import './drawing.css';

/** What can be touched on the drawing: a place in the ducts, the blower, or a gate. */
export type Touch = { piece: 'place'; place: Place } | { piece: 'blower' } | { piece: 'gate'; section: string };

export type DrawingTexts = {
  label: string;
  drum: string;
  cone: string;
  machine: (section: string) => string;
  filters: (count: number) => string;
  blower: string;
  out: string;
  open: string;
  shut: string;
  /** spoken name of a piece, for those who do not see it */
  piece: (place: Place) => string;
  gate: (section: string, open: boolean) => string;
};

type Props = {
  sheet: Sheet;
  metrics: Metrics;
  /** drawn smaller as a whole, so that a small shop need not be scrolled */
  shrink: number;
  ductwork: Ductwork;
  shown: Case | null;
  open: ReadonlySet<string>;
  labels: readonly Label[];
  chosen: Place | null;
  blower: { family: Family; bladeCount: number | null };
  texts: DrawingTexts;
  onTouch: (touch: Touch) => void;
};

/** The shop from the side, as its ducts run. All outlines are laid down before all bodies, so that branches melt into their main. */
export function Drawing(props: Props) {
  const { sheet, metrics, ductwork, shown, texts, onTouch } = props;
  const air = airInPipes(sheet.pipes, ductwork, shown);
  const paths = sheet.pipes.map((pipe) => ({ pipe, d: roundedPath(pipe.points, pipe.radius), air: air.get(pipe)! }));
  const isChosen = (place: Place) =>
    props.chosen?.section === place.section && (props.chosen.index === place.index || props.chosen.index === null);
  const touch = (place: Place) => () => onTouch({ piece: 'place', place });
  const flowing = (shown?.operatingPoint?.flow_m3_s ?? 0) > 0;
  return (
    <svg
      class="ducts"
      role="group"
      aria-label={texts.label}
      dir="ltr"
      width={sheet.width * props.shrink}
      height={sheet.height * props.shrink}
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
    >
      <Floor sheet={sheet} />
      {sheet.wayOut.wallX !== null && <Wall sheet={sheet} wallX={sheet.wayOut.wallX} />}
      {paths.map(({ pipe, d }) => (
        <path
          key={d}
          class={isChosen(pipe.place) ? 'outline chosen' : 'outline'}
          d={d}
          stroke-width={pipe.width + (isChosen(pipe.place) ? 6.4 : 3.4)}
        />
      ))}
      {paths.map(({ pipe, d, air }) => (
        <path key={d} class={air.settles ? 'body settles' : 'body'} d={d} stroke-width={pipe.width} />
      ))}
      {paths.map(({ pipe, d, air }) => (
        <PipeInside key={d} pipe={pipe} d={d} air={air} />
      ))}
      {sheet.marks.map((mark, i) =>
        mark.kind === 'gate' ? (
          <Gate
            key={i}
            mark={mark}
            open={isOpen(mark.place.section, props, air)}
            words={metrics.machine > 0.75 ? texts : null}
          />
        ) : (
          <OtherMark key={i} mark={mark} />
        ),
      )}
      <WayOutArrow sheet={sheet} metrics={metrics} flowing={flowing} text={texts.out} />
      {sheet.machines.map((machine) => (
        <MachineGlyph key={machine.section} machine={machine} floorY={sheet.floorY} scale={metrics.machine} />
      ))}
      {sheet.equipment.map(({ element, box, place }) => (
        <g key={`${place.section} ${place.index}`} class={isChosen(place) ? 'chosen' : ''}>
          {element.kind === 'cyclone' && <Cyclone box={box} drum={isDrum(element)} running={flowing} />}
          {element.kind === 'filters' && <FilterBox box={box} count={element.count} />}
        </g>
      ))}
      <BlowerGlyph spot={sheet.blower} family={props.blower.family} bladeCount={props.blower.bladeCount} />
      <Names sheet={sheet} metrics={metrics} texts={texts} open={props.open} />
      {props.labels.map((label) => (
        <Lettering key={`${label.at.x} ${label.at.y}`} label={label} font={metrics.font} />
      ))}
      <g class="touch">
        {paths.map(({ pipe, d }) => (
          <path
            key={d}
            d={d}
            stroke-width={Math.max(34, pipe.width + 10)}
            role="button"
            tabindex={0}
            aria-label={texts.piece(pipe.place)}
            onClick={touch(pipe.place)}
            onKeyDown={onEnter(touch(pipe.place))}
          />
        ))}
        {sheet.machines.map((machine) => (
          <rect
            key={machine.section}
            {...machine.box}
            role="button"
            tabindex={0}
            aria-label={machine.name}
            onClick={touch({ section: machine.section, index: null })}
            onKeyDown={onEnter(touch({ section: machine.section, index: null }))}
          />
        ))}
        {sheet.equipment.map(({ box, place }) => (
          <rect
            key={`${place.section} ${place.index}`}
            {...box}
            role="button"
            tabindex={0}
            aria-label={texts.piece(place)}
            onClick={touch(place)}
            onKeyDown={onEnter(touch(place))}
          />
        ))}
        <rect
          {...sheet.blower.box}
          role="button"
          tabindex={0}
          aria-label={texts.blower}
          onClick={() => onTouch({ piece: 'blower' })}
          onKeyDown={onEnter(() => onTouch({ piece: 'blower' }))}
        />
        {sheet.marks
          .filter((mark) => mark.kind === 'gate')
          .map((mark) => {
            const toggle = () => onTouch({ piece: 'gate', section: mark.place.section });
            const label = texts.gate(mark.place.section, isOpen(mark.place.section, props, air));
            return (
              <rect
                key={mark.place.section}
                x={mark.at.x - 22}
                y={mark.at.y - 22}
                width={44 + mark.width / 2 + 8}
                height={44}
                role="button"
                tabindex={0}
                aria-label={label}
                onClick={toggle}
                onKeyDown={onEnter(toggle)}
              />
            );
          })}
      </g>
    </svg>
  );
}

const onEnter = (act: () => void) => (event: KeyboardEvent) => {
  if (event.key !== 'Enter' && event.key !== ' ') return;
  event.preventDefault();
  act();
};

/** A machine's gate stands as its plan says; a gate further down the line counts as open while air runs through it. */
function isOpen(section: string, { open, sheet }: Props, air: Map<PlacedPipe, PipeAir>): boolean {
  if (sheet.machines.some((machine) => machine.section === section)) return open.has(section);
  return sheet.pipes.some((pipe) => pipe.place.section === section && air.get(pipe)!.speed_m_s > STILL_M_S);
}

/** Ribs of a hose, dashes of the air (0.75 px long for each m/s), the dune where dust comes to rest. */
function PipeInside({ pipe, d, air }: { pipe: PlacedPipe; d: string; air: PipeAir }) {
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

function Floor({ sheet }: { sheet: Sheet }) {
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
function Wall({ sheet, wallX }: { sheet: Sheet; wallX: number }) {
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

function WayOutArrow({
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

function Names({
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
function Lettering({ label, font }: { label: Label; font: number }) {
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
