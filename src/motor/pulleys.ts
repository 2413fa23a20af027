/** A pair of pulleys that brings the wheel to a speed. */
export type PulleyPair = {
  motorPulleyDiameter_m: number;
  wheelPulleyDiameter_m: number;
  wheelSpeed_rpm: number;
  beltSpeed_m_s: number;
  /** how many of the two must be bought, 0..2 */
  newPulleys: number;
};

/** Pulley diameters sold [m]: metric series for V-belts (source: ISO 4183, recalled) and whole and half inches. */
export const PULLEY_SIZES_m = [
  0.05,
  0.056,
  0.063,
  0.071,
  0.08,
  0.09,
  0.1,
  0.112,
  0.125,
  0.14,
  0.16,
  0.18,
  0.2,
  0.224,
  0.25,
  0.28,
  0.315,
  0.355,
  0.4,
  ...[2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 12].map((inches) => inches * 0.0254),
].sort((a, b) => a - b);

/** Smallest pulley a V-belt of a section bends around without cracking [m]. Source: ISO 4183, recalled: Z 50, A 75, B 125 mm. */
export const SMALLEST_PULLEY_m = { Z: 0.05, A: 0.075, B: 0.125 } as const;

/** Belt speed [m/s] above which common V-belts and cast pulleys should not run. Source: makers' practice, ISO 4183 balancing limit 30 m/s for grey cast iron. */
export const MOST_BELT_SPEED_m_s = 30;

/** Speed of a belt [m/s] on a pulley of a diameter [m] at a speed [1/min]. Source: definition, π·d·n. */
export function beltSpeed(pulleyDiameter_m: number, speed_rpm: number): number {
  return (Math.PI * pulleyDiameter_m * speed_rpm) / 60;
}

/**
 * Pairs of pulleys sold that bring the wheel between two speeds, cheapest change first, then nearest to the middle.
 * @param motorSpeed_rpm speed of the motor [1/min]
 * @param wheelSpeed_rpm lowest and highest speed wanted [1/min]; the high end is where wheel or motor give up
 * @param have pulleys on the blower now: a pair that keeps one of them comes first
 * @param section V-belt section, A if unknown
 * @returns none where no pair sold falls in between; pairs whose belt would run faster than `MOST_BELT_SPEED_m_s` are left out
 * Source: definition of the drive ratio; sizes and limits above.
 */
export function pulleyPairs(given: {
  motorSpeed_rpm: number;
  wheelSpeed_rpm: readonly [low: number, high: number];
  have?: { motorPulleyDiameter_m?: number | null; wheelPulleyDiameter_m?: number | null };
  section?: keyof typeof SMALLEST_PULLEY_m;
}): PulleyPair[] {
  const { motorSpeed_rpm, have = {} } = given;
  const [low, high] = given.wheelSpeed_rpm;
  const smallest = SMALLEST_PULLEY_m[given.section ?? 'A'];
  const sizes = (own: number | null | undefined) => [
    ...(own == null ? [] : [own]),
    ...PULLEY_SIZES_m.filter((d) => d >= smallest && !(own != null && Math.abs(d - own) < 1e-4)),
  ];
  const pairs: PulleyPair[] = [];
  for (const motor of sizes(have.motorPulleyDiameter_m)) {
    const speed = beltSpeed(motor, motorSpeed_rpm);
    if (speed > MOST_BELT_SPEED_m_s) continue;
    for (const wheel of sizes(have.wheelPulleyDiameter_m)) {
      const wheelSpeed_rpm = (motorSpeed_rpm * motor) / wheel;
      if (wheelSpeed_rpm < low || wheelSpeed_rpm > high) continue;
      const newPulleys = Number(motor !== have.motorPulleyDiameter_m) + Number(wheel !== have.wheelPulleyDiameter_m);
      pairs.push({
        motorPulleyDiameter_m: motor,
        wheelPulleyDiameter_m: wheel,
        wheelSpeed_rpm,
        beltSpeed_m_s: speed,
        newPulleys,
      });
    }
  }
  const middle = Math.sqrt(low * high);
  const off = (pair: PulleyPair) => Math.abs(Math.log(pair.wheelSpeed_rpm / middle));
  return pairs.sort(
    (a, b) => a.newPulleys - b.newPulleys || off(a) - off(b) || a.motorPulleyDiameter_m - b.motorPulleyDiameter_m,
  );
}

/**
 * Amps after a change of wheel speed, by the cube law of fans: I·(n₂/n₁)³. Rough: amps are not proportional to load, but on the safe side
 * when speeding up. Source: fan laws; a naval training manual: 6.2 A × 1.2³ = 10.7 A on a 9 A plate.
 */
export function currentAfterSpeedChange(current_A: number, speedRatio: number): number {
  return current_A * speedRatio ** 3;
}

/**
 * How much faster a wheel may turn on the same ducts before its motor has reached a load [-]; below 1 where it must turn slower.
 * @param loadFraction load at the present speed [-], > 0
 * @param mostLoad load it may reach [-], for instance 1 less a reserve
 * Source: fan laws, power with the cube of speed on ducts of square law; filters and hoses of lower exponent take a little less.
 * Throws RangeError for a load that is not positive.
 */
export function speedRatioMotorStands(loadFraction: number, mostLoad: number): number {
  if (!(loadFraction > 0 && mostLoad > 0)) {
    throw new RangeError(`loadFraction, mostLoad: expected positive numbers, received ${loadFraction}, ${mostLoad}`);
  }
  return Math.cbrt(mostLoad / loadFraction);
}
