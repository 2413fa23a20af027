import type { Assessment, Case } from '../assessment.ts';

/**
 * By how much a judged blower misses being a sure yes, limit by limit, in standard deviations of the blower as it stands. Chances
 * alone cannot lead a search: most changes leave a chance of nothing at nothing.
 */
export type Shortfall = { flow: number; speed: number; motor: number; other: number };

/** Relative standard deviations of flow and of motor load, as far as the first judgement knows them. */
export type Yardstick = { flow: number; load: number };

/** Margin wanted of every limit, in standard deviations: several are kept at once. */
const WANTED = 2;
/** What no change of flow or load makes good counts like this many standard deviations. */
export const NEVER_YES = 2;
const NO_POINT = 30;
const LEAST_SD = 0.02;
const MOST_SD = 0.3;

/** From two points of a bell curve in ln so many standard deviations apart. */
const spread = (low: number, high: number, apart: number): number =>
  low > 0 && high > low ? Math.min(MOST_SD, Math.max(LEAST_SD, Math.log(high / low) / apart)) : LEAST_SD;

/** Reads the yardstick off a judged blower: the widest of its required cases. Of a lopsided flow the side counts where too little lies. */
export function yardstickOf(assessment: Assessment): Yardstick {
  const required = assessment.cases.filter((c) => c.required && c.operatingPoint !== null);
  const { worstDay } = assessment.blowers[0]!;
  return {
    flow: Math.max(
      LEAST_SD,
      ...required.map(({ operatingPoint: p }) => spread(p!.interval95.flow_m3_s[0], p!.flow_m3_s, 1.96)),
    ),
    load: worstDay.heaviest === null ? LEAST_SD : spread(...worstDay.heaviest.interval95, 2 * 1.96),
  };
}

/**
 * The worst of each kind over all required cases and states of the only blower in an assessment.
 * @param wanted margin wanted of every limit, in standard deviations
 */
export function shortfallOf(assessment: Assessment, by: Yardstick, wanted = WANTED): Shortfall {
  const required = assessment.cases.filter((c) => c.required);
  const missing = (ratio: number, sd: number) => Math.max(0, wanted - Math.log(Math.max(ratio, 1e-6)) / sd);
  const flows = required.flatMap((c) =>
    c.pickups.filter((p) => p.open && p.requiredFlow_m3_s).map((p) => p.flow_m3_s / p.requiredFlow_m3_s!),
  );
  // the middle of what the load may be: its best guess alone lies below it where the doubt is lopsided
  const { heaviest } = assessment.blowers[0]!.worstDay;
  const lopsided =
    heaviest && heaviest.load > 0 ? Math.sqrt(heaviest.interval95[0] * heaviest.interval95[1]) / heaviest.load : 1;
  const speeds = required.flatMap(speedRatios);
  const { states } = assessment.blowers[0]!;
  const load = states.flatMap((s) =>
    (s.state === 'highest-motor-load' || s.state === 'lowest-voltage') && s.value !== null && s.value > 0
      ? [s.limit! / s.value / Math.max(1, lopsided)]
      : [],
  );
  const pointless = required.some((c) => c.operatingPoint === null);
  const outside = required.some((c) => c.reasons.some((r) => r.code === 'outside-evidence'));
  const rim = states.find((s) => s.state === 'tip-speed')?.probability ?? 1;
  return {
    flow: Math.max(0, ...flows.map((r) => missing(r, by.flow))),
    speed: Math.max(0, ...speeds.map((r) => missing(r, by.flow))),
    motor: Math.max(0, ...load.map((r) => missing(r, by.load))),
    other: (pointless ? NO_POINT : 0) + (outside ? NEVER_YES : 0) + (rim < 1 ? NEVER_YES * (2 - rim) : 0),
  };
}

/** Speed in every judged pipe over the lowest that keeps dust moving. */
export const speedRatios = (c: Case): number[] => [
  ...c.sections
    .filter((s) => s.judged && s.velocity_m_s !== null && s.minimumVelocity_m_s)
    .map((s) => s.velocity_m_s! / s.minimumVelocity_m_s!),
  ...(c.discharge.velocity_m_s !== null && c.discharge.minimumVelocity_m_s
    ? [c.discharge.velocity_m_s / c.discharge.minimumVelocity_m_s]
    : []),
];

/** Where a larger motor can be bought, an overload weighs hardly more than the buying while the rest is sought. */
const BUYING = 1;
const CURABLE = { least: 0.3, further: 0.03 };

/** One number for the ranking of half-made combinations, less is better. */
export const weight = ({ flow, speed, motor, other }: Shortfall, motorCanGrow: boolean): number =>
  flow + speed + other + (motorCanGrow ? Math.min(BUYING, CURABLE.least * motor) + CURABLE.further * motor : motor);
