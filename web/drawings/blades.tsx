import type { Family } from '../../src/fan/families.ts';
import { BLADES } from './blade-paths.ts';

/** A wheel as one sees it looking into the blower's inlet. */
export function BladePicture({ family, size = 58 }: { family: Family; size?: number }) {
  const { paths, hub, line } = BLADES[family];
  return (
    <svg width={size} height={size} viewBox="-1 -1 62 62" aria-hidden="true" class="ltr">
      <circle cx="30" cy="30" r="28" fill="var(--body)" stroke="var(--ink)" stroke-width="1.7" />
      {family === 'axial' && <circle cx="30" cy="30" r="26" fill="none" stroke="var(--hair)" stroke-width="1" />}
      <path
        d={paths}
        fill={family === 'axial' ? 'var(--paper)' : 'none'}
        stroke="var(--ink)"
        stroke-width={line}
        stroke-linejoin="round"
      />
      <circle cx="30" cy="30" r={hub} fill="var(--body)" stroke="var(--ink)" stroke-width="1.3" />
      {family === 'unknown' ? (
        <text x="30" y="36" font-size="17" font-weight="700" text-anchor="middle">
          ?
        </text>
      ) : (
        <circle cx="30" cy="30" r="3" fill="var(--ink)" />
      )}
      <path d="M30 -1V4M30 56v5M-1 30h5M56 30h5" stroke="var(--ink)" stroke-width="1" />
    </svg>
  );
}
