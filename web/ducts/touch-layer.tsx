import type { ComponentProps } from 'preact';
import type { Drawing } from './drawing.tsx';
import { DISCHARGE } from './layout.ts';
import type { Place, PlacedPipe } from './layout.ts';

/** The run behind the blower, pipe or none. */
const WAY_OUT: Place = { section: DISCHARGE, index: null };

const onEnter = (act: () => void) => (event: KeyboardEvent) => {
  if (event.key !== 'Enter' && event.key !== ' ') return;
  event.preventDefault();
  act();
};

type Props = ComponentProps<typeof Drawing> & {
  paths: { pipe: PlacedPipe; d: string }[];
  isOpen: (section: string) => boolean;
};

/** What a finger or the keyboard can reach, laid unseen over the drawing: every piece at least a fingertip wide, gates on top. */
export function TouchLayer({ sheet, texts, onTouch, paths, isOpen }: Props) {
  const touch = (place: Place) => () => onTouch({ piece: 'place', place });
  return (
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
      <rect
        x={sheet.wayOut.tip.x - 22}
        y={sheet.wayOut.tip.y - 22}
        width={44}
        height={44}
        role="button"
        tabindex={0}
        aria-label={texts.piece(WAY_OUT)}
        onClick={touch(WAY_OUT)}
        onKeyDown={onEnter(touch(WAY_OUT))}
      />
      {sheet.marks
        .filter((mark) => mark.kind === 'gate')
        .map((mark) => {
          const toggle = () => onTouch({ piece: 'gate', section: mark.place.section });
          const label = texts.gate(mark.place.section, isOpen(mark.place.section));
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
  );
}
