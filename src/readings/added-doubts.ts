import { widthOf } from './measuring-place.ts';
import { tubePressure, waterDensity } from './manometer.ts';
import type { Method, Rig } from './schema.ts';

/** A doubt that this rig adds to the usual one, one standard deviation as a share, with its grounds. */
export type AddedDoubt = {
  cause: 'hub' | 'head' | 'short-before' | 'short-after' | 'short-cap';
  sd: number;
  ground: string;
};

/**
 * Straight lengths after which the air is even again, in diameters before and after the measuring place, and what their lack
 * costs at the worst: one standard deviation of the flow with no straight pipe at all.
 * Source: guides for testing and balancing, 8 and 2 diameters, ± 10–15 % in short pipes; plates: ISO 5167-2 asks for 10–44 and 5–8,
 * shorter with a straightener, and ± 6 % without any is common practice.
 */
const STRAIGHT: Partial<Record<Method, { before: number; after: number; sd: number }>> = {
  'pitot-traverse': { before: 8, after: 2, sd: 0.06 },
  'vane-traverse': { before: 8, after: 2, sd: 0.06 },
  'orifice-in-pipe': { before: 10, after: 5, sd: 0.03 },
};
/** A far tap nearer than this reads before the pressure has recovered; at the cap itself the flow would be 16–31 % too high. */
const RECOVERED = { diameters: 5, sd: 0.12 };
/** Air between hub and wall is less even: what the whole area would cost. Source: common practice. */
const HUB_SD = 0.3;
/** A head in the air speeds it up by about its share of the area, and half of that is not known. Source: continuity. */
const HEAD_SD = 0.5;

/** What makes this rig's flow less sure than its method usually is. Empty for a rig that says nothing of it. */
export function addedFlowDoubts(rig: Rig): AddedDoubt[] {
  const width = widthOf(rig);
  if (width === null) return [];
  const doubts: AddedDoubt[] = [];
  const add = (cause: AddedDoubt['cause'], sd: number, ground: string): void => {
    if (sd > 0) doubts.push({ cause, sd, ground });
  };
  const lacking = (length_m: number | null | undefined, diameters: number): number =>
    length_m == null ? 0 : Math.max(0, 1 - length_m / (diameters * width));
  const need = STRAIGHT[rig.method];
  if (need) {
    const say = (d: number, where: string) => `less than ${d} diameters of straight pipe ${where}`;
    add('short-before', need.sd * lacking(rig.straightBefore_m, need.before), say(need.before, 'before'));
    add('short-after', need.sd * lacking(rig.straightAfter_m, need.after), say(need.after, 'after'));
  }
  const traverse = rig.method === 'pitot-traverse' || rig.method === 'vane-traverse';
  if (traverse) add('hub', HUB_SD * ((rig.hubDiameter_m ?? 0) / width) ** 2, 'uneven air around a hub');
  if (rig.method === 'vane-traverse')
    add('head', HEAD_SD * ((rig.anemometerDiameter_m ?? 0) / width) ** 2, 'the head blocks the air it measures');
  if (rig.method === 'orifice-cap' && rig.side !== 'outlet' && rig.tap !== 'near')
    add(
      'short-cap',
      RECOVERED.sd * lacking(rig.lengthToTap_m, RECOVERED.diameters),
      'pressure not yet recovered at the tap',
    );
  return doubts;
}

/** How well a builder levels a board [rad]: ± 1° as a rectangular distribution. Source: common practice; GUM 4.3.7. */
const LEVEL_rad = Math.PI / 180 / Math.sqrt(3);
/** Density of a liquid that is not water [-]: taken from a table, not weighed. Source: common practice. */
const LIQUID_SD = 0.015;

/** Share by which a leaning tube, or one with another liquid, may be wrong in all its readings; 0 for upright water. */
export function tubeScaleDoubt({ tube }: Rig): number {
  const angle_rad = ((tube?.angle_deg ?? 90) * Math.PI) / 180;
  const liquid = tube?.liquidDensity_kg_m3 ?? null;
  const isWater = liquid === null || Math.abs(liquid / waterDensity(20) - 1) < 0.005;
  return Math.hypot(LEVEL_rad / Math.tan(angle_rad), isWater ? 0 : LIQUID_SD);
}

/** What a length read on this rig's tube means, over what it means on an upright tube of water [-]. */
export function tubeStretch({ tube }: Rig): number {
  if (tube == null) return 1;
  const { angle_deg, liquidDensity_kg_m3, tubeOverPot } = tube;
  const shape = {
    angle_deg: angle_deg ?? undefined,
    liquidDensity_kg_m3: liquidDensity_kg_m3 ?? undefined,
    tubeOverPot: tubeOverPot ?? undefined,
  };
  return tubePressure(1, shape) / tubePressure(1);
}
