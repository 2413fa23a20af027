const JOULES_PER_kWh = 3_600_000;

/**
 * Mean power through an energy meter [W] from its flashes (or the turns of its disc) in a time. Source: definition, a meter marked
 * `perkWh` flashes that often for each kilowatt hour.
 * @param flashes counted after the first one, with which the watch is started [-]
 * @param time_s  from the first flash to the last
 * @param perkWh  flashes or turns for a kilowatt hour, as printed on the meter
 * Throws RangeError unless all are positive.
 */
export function energyMeterPower(flashes: number, time_s: number, perkWh: number): number {
  if (!(flashes > 0 && time_s > 0 && perkWh > 0)) {
    throw new RangeError(`energyMeterPower: expected positive figures, received ${flashes}, ${time_s}, ${perkWh}`);
  }
  return (flashes * JOULES_PER_kWh) / (perkWh * time_s);
}
