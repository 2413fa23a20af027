import { synchronousSpeed } from '../../motor/index.ts';
import { NO_WORD, type Agreement } from './power.ts';

/** Beyond this no induction motor of the mains turns [1/min]. Source: two poles at 60 Hz. */
export const FASTEST_INDUCTION_rpm = 3610;
/** Slips of plates [-]: hardly any above; practice values. */
const LEAST_SLIP = 0.001;
const MOST_SLIP = 0.13;
const ODD_PLATE = 0.03;

/**
 * A plate's speed lies a little under a synchronous one of its frequency.
 * @returns how much likelier it is there than any number of its size; no word on motors with brushes
 * Source: slip of induction motors at rated load, definition.
 */
export function speedAgreement(speed_rpm: number | null, frequency_Hz: number | null): Agreement {
  if (speed_rpm === null || frequency_Hz === null || speed_rpm > FASTEST_INDUCTION_rpm) return NO_WORD;
  const fits = [2, 4, 6, 8, 10, 12].some((poles) => {
    const slip = 1 - speed_rpm / synchronousSpeed(poles, frequency_Hz);
    return slip >= LEAST_SLIP && slip <= MOST_SLIP;
  });
  // the windows under the synchronous speeds cover about a quarter of all speeds
  return fits
    ? { support: Math.log((1 - ODD_PLATE) / 0.25), isAtOdds: false }
    : { support: Math.log(ODD_PLATE / 0.75), isAtOdds: true };
}
