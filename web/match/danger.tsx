import type { ComponentChildren } from 'preact';
import { DangerMark } from '../drawings/marks.tsx';

/** A strip of hazard yellow with its triangle and words, where the danger is. */
export function DangerStrip({ children }: { children: ComponentChildren }) {
  return (
    <p class="hazard haz danger-strip">
      <DangerMark size={22} />
      <span>{children}</span>
    </p>
  );
}

/** Reasons that can hurt somebody or burn something, and the place of the page where their strip stands. */
export const DANGERS: Record<string, 'motor' | 'ducts' | 'wheel'> = {
  'motor-overload-open': 'motor',
  'low-voltage': 'motor',
  'single-phase-feed': 'motor',
  'voltage-mismatch': 'motor',
  'weak-start': 'motor',
  'voltage-unbalance': 'motor',
  'derated-overload': 'motor',
  'cable-drop': 'motor',
  'long-start': 'motor',
  'dc-supply': 'motor',
  'self-cooled-motor': 'motor',
  'hot-or-high': 'motor',
  'tip-speed': 'wheel',
  'drum-may-collapse': 'ducts',
  'sparks-with-dust': 'ducts',
  'returned-air': 'ducts',
  'dust-through-wheel': 'ducts',
};
