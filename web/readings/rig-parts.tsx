import type { JSX } from 'preact';
import type { Rig } from '../../src/readings/schema.ts';
import { BLADES } from '../drawings/blade-paths.ts';
import { SCROLL } from '../drawings/scroll-path.ts';

/** Pieces of the test rig's drawing. Pipe from y 52 to 92, free end at x 0 of each piece, seen with the air going right. */

/** What stands at the pipe's free end. */
export function FreeEnd({ method }: { method: Rig['method'] }): JSX.Element | null {
  switch (method) {
    case 'orifice-cap':
      return (
        <>
          <path d="M-6 48h8v15h-8zM-6 81h8v15h-8z" fill="var(--ink)" />
          <path
            d="M4 65C30 66 52 57 72 56M4 79C30 78 52 87 72 88"
            fill="none"
            stroke="var(--air)"
            stroke-width="1.6"
            stroke-dasharray="6 4"
          />
        </>
      );
    case 'conical-inlet':
      return (
        <>
          <path d="M0 52L-26 37M0 92L-26 107" stroke="var(--ink)" stroke-width="1.8" />
          <text x="-32" y="124" font-size="12.5">
            60°
          </text>
        </>
      );
    case 'bell-mouth':
      return (
        <path
          d="M0 52C-14 52 -22 44 -24 32M0 92C-14 92 -22 100 -24 112"
          fill="none"
          stroke="var(--ink)"
          stroke-width="1.8"
        />
      );
    default:
      return null;
  }
}

/** What stands in the pipe and measures; its middle at x 0. */
export function Measuring({ rig }: { rig: Rig }): JSX.Element | null {
  switch (rig.method) {
    case 'orifice-in-pipe':
      return (
        <>
          <path d="M0 46v19M0 98v-19" stroke="var(--ink)" stroke-width="5" />
          <path d={plateTapPath(rig.tappings ?? 'corner')} stroke="var(--ink)" stroke-width="3" />
        </>
      );
    case 'pitot-traverse':
      return (
        <>
          <path d="M0 30V66a6 6 0 0 1 -6 6H-18" fill="none" stroke="var(--ink)" stroke-width="3" />
          <path d="M-7 40h14M-7 46h14" stroke="var(--ink)" stroke-width="1.4" />
        </>
      );
    case 'vane-traverse':
      return (
        <>
          <path d="M0 30V61" stroke="var(--ink)" stroke-width="3" />
          <circle cx="0" cy="72" r="11" fill="var(--body)" stroke="var(--ink)" stroke-width="1.8" />
          <path d="M0 63v18M-9 72h18M-6.5 65.5l13 13M6.5 65.5l-13 13" stroke="var(--ink)" stroke-width="1.4" />
        </>
      );
    default:
      return null;
  }
}

/** Taps of the plate, from the pipe's upper wall: at its faces, an inch off, or a whole and half a diameter. */
const plateTapPath = (tappings: NonNullable<Rig['tappings']>): string =>
  ({ corner: 'M-4 52v-9M4 52v-9', flange: 'M-11 52v-9M11 52v-9', 'D-and-half-D': 'M-40 52v-9M20 52v-9' })[tappings];

/** Cells across the pipe that take the swirl out, two diameters long. */
export function Straightener({ from, to }: { from: number; to: number }) {
  return (
    <path
      d={`M${from} 52V92M${to} 52V92M${from} 60H${to}M${from} 68H${to}M${from} 76H${to}M${from} 84H${to}`}
      stroke="var(--ink)"
      stroke-width="1.1"
    />
  );
}

/** The water tube below its tap at x, both legs to be counted. */
export function WaterTube({ x, leaning }: { x: number; leaning: boolean }) {
  return (
    <g transform={`translate(${x} 0)`}>
      <path d="M-6 92h12v6h-12z" fill="var(--ink)" />
      <g transform={leaning ? 'rotate(-32 0 98)' : undefined}>
        <path d="M0 98V130a11 11 0 0 0 22 0V102" fill="none" stroke="var(--ink)" stroke-width="7" />
        <path d="M0 98V130a11 11 0 0 0 22 0V101" fill="none" stroke="var(--body)" stroke-width="4.2" />
        <path d="M0 106V130a11 11 0 0 0 22 0V125" fill="none" stroke="var(--air)" stroke-width="4.2" />
        <path d="M5 106H38M27 125H38" stroke="var(--ink)" stroke-width=".9" />
        <path d="M34 106V125" stroke="var(--ink)" />
        <path d="M34 106l-2.6 7h5.2zM34 125l-2.6 -7h5.2z" fill="var(--ink)" />
      </g>
    </g>
  );
}

const SIZE = 0.62;

/** The blower: its inlet at x for a pipe on the inlet, its mouth at x for one on the outlet. */
export function Blower({ x, outlet }: { x: number; outlet: boolean }) {
  const at = outlet ? { x: x - 12 - 148 * SIZE, y: 72 - 29 * SIZE } : { x: x - 8, y: 26 };
  const feet = { x: at.x + SCROLL.centre.x * SIZE, y: at.y + SCROLL.centre.y * SIZE };
  return (
    <>
      {outlet && (
        <path
          d={`M${x - 12} ${at.y + 14 * SIZE}L${x} 52V92L${x - 12} ${at.y + 44.5 * SIZE}z`}
          fill="var(--body)"
          stroke="var(--ink)"
          stroke-width="1.8"
        />
      )}
      <path
        d={`M${feet.x - 14} ${feet.y + 30}L${feet.x - 20} 152M${feet.x + 14} ${feet.y + 30}L${feet.x + 22} 152`}
        stroke="var(--ink)"
        stroke-width="1.8"
      />
      <g transform={`translate(${at.x} ${at.y}) scale(${SIZE})`}>
        <path d={SCROLL.outline} fill="var(--body)" stroke="var(--ink)" stroke-width="2.9" />
        <g transform={`translate(${SCROLL.centre.x} ${SCROLL.centre.y}) scale(0.84) translate(-30 -30)`}>
          <circle cx="30" cy="30" r="28" fill="none" stroke="var(--ink)" stroke-width="2" />
          <path d={BLADES.radial.paths} fill="none" stroke="var(--ink)" stroke-width="3.4" />
          <circle cx="30" cy="30" r="8" fill="var(--body)" stroke="var(--ink)" stroke-width="2" />
        </g>
      </g>
    </>
  );
}

/** A bag on the air's way out, its mouth at x; it hangs to the right. */
export function Bag({ x, y, half }: { x: number; y: number; half: number }) {
  return (
    <path
      d={`M${x} ${y - half}C${x + 14} ${y - half - 22} ${x + 40} ${y - 30} ${x + 40} ${y}C${x + 40} ${y + 30} ${x + 14} ${y + half + 22} ${x} ${y + half}z`}
      fill="var(--body)"
      stroke="var(--ink)"
      stroke-width="1.8"
      stroke-dasharray="7 3"
    />
  );
}
