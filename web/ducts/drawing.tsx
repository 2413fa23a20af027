import type { Case } from '../../src/assessment.ts';
import type { Family } from '../../src/fan/families.ts';
import type { Ductwork } from '../../src/job/types.ts';
import { airInPipes, STILL_M_S } from './airflow.ts';
import type { PipeAir } from './airflow.ts';
import { BlowerGlyph, Cyclone, FilterBox, isDrum } from './glyphs/equipment.tsx';
import { MachineGlyph } from './glyphs/machine.tsx';
import { Gate, OtherMark } from './glyphs/marks.tsx';
import type { Label } from './layout/labels.ts';
import { roundedPath } from './layout/polyline.ts';

import type { Metrics, Place, PlacedPipe, Sheet } from './layout.ts';
import { Floor, Lettering, Names, PipeInside, Wall, WayOutArrow } from './drawing-parts.tsx';
import { TouchLayer } from './touch-layer.tsx';
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
  const { sheet, metrics, ductwork, shown, texts } = props;
  const air = airInPipes(sheet.pipes, ductwork, shown);
  const paths = sheet.pipes.map((pipe) => ({ pipe, d: roundedPath(pipe.points, pipe.radius), air: air.get(pipe)! }));
  const isChosen = (place: Place) =>
    props.chosen?.section === place.section && (props.chosen.index === place.index || props.chosen.index === null);
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
      <TouchLayer {...props} paths={paths} isOpen={(section) => isOpen(section, props, air)} />
    </svg>
  );
}

/** A machine's gate stands as its plan says; a gate further down the line counts as open while air runs through it. */
function isOpen(section: string, { open, sheet }: Props, air: Map<PlacedPipe, PipeAir>): boolean {
  if (sheet.machines.some((machine) => machine.section === section)) return open.has(section);
  return sheet.pipes.some((pipe) => pipe.place.section === section && air.get(pipe)!.speed_m_s > STILL_M_S);
}
