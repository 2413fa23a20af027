import { NO_WORD, type Agreement } from './power.ts';

/**
 * Air power over motor power [-]. A fan gives less air power than it takes; where a plate prints its largest flow and its
 * largest pressure, their product is up to four times what it gives at once.
 */
const USUAL = { least: 0.04, most: 0.85 };
const LARGEST_VALUES_MOST = 2.2;
/** Odds of plates outside, against a ratio of nothing over three decades. */
const SUPPORT = { usual: 0.8, possible: -0.7, odd: -3 };

/**
 * Flow times pressure against the motor's power.
 * Source: air power = flow × pressure; total efficiency of fans below 0.85 (ISO 12759 grades).
 */
export function airAgreement(
  power_W: number | null,
  flow_m3_s: number | null,
  pressure_Pa: number | null,
  isInput: boolean,
): Agreement {
  if (power_W === null || flow_m3_s === null || pressure_Pa === null) return NO_WORD;
  const ratio = (flow_m3_s * pressure_Pa) / power_W;
  // vacuum motors always print their two largest values
  const most = isInput ? LARGEST_VALUES_MOST : USUAL.most;
  if (ratio >= USUAL.least && ratio <= most) return { support: SUPPORT.usual, isAtOdds: false };
  if (ratio > most && ratio <= LARGEST_VALUES_MOST) return { support: SUPPORT.possible, isAtOdds: ratio > 1 };
  return { support: SUPPORT.odd, isAtOdds: true };
}

/** Tip speeds wheels run at [m/s]; practice values. */
const TIP_SPEED = { least: 8, most: 160 };
/** Pressure over ρ/2·u² at the tip [-]; forward-curved wheels reach 3. */
const MOST_PRESSURE_NUMBER = 3.2;
const DENSITY_kg_m3 = 1.2;

/** Speed of the wheel's tip: what wheels run at, and enough for the pressure. Source: u = π·D·n; pressure number of fans (ISO 13349). */
export function tipAgreement(
  speed_rpm: number | null,
  diameter_m: number | null,
  pressure_Pa: number | null,
): Agreement {
  if (speed_rpm === null || diameter_m === null) return NO_WORD;
  const tip_m_s = (Math.PI * diameter_m * speed_rpm) / 60;
  const fits = tip_m_s >= TIP_SPEED.least && tip_m_s <= TIP_SPEED.most;
  const reaches = pressure_Pa === null || pressure_Pa <= MOST_PRESSURE_NUMBER * (DENSITY_kg_m3 / 2) * tip_m_s ** 2;
  return fits && reaches ? { support: 0.4, isAtOdds: false } : { support: -2.5, isAtOdds: true };
}
