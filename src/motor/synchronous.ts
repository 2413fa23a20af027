/**
 * Poles of an induction motor whose plate speed is known.
 * @param speed_rpm full-load speed [1/min]
 * @param frequency_Hz frequency it is meant for [Hz]
 * @returns the even number of poles whose synchronous speed is the next above (or equal to) the plate's, 2..24; null where
 *   that would be a slip of more than `MOST_SLIP`, or a speed no induction motor reaches at this frequency
 * Source: definition of slip, synchronous speed 120·f/poles.
 */
export function polesOf(speed_rpm: number, frequency_Hz: number): number | null {
  const poles = Math.min(2 * Math.floor((60 * frequency_Hz) / speed_rpm + 1e-9), 24);
  if (poles < 2) return null;
  return 1 - speed_rpm / synchronousSpeed(poles, frequency_Hz) <= MOST_SLIP ? poles : null;
}

/** Synchronous speed [1/min] = 120·f/poles. Source: definition. */
export function synchronousSpeed(poles: number, frequency_Hz: number): number {
  return (120 * frequency_Hz) / poles;
}

/** Slip at full load [-] that no ordinary motor exceeds; 0.03–0.06 is usual, 0.1 for the smallest. Practice value. */
const MOST_SLIP = 0.14;

/**
 * Mains frequency a plate was made for, when it does not say: the one whose poles explain the plate's speed.
 * @returns frequency [Hz] and whether it had to be guessed against the local mains or without it
 * Source: `polesOf`. 3450 min⁻¹ can only be 60 Hz, 2850 only 50 Hz; where both or neither fit, the local mains is believed.
 */
export function plateFrequency(speed_rpm: number | null | undefined, local_Hz: number | null | undefined): number {
  const local = local_Hz ?? 50;
  if (speed_rpm == null || polesOf(speed_rpm, local) !== null) return local;
  const other = local > 55 ? 50 : 60;
  return polesOf(speed_rpm, other) !== null ? other : local;
}
