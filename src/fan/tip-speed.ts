import type { Family } from './families.ts';
import { FAMILY } from './families.ts';
import { tipSpeed } from './laws.ts';

/** Whether a wheel stays whole at a speed. `null` where diameter or speed is not known: nothing can be said. */
export type TipSpeedCheck = {
  /** tip speed [m/s] */
  value: number | null;
  /** what it is held against [m/s]: the wheel's own safe speed, else the low figure of its family */
  limit: number;
  unit: 'm/s';
  ok: boolean | null;
  /** chance that the wheel stands it */
  probability: number | null;
  verdict: 'yes' | 'unsure' | 'no' | null;
};

/**
 * Tip speed of a wheel against what its family stands: below the family's low figure `yes`, above the high one `no`,
 * `unsure` between; a safe tip speed known for the wheel itself wins. An unknown family is as weak as the weakest.
 * Between the figures the chance falls evenly: where in that range a used wheel gives way is not known.
 * A figure for a warning, never leave to run: cracks, rust and lost balance weights lower it.
 * Source of limits: `FAMILY`; the rule is the program's own definition.
 * Throws RangeError for a diameter or speed that is not positive.
 */
export function tipSpeedCheck(
  wheel: { family: Family; diameter_m?: number | null; safeTipSpeed_m_s?: number | null },
  speed_rpm: number | null,
): TipSpeedCheck {
  const [familyLow, familyHigh] = FAMILY[wheel.family].tipSpeedLimit_m_s;
  const low = wheel.safeTipSpeed_m_s ?? familyLow;
  const high = wheel.safeTipSpeed_m_s ?? familyHigh;
  const base = { limit: low, unit: 'm/s' } as const;
  if (wheel.diameter_m == null || speed_rpm == null)
    return { ...base, value: null, ok: null, probability: null, verdict: null };

  const value = tipSpeed(wheel.diameter_m, speed_rpm);
  if (value <= low) return { ...base, value, ok: true, probability: 1, verdict: 'yes' };
  if (value > high) return { ...base, value, ok: false, probability: 0, verdict: 'no' };
  return { ...base, value, ok: false, probability: (high - value) / (high - low), verdict: 'unsure' };
}

/**
 * The highest wheel speed that passes the check.
 * @returns speed [1/min], null where the diameter is not known. Source: definition of the tip speed.
 */
export function highestSafeSpeed(wheel: {
  family: Family;
  diameter_m?: number | null;
  safeTipSpeed_m_s?: number | null;
}): number | null {
  if (wheel.diameter_m == null) return null;
  const limit = wheel.safeTipSpeed_m_s ?? FAMILY[wheel.family].tipSpeedLimit_m_s[0];
  return limit / tipSpeed(wheel.diameter_m, 1);
}
