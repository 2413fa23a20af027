import type { Rig } from '../../src/readings/schema.ts';
import { texts } from '../texts/index.ts';
import { say } from '../words/say.ts';
import { hatchUnder } from './hatch.ts';
import { rigDimensions, PLACES, tapPlace, type Dimension } from './rig-dimensions.ts';
import { RigLegend } from './rig-legend.tsx';
import { Bag, Blower, FreeEnd, Measuring, Straightener, WaterTube } from './rig-parts.tsx';

const GROUND = 152;

/**
 * The test rig from the side, as it is told: free end, what measures, tap, water tube, blower; sizes by letters, their meaning
 * and figures below. Lengths are not to scale. A pipe on the outlet has the blower at its left.
 */
export function RigPicture({ rig }: { rig: Rig }) {
  const t = texts.value.readings;
  const outlet = rig.side === 'outlet';
  const bag = rig.method === 'bag-fill';
  const end = outlet ? (bag ? 300 : 326) : 34;
  const root = outlet ? 108 : bag ? 226 : 270;
  const x = (share: number): number => end + share * (root - end);
  const dimensions = rigDimensions(rig);
  const pipe = say('length', rig.pipeDiameter_m);
  const wide = rig.pipeDiameter_m == null && rig.width_m != null && rig.height_m != null;
  const [left, right] = outlet ? [root, end] : [end, root];
  const across = outlet ? root + 8 : x(rig.method === 'orifice-cap' ? 0.6 : 0.14);
  const intakePiece = rig.method === 'conical-inlet' || rig.method === 'bell-mouth';
  return (
    <>
      <svg class="rig ltr" viewBox="0 0 358 178" role="img" aria-label={t.pictureOf(t.methods[rig.method])}>
        <path d={`M0 ${GROUND}H358`} stroke="var(--ink)" stroke-width="1.8" />
        <path d={hatchUnder(0, 358, GROUND)} stroke="var(--ink)" stroke-width="1" />
        <path
          d={[left + 22, right - 26].map((at) => `M${at} ${GROUND}V92M${at - 6} ${GROUND}h12`).join('')}
          stroke="var(--ink)"
          stroke-width="1.6"
        />
        {bag && outlet && <Bag x={end} y={72} half={20} />}
        <path d={`M${left} 52H${right}V92H${left}z`} fill="var(--body)" stroke="var(--ink)" stroke-width="1.8" />
        <g transform={`translate(${end} 0)${outlet ? ' scale(-1 1)' : ''}`}>
          {!(outlet && intakePiece) && <FreeEnd method={rig.method} />}
        </g>
        <path
          d={`M${outlet ? left + 4 : left - 32} 72H${outlet ? 356 : right - 6}`}
          stroke="var(--air)"
          stroke-width="3"
          stroke-dasharray="15 7"
        />
        <path d={airHead(outlet ? right - 12 : right - 22)} fill="var(--air)" />
        {outlet && rig.method === 'orifice-cap' && <Straightener from={x(0.6)} to={x(0.45)} />}
        <g transform={`translate(${x(rig.method === 'orifice-in-pipe' ? PLACES.plate : PLACES.measuring)} 0)`}>
          <Measuring rig={rig} />
        </g>
        {intakePiece && !outlet && <path d={`M${x(0.12)} 92v12`} stroke="var(--ink)" stroke-width="4" />}
        <WaterTube x={x(tapPlace(rig))} leaning={(rig.tube?.angle_deg ?? 90) < 60} />
        <path d={`M${across} 52V92`} stroke="var(--ink)" />
        <path d={`M${across} 52l-2.6 7h5.2zM${across} 92l-2.6 -7h5.2z`} fill="var(--ink)" />
        <rect x={across + 4} y="63" width={wide ? 26 : pipe ? 74 : 26} height="18" fill="var(--body)" />
        <text x={across + 6} y="77" font-size="12.5">
          D {wide ? '' : pipe || '?'}
        </text>
        {dimensions.map((d) => d.span && <Along key={d.letter} dimension={d} span={d.span} x={x} />)}
        <Blower x={root} outlet={outlet} />
        {bag && !outlet && <Bag x={root + 84} y={44} half={10} />}
        <text class="halo" x="358" y="173" font-size="12.5" text-anchor="end" font-weight="700">
          {t.bothLegs}
        </text>
        <text class="halo" x="0" y="173" font-size="12.5">
          {t.straightTaped}
        </text>
      </svg>
      <RigLegend rig={rig} dimensions={dimensions} />
    </>
  );
}

const airHead = (at: number): string => `M${at} 66l11 6l-11 6z`;

/** A dimension line above the pipe with its letter; a short one has it beside its end. */
function Along({
  dimension,
  span: [from, to],
  x,
}: {
  dimension: Dimension;
  span: readonly [number, number];
  x: (share: number) => number;
}) {
  const [a, b] = [x(from), x(to)].sort((one, two) => one - two) as [number, number];
  const y = dimension.name === 'straightener' ? 40 : 22;
  return (
    <>
      <path d={`M${a} ${y}H${b}M${a} ${y - 5}V50M${b} ${y - 5}V50`} stroke="var(--ink)" stroke-width="1" />
      <path d={`M${a} ${y}l7 -2.6v5.2zM${b} ${y}l-7 -2.6v5.2z`} fill="var(--ink)" />
      <text class="halo" x={(a + b) / 2} y={y - 5} font-size="14" font-weight="700" text-anchor="middle">
        {dimension.letter}
      </text>
    </>
  );
}
