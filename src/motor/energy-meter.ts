/**
 * Watts from the flashes of an energy meter, with one standard deviation: everything else on that meter switched off.
 * @param flashes counted, the first one being zero
 * @param impulses_per_kWh printed on the meter
 * @param secondsSd doubt of the stop watch at both ends [s]
 * Source: definition, 3.6e6 J a kilowatt-hour; meter class 2 % as 1 % standard deviation. Check: 20 flashes, 1000/kWh, 72 s → 1 kW.
 */
export function powerFromMeterFlashes(given: {
  flashes: number;
  seconds: number;
  impulses_per_kWh: number;
  secondsSd?: number;
}): { value_W: number; sd_W: number } {
  const { flashes, seconds, impulses_per_kWh, secondsSd = 0.2 } = given;
  if (!(flashes > 0 && seconds > 0 && impulses_per_kWh > 0)) {
    throw new RangeError(
      `flashes, seconds, impulses_per_kWh: expected positive numbers, received ${flashes}, ${seconds}, ${impulses_per_kWh}`,
    );
  }
  const value_W = (3.6e6 * flashes) / (impulses_per_kWh * seconds);
  return { value_W, sd_W: value_W * Math.hypot(0.01, secondsSd / seconds) };
}
