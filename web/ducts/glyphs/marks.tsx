import type { PlacedMark } from '../layout.ts';

/** A sliding gate: open = blade pulled out with an open knob, shut = blade across, inked. */
export function Gate({
  mark,
  open,
  words,
}: {
  mark: PlacedMark;
  open: boolean;
  words: { open: string; shut: string } | null;
}) {
  const half = mark.width / 2 + 4;
  const thick = words ? 13 : 10;
  const pull = mark.width * 0.9 + 4;
  const turn = mark.across ? `rotate(90)` : '';
  return (
    <>
      <g class={open ? 'gate open' : 'gate shut'} transform={`translate(${mark.at.x} ${mark.at.y}) ${turn}`}>
        <rect class="slot" x={-half} y={-thick / 2} width={2 * half} height={thick} />
        {open && <rect class="blade" x={half} y={-thick / 4} width={pull} height={thick / 2} />}
        <circle class="knob" cx={half + (open ? pull + thick * 0.4 : thick * 0.42 + 1)} r={thick * 0.42} />
      </g>
      {words && !mark.across && (
        <text class="halo" x={mark.at.x - half - 6} y={mark.at.y + 5} font-size="14" text-anchor="end">
          {open ? words.open : words.shut}
        </text>
      )}
    </>
  );
}

/** Collar where two pieces meet, cone where the pipe changes size, box of a resistance that somebody measured. */
export function OtherMark({ mark }: { mark: PlacedMark }) {
  const half = mark.width / 2 + 4;
  const turn = mark.across ? '' : 'rotate(90)';
  const at = `translate(${mark.at.x} ${mark.at.y}) ${turn}`;
  if (mark.kind === 'collar') return <path class="collar" d={`M0 ${-half}V${half}`} transform={at} />;
  if (mark.kind === 'reducer')
    return <path class="line cone" d={`M-7 ${-half}V${half}L7 ${half - 5}V${5 - half}Z`} transform={at} />;
  return (
    <g transform={at}>
      <rect class="slot measured" x="-8" y={-half} width="16" height={2 * half} />
      <path class="line thin" d={`M-8 ${half}L8 ${-half}`} />
    </g>
  );
}
