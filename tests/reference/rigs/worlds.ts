import { handbookFan, HANDBOOK_FAMILIES } from './handbook-fan.ts';
import type { Wishes } from './invent.ts';
import { otherMotor } from './other-motor.ts';
import type { Random } from './random.ts';

/**
 * Several ways of inventing finds. `own` is the richest; the others are plain tests of centrifugal wheels (three to eight rows over
 * part of the curve, one drive) in which fans, or motors too, follow other rules than those the program was made with.
 */
export const WORLDS = ['own', 'plain', 'handbook', 'other-motors', 'throttled', 'opened'] as const;
export type World = (typeof WORLDS)[number];

const METHODS = ['orifice-cap', 'orifice-cap', 'conical-inlet', 'pitot-traverse', 'vane-traverse', 'bag-fill'] as const;
const PLAIN = { rows: [3, 8], methods: METHODS, onePulley: true } as const;

/** What to invent in this world. */
export function wishesIn(world: World, random: Random): Wishes {
  if (world === 'own') return {};
  const family = random.pick(HANDBOOK_FAMILIES);
  if (world === 'plain') return { ...PLAIN, family };
  const fan = (r: Random) => handbookFan(family, r);
  switch (world) {
    case 'handbook':
      return { ...PLAIN, family, fan };
    case 'other-motors':
      return { ...PLAIN, family, fan, motor: otherMotor };
    case 'throttled':
      return { ...PLAIN, family, fan, reach: [random.uniform(0.03, 0.15), random.uniform(0.2, 0.45)] };
    case 'opened':
      return { ...PLAIN, family, fan, reach: [random.uniform(0.5, 0.7), random.uniform(0.85, 0.98)] };
  }
}
