import type { Family } from '../../../src/fan/families.ts';

/**
 * Blades of a wheel as one SVG path around 0,0: the real number of them, leaning the way the family leans
 * when the wheel turns clockwise. `inner` and `outer` are the radii of the blades.
 */
export function bladePath(family: Family, count: number, inner: number, outer: number): string {
  const lean = LEAN[family];
  const at = (radius: number, angle: number) =>
    `${(radius * Math.cos(angle)).toFixed(2)} ${(radius * Math.sin(angle)).toFixed(2)}`;
  let d = '';
  for (let i = 0; i < count; i++) {
    const angle = (2 * Math.PI * i) / count;
    const hub = lean.hub === null ? inner : outer * lean.hub;
    d += `M${at(hub, angle)}Q${at((hub + outer) / 2, angle + lean.middle)} ${at(outer, angle + lean.tip)}`;
  }
  return d;
}

/** How far the middle and the tip of a blade lead its root [rad]; `hub` as a share of the tip radius where blades are short. */
const LEAN: Record<Family, { middle: number; tip: number; hub: number | null }> = {
  radial: { middle: 0, tip: 0, hub: null },
  'radial-tip': { middle: -0.28, tip: -0.34, hub: null },
  'backward-inclined': { middle: -0.3, tip: -0.6, hub: null },
  'backward-curved': { middle: -0.18, tip: -0.75, hub: null },
  'forward-curved': { middle: -0.02, tip: 0.16, hub: 0.78 },
  axial: { middle: 0.25, tip: 0.55, hub: null },
  'through-flow-vacuum': { middle: -0.3, tip: -0.9, hub: null },
  unknown: { middle: 0, tip: 0, hub: null },
};

/** Blades drawn where nobody has counted them yet. */
const USUAL_COUNT: Record<Family, number> = {
  radial: 8,
  'radial-tip': 12,
  'backward-inclined': 10,
  'backward-curved': 12,
  'forward-curved': 36,
  axial: 5,
  'through-flow-vacuum': 9,
  unknown: 6,
};

export const bladesToDraw = (family: Family, count: number | null | undefined): number =>
  Math.min(64, count ?? USUAL_COUNT[family]);
