import type { JSX } from 'preact';

/** Icons on a 24 px grid, 1.75 px line, square ends, drawn as a part would be in a workshop drawing. */
const DRAWINGS = {
  blowers: (
    <>
      <circle cx="11" cy="13" r="8" />
      <path d="M19 13V3h-5" />
      <circle cx="11" cy="13" r="2" />
      <path d="M11 11V7M11 15v4M9 13H5M13 13h4" />
    </>
  ),
  ducts: <path d="M2 6h13a4 4 0 0 1 4 4v11M2 11h11.5a.5.5 0 0 1 .5.5V21M12 21h9" />,
  match: (
    <>
      <path d="M4 2v18h18" />
      <path d="M4 7c8-1.5 12 2 16 11" />
      <path d="M4 20c7-1 12-6 15-15" stroke-dasharray="1.5 3.2" />
    </>
  ),
  card: (
    <>
      <path d="M5 3h14v18H5z" />
      <circle cx="12" cy="6.5" r="1.2" />
      <path d="M8 11h8M8 14.5h8M8 18h5" />
    </>
  ),
  undo: <path d="M4 9h10a5.5 5.5 0 0 1 0 11H9M8 4.5L3.5 9 8 13.5" />,
  redo: <path d="M20 9H10a5.5 5.5 0 0 0 0 11h5M16 4.5L20.5 9 16 13.5" />,
  more: (
    <>
      <circle cx="12" cy="5" r="1" />
      <circle cx="12" cy="12" r="1" />
      <circle cx="12" cy="19" r="1" />
    </>
  ),
  back: <path d="M20 12H4M10 5.5L3.5 12l6.5 6.5" />,
  on: <path d="M4 12h16M14 5.5l6.5 6.5-6.5 6.5" />,
  close: <path d="M5 5l14 14M19 5L5 19" />,
  plus: <path d="M12 4v16M4 12h16" />,
  down: <path d="M5 9l7 7 7-7" />,
  camera: (
    <>
      <path d="M3 7h4l2-3h6l2 3h4v13H3z" />
      <circle cx="12" cy="13" r="4" />
    </>
  ),
  tube: <path d="M6 3v11a6 6 0 0 0 12 0V3M10 3v11a2 2 0 0 0 4 0V3M6 9h4M14 13h4" />,
  plate: <path d="M3 6h18v13H3zM6.5 10.5h5M13.5 10.5h4M6.5 14.5h3M12 14.5h5.5" />,
  rule: <path d="M3 8h18v8H3zM6.5 8v3.5M10 8v3.5M13.5 8v3.5M17 8v3.5" />,
  point: (
    <>
      <path d="M4 2v18h18" />
      <circle cx="13" cy="10" r="3" />
    </>
  ),
  chart: (
    <>
      <path d="M4 2v18h18" />
      <path d="M4 6c9 0 13 4 15 14" />
    </>
  ),
  bin: <path d="M4 7h16M9 7V4h6v3M6.5 7l1 14h9l1-14" />,
  shop: <path d="M3 21V9l9-6 9 6v12zM9 21v-7h6v7" />,
  file: <path d="M6 3h8l4 4v14H6zM14 3v4h4" />,
  whole: <path d="M4 9V4h5M15 4h5v5M20 15v5h-5M9 20H4v-5" />,
  turn: <path d="M20 12a8 8 0 1 1-3-6.2M17.5 2v4h-4" />,
} satisfies Record<string, JSX.Element>;

export type IconName = keyof typeof DRAWINGS;
/** These point along the line of text and turn round with it. */
const TURNS: ReadonlySet<string> = new Set(['undo', 'redo', 'back', 'on']);

export function Icon({ name, size = 24 }: { name: IconName; size?: number }) {
  return (
    <svg
      class={TURNS.has(name) ? 'turns' : undefined}
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      stroke-width="1.75"
      stroke-linecap="square"
      aria-hidden="true"
    >
      {DRAWINGS[name]}
    </svg>
  );
}
