import type { Blower, ReadingsEvidence } from '../job/types.ts';

/** Slower than this against its pulleys, a belt would have been thrown: the cause is another. Practice value. */
const SLIPPING_AT_LEAST = 0.7;

/** What may be behind pressures that no wheel of this family, size and speed makes, the likeliest first. */
type Cause = { code: string; text: string };

const BACKWARDS: Cause = {
  code: 'wheel-backwards',
  text: 'These pressures are far below what a wheel of this kind, size and speed makes. Does the wheel turn the right way? Its rim must move towards the outlet where it passes it; two wires of the motor exchanged turn it round. Else look at the wheel’s kind and diameter, and for leaks.',
};
const SLIPPING: Cause = {
  code: 'belt-slipping',
  text: 'These pressures are too low for this wheel at the speed that motor and pulleys promise. Does the belt slip? Tighten it, and measure the wheel’s speed itself. Else look whether the wheel turns the right way.',
};
const TOO_HIGH: Cause = {
  code: 'level-unusual',
  text: 'These pressures are far above what a wheel of this kind, size and speed makes. Are the wheel’s kind, diameter and speed right, and the unit of the readings?',
};

/**
 * @param pressureRatio pressure at no flow over that of the family's middle wheel [-]
 */
export function causeOfLevel({ drive }: Blower, { rows }: ReadingsEvidence, pressureRatio: number): Cause {
  if (pressureRatio > 1) return TOO_HIGH;
  const speedRead = rows.some((row) => row.speed_rpm != null);
  const slips = drive.kind === 'belt' && !speedRead && Math.sqrt(pressureRatio) > SLIPPING_AT_LEAST;
  return slips ? SLIPPING : BACKWARDS;
}
