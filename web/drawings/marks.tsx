import type { Verdict } from '../../src/assessment.ts';

/** Verdict marks differ by shape, not by colour: full disc with tick, half disc, ring with cross. */
export function VerdictMark({ verdict, size = 22 }: { verdict: Verdict; size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" aria-hidden="true">
      {verdict === 'yes' ? (
        <>
          <circle cx="12" cy="12" r="11" fill="var(--ink)" />
          <path d="M6.5 12.5l4 4 7.5-9" fill="none" stroke="var(--paper)" stroke-width="3" />
        </>
      ) : (
        <>
          <circle cx="12" cy="12" r="10" fill="var(--paper)" stroke="var(--ink)" stroke-width="2.2" />
          {verdict === 'unsure' ? (
            <path d="M12 2a10 10 0 0 1 0 20z" fill="var(--ink)" />
          ) : (
            <path d="M7 7l10 10M17 7L7 17" stroke="var(--ink)" stroke-width="2.6" />
          )}
        </>
      )}
    </svg>
  );
}

/** Nothing is known yet: a dashed ring, as for everything not measured. */
export function OpenMark({ size = 22 }: { size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" aria-hidden="true">
      <circle cx="12" cy="12" r="10" fill="none" stroke="var(--ink)" stroke-width="2" stroke-dasharray="3.6 2.7" />
    </svg>
  );
}

/** The triangle of danger; stands beside words, on yellow or in yellow. */
export function DangerMark({ size = 26, filled = false }: { size?: number; filled?: boolean }) {
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" aria-hidden="true">
      <path
        d="M12 3L22 21H2z"
        fill={filled ? 'var(--haz)' : 'none'}
        stroke="var(--hazink)"
        stroke-width="1.9"
        stroke-linejoin="miter"
      />
      <path d="M12 9.5v5.5M12 17v2" stroke="var(--hazink)" stroke-width="2.2" />
    </svg>
  );
}
