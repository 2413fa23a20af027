import type { JSX } from 'preact';
import type { Rig } from '../../src/readings/schema.ts';
import { SCROLL } from '../drawings/scroll-path.ts';
import { BLADES } from '../drawings/blade-paths.ts';
import { texts } from '../texts/index.ts';
import { say } from '../words/say.ts';
import { hatchUnder } from './hatch.ts';

/** The test rig from the side, drawn as it is told: free end, what measures, tap, water tube, blower. Lengths are not to scale. */
export function RigPicture({ rig }: { rig: Rig }) {
  const t = texts.value.readings;
  const tapX = rig.method === 'orifice-cap' && rig.tap === 'near' ? 62 : 210;
  const pipe = say('length', rig.pipeDiameter_m);
  return (
    <svg class="rig ltr" viewBox="0 0 358 178" role="img" aria-label={t.pictureOf(t.methods[rig.method])}>
      <path d="M0 146H358" stroke="var(--ink)" stroke-width="1.8" />
      <path d={hatchUnder(0, 358, 146)} stroke="var(--ink)" stroke-width="1" />
      <path d="M70 146V88M64 146h12M176 146V88M170 146h12" stroke="var(--ink)" stroke-width="1.6" />
      <path d="M32 46H270V86H32z" fill="var(--body)" stroke="var(--ink)" stroke-width="1.8" />
      <FreeEnd method={rig.method} />
      <path d="M38 66H262" stroke="var(--air)" stroke-width="3" stroke-dasharray="15 7" />
      <WaterTube x={tapX} />
      <path d="M126 46V86" stroke="var(--ink)" />
      <path d="M126 46l-2.6 7h5.2zM126 86l-2.6 -7h5.2z" fill="var(--ink)" />
      <rect x="130" y="57" width={pipe ? 74 : 26} height="18" fill="var(--body)" />
      <text x="133" y="71" font-size="12.5">
        D {pipe || '?'}
      </text>
      {rig.method !== 'orifice-cap' || rig.tap !== 'near' ? (
        <Dimension
          from={32}
          to={tapX}
          y={30}
          text={rig.lengthToTap_m ? say('length', rig.lengthToTap_m, 'm') : t.farEnough}
        />
      ) : (
        <Dimension from={32} to={tapX} y={30} text="" />
      )}
      <g transform="translate(262 20) scale(0.62)">
        <path d={SCROLL.outline} fill="var(--body)" stroke="var(--ink)" stroke-width="2.9" />
        <g transform={`translate(${SCROLL.centre.x} ${SCROLL.centre.y}) scale(0.84) translate(-30 -30)`}>
          <circle cx="30" cy="30" r="28" fill="none" stroke="var(--ink)" stroke-width="2" />
          <path d={BLADES.radial.paths} fill="none" stroke="var(--ink)" stroke-width="3.4" />
          <circle cx="30" cy="30" r="8" fill="var(--body)" stroke="var(--ink)" stroke-width="2" />
        </g>
      </g>
      <path d="M290 106L284 146M324 106L331 146" stroke="var(--ink)" stroke-width="1.8" />
      <text class="halo" x="358" y="172" font-size="12.5" text-anchor="end" font-weight="700">
        {t.bothLegs}
      </text>
      <text class="halo" x="0" y="172" font-size="12.5">
        {t.straightTaped}
      </text>
    </svg>
  );
}

function FreeEnd({ method }: { method: Rig['method'] }): JSX.Element {
  switch (method) {
    case 'orifice-cap':
      return (
        <>
          <path d="M26 42h8v15h-8zM26 75h8v15h-8z" fill="var(--ink)" />
          <path d="M-2 66H22" stroke="var(--air)" stroke-width="3" stroke-dasharray="9 5" />
          <path
            d="M36 59C62 60 84 51 104 50M36 73C62 72 84 81 104 82"
            fill="none"
            stroke="var(--air)"
            stroke-width="1.6"
            stroke-dasharray="6 4"
          />
        </>
      );
    case 'conical-inlet':
      return <path d="M32 46L6 26M32 86L6 106" stroke="var(--ink)" stroke-width="1.8" />;
    case 'bell-mouth':
      return (
        <path d="M32 46C18 46 10 38 8 26M32 86C18 86 10 94 8 106" fill="none" stroke="var(--ink)" stroke-width="1.8" />
      );
    case 'orifice-in-pipe':
      return (
        <>
          <path d="M92 46v13M92 86v-13" stroke="var(--ink)" stroke-width="5" />
          <path d="M84 86v10M100 86v10" stroke="var(--ink)" stroke-width="3" />
        </>
      );
    case 'pitot-traverse':
      return (
        <>
          <path d="M92 34V60a6 6 0 0 1 -6 6H76" fill="none" stroke="var(--ink)" stroke-width="3" />
          <path d="M88 34h8" stroke="var(--ink)" stroke-width="2" />
        </>
      );
    case 'vane-traverse':
      return (
        <>
          <circle cx="18" cy="66" r="13" fill="var(--body)" stroke="var(--ink)" stroke-width="1.8" />
          <path d="M18 55v22M7 66h22M10 58l16 16M26 58l-16 16" stroke="var(--ink)" stroke-width="1.4" />
        </>
      );
    case 'bag-fill':
      return (
        <path d="M32 46C4 36 -8 52 -4 66C-8 82 4 96 32 86" fill="var(--body)" stroke="var(--ink)" stroke-width="1.8" />
      );
  }
}

function WaterTube({ x }: { x: number }) {
  return (
    <g transform={`translate(${x - 235} 2)`}>
      <path d="M229 84h12v6h-12z" fill="var(--ink)" />
      <path d="M235 90V122a11 11 0 0 0 22 0V94" fill="none" stroke="var(--ink)" stroke-width="7" />
      <path d="M235 90V122a11 11 0 0 0 22 0V93" fill="none" stroke="var(--body)" stroke-width="4.2" />
      <path d="M235 98V122a11 11 0 0 0 22 0V117" fill="none" stroke="var(--air)" stroke-width="4.2" />
      <path d="M240 98H273M262 117H273" stroke="var(--ink)" stroke-width=".9" />
      <path d="M269 98V117" stroke="var(--ink)" />
      <path d="M269 98l-2.6 7h5.2zM269 117l-2.6 -7h5.2z" fill="var(--ink)" />
    </g>
  );
}

function Dimension({ from, to, y, text }: { from: number; to: number; y: number; text: string }) {
  return (
    <>
      <path
        d={`M${from} ${y}H${to}M${from} ${y - 5}V${y + 12}M${to} ${y - 5}V${y + 14}`}
        stroke="var(--ink)"
        stroke-width="1"
      />
      <path d={`M${from} ${y}l7 -2.6v5.2zM${to} ${y}l-7 -2.6v5.2z`} fill="var(--ink)" />
      {text && (
        <text class="halo" x={(from + to) / 2} y={y - 6} font-size="12.5" text-anchor="middle">
          {text}
        </text>
      )}
    </>
  );
}
