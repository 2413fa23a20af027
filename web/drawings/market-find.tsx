import { hatchUnder } from '../readings/hatch.ts';
import { BLADES } from './blade-paths.ts';
import { SCROLL } from './scroll-path.ts';

/** A second-hand blower on the ground, its pipe waiting, a price tag with a question on it. */
export function MarketFind() {
  return (
    <svg class="market-find ltr" viewBox="0 0 358 206" aria-hidden="true">
      <path d="M0 186H358" stroke="var(--ink)" stroke-width="1.8" />
      <path d={hatchUnder(0, 358, 186)} stroke="var(--ink)" stroke-width="1" />
      <path d="M0 78H150M0 112H150" stroke="var(--ink)" stroke-width="1.8" />
      <path d="M0 79H150V111H0z" fill="var(--body)" />
      <path d="M96 74V116" stroke="var(--ink)" stroke-width="3" />
      <path d={ribs(104, 148)} stroke="var(--ink)" stroke-width="1.1" />
      <path d="M4 95H142" stroke="var(--air)" stroke-width="5" stroke-dasharray="19 8" />
      <path d="M46 186V112M40 186h12" stroke="var(--ink)" stroke-width="1.6" />
      <g transform="translate(126 16)">
        <path d="M48 122L36 170M94 122L106 170M24 170H118" stroke="var(--ink)" stroke-width="1.8" />
        <path d={SCROLL.outline} fill="var(--body)" stroke="var(--ink)" stroke-width="1.8" stroke-linejoin="round" />
        <path
          d={SCROLL.stream}
          fill="none"
          stroke="var(--air)"
          stroke-width="2.4"
          stroke-dasharray="9 6"
          stroke-linejoin="round"
        />
        <path
          d={`M${SCROLL.out.from} ${SCROLL.out.y}H${SCROLL.out.to + 12}`}
          stroke="var(--air)"
          stroke-width="4"
          stroke-dasharray="15 7"
        />
        <path d={`M${SCROLL.out.to + 26} ${SCROLL.out.y}l-13 -7v14z`} fill="var(--air)" />
        <g transform={`translate(${SCROLL.centre.x} ${SCROLL.centre.y}) scale(0.84) translate(-30 -30)`}>
          <circle cx="30" cy="30" r="28" fill="var(--body)" stroke="var(--ink)" stroke-width="1.8" />
          <path d={BLADES.radial.paths} fill="none" stroke="var(--ink)" stroke-width="2.8" />
          <circle cx="30" cy="30" r="8" fill="var(--body)" stroke="var(--ink)" stroke-width="1.4" />
          <circle cx="30" cy="30" r="3" fill="var(--ink)" />
        </g>
      </g>
      <path d="M234 84C258 84 280 98 292 119" fill="none" stroke="var(--ink)" stroke-width="1.2" />
      <g transform="rotate(9 300 132)">
        <path d="M286 116h38l10 14-10 14h-38z" fill="var(--sheet)" stroke="var(--ink)" stroke-width="1.8" />
        <circle cx="292" cy="122" r="2.4" fill="none" stroke="var(--ink)" stroke-width="1.3" />
        <text x="309" y="138" font-size="19" font-weight="700" text-anchor="middle">
          ?
        </text>
      </g>
    </svg>
  );
}

function ribs(from: number, to: number): string {
  let path = '';
  for (let x = from; x <= to; x += 5) path += `M${x} 78V112`;
  return path;
}
