import type { AxisWork } from './photo-work.ts';
import type { PhotoPoint, StagePoint } from './view.ts';

/** A line that can be seen on any photo: ink or blue on a light halo. */
export function Inked({ d, line, air, dashed }: { d: string; line: number; air?: boolean; dashed?: boolean }) {
  return (
    <>
      <path d={d} class="on-photo-halo" stroke-width={line + 3.4} />
      <path
        d={d}
        class={air ? 'on-photo-air' : 'on-photo'}
        stroke-width={line}
        stroke-dasharray={dashed ? '8 5' : undefined}
      />
    </>
  );
}

type HandleProps = {
  name: string;
  d: string;
  at: StagePoint;
  placed: boolean;
  held: boolean;
  onNudge: (by: PhotoPoint) => void;
};
const ARROWS: Record<string, PhotoPoint> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** A corner: an inked angle, and round it a ring a fingertip finds. Arrow keys move it by a pixel, with shift by ten. */
export function Handle({ name, d, at: [x, y], placed, held, onNudge }: HandleProps) {
  const onKey = (event: KeyboardEvent): void => {
    const way = ARROWS[event.key];
    if (!way) return;
    event.preventDefault();
    const far = event.shiftKey ? 10 : 1;
    onNudge([way[0] * far, way[1] * far]);
  };
  return (
    <g class={held ? 'handle held' : 'handle'} role="button" tabIndex={0} aria-label={name} onKeyDown={onKey}>
      <circle cx={x} cy={y} r={placed && !held ? 13 : 20} class="ring-halo" />
      <circle cx={x} cy={y} r={placed && !held ? 13 : 20} class={placed ? 'ring' : 'ring waiting'} />
      <path d={d} class="on-photo-halo" stroke-width="8" />
      <path d={d} class="on-photo" stroke-width="4.5" />
    </g>
  );
}

type Towards = 'below' | 'left' | 'right';

/** The values typed for the ends of the axes, lettered at the corners they hold for. */
export function AxisEnds({
  axes,
  place,
}: {
  axes: readonly AxisWork[];
  place: (corner: number, towards: Towards) => StagePoint;
}) {
  const tags = axes.flatMap((axis): { at: StagePoint; text: string; anchor: string }[] => {
    if (axis.id === 'x')
      return [
        { at: place(0, 'below'), text: axis.minText, anchor: 'middle' },
        { at: place(1, 'below'), text: axis.maxText, anchor: 'middle' },
      ];
    const side: Towards = axis.id === 'y1' ? 'left' : 'right';
    const [low, high] = axis.id === 'y1' ? [0, 3] : [1, 2];
    const anchor = axis.id === 'y1' ? 'end' : 'start';
    return [
      { at: place(low, side), text: axis.minText, anchor },
      { at: place(high, side), text: axis.maxText, anchor },
    ];
  });
  return (
    <g class="axis-ends" aria-hidden="true">
      {tags
        .filter((tag) => tag.text !== '')
        .map((tag) => (
          <text key={`${tag.at}`} x={tag.at[0]} y={tag.at[1] + 4} text-anchor={tag.anchor}>
            {tag.text}
          </text>
        ))}
    </g>
  );
}
