import type { Family } from '../../src/fan/families.ts';

/** How a wheel looks from the side it sucks on, in a 60 × 60 box round (30, 30). Drawn, not computed with. */
export type BladeDrawing = { paths: string; hub: number; line: number; rim: boolean };

const at = (radius: number, angle_deg: number): string => {
  const a = (angle_deg * Math.PI) / 180;
  return `${(30 + radius * Math.cos(a)).toFixed(1)} ${(30 + radius * Math.sin(a)).toFixed(1)}`;
};

/** One blade per step: straight or bent from the hub to the rim; `lean` turns its outer end, `bend` its middle [deg]. */
function blades(count: number, from: number, to: number, lean: number, bend: number, middle = 0.5): string {
  const turn = 360 / count;
  return Array.from({ length: count }, (_, i) => {
    const start = i * turn - 90;
    const mid = from + (to - from) * middle;
    return `M${at(from, start)}Q${at(mid, start + lean * middle + bend)} ${at(to, start + lean)}`;
  }).join('');
}

/** The wheel turns clockwise in every picture, so leaning back is against the clock. */
export const BLADES: Record<Family, BladeDrawing> = {
  radial: { paths: blades(8, 8, 25.5, 0, 0), hub: 8, line: 2.4, rim: true },
  'radial-tip': { paths: blades(10, 10, 26, 14, 16, 0.55), hub: 9, line: 2.2, rim: true },
  'backward-inclined': { paths: blades(9, 11, 26, -38, 4), hub: 11, line: 2.3, rim: true },
  'backward-curved': { paths: blades(10, 11, 26, -46, 12), hub: 11, line: 2.3, rim: true },
  'forward-curved': { paths: blades(30, 20.5, 26.5, 13, -5), hub: 5, line: 1.9, rim: true },
  axial: { paths: propeller(5), hub: 7.5, line: 1.8, rim: true },
  'through-flow-vacuum': { paths: blades(8, 9, 24, -70, 2), hub: 9, line: 2, rim: true },
  unknown: { paths: '', hub: 8, line: 2, rim: true },
};

/** Every wheel that can be tapped, in the order in which they are shown. */
export const FAMILIES = Object.keys(BLADES) as Family[];

function propeller(count: number): string {
  return Array.from({ length: count }, (_, i) => {
    const a = (360 / count) * i - 90;
    return `M${at(7.5, a)}L${at(26, a - 16)}A26 26 0 0 1 ${at(26, a + 26)}Z`;
  }).join('');
}
