import type { MeterDoubt } from '../assessment.ts';
import type { Blower } from '../job/types.ts';
import { shaftPowerFromAmps, shaftPowerFromSlip, shaftPowerFromWatts } from '../motor/index.ts';
import type { MotorAtSite, ShaftPowerReading } from '../motor/index.ts';

/**
 * How rough amps, watts and slip of this blower's own tests are, each taken alone. Rows of another motor are left out.
 * Source: `shaftPowerFromAmps`, `shaftPowerFromWatts`, `shaftPowerFromSlip`. Slip needs a wheel on the motor's own shaft: a belt slips more than a motor.
 */
export function meterDoubts({ evidence, drive }: Blower, at: MotorAtSite): MeterDoubt[] {
  const rows = evidence.flatMap((e) =>
    e.kind === 'readings' && e.testedWith?.motor == null && e.rig.sameDrive !== false ? e.rows : [],
  );
  const read = (way: MeterDoubt['way'], readings: (ShaftPowerReading | null)[]): MeterDoubt[] => {
    const known = readings.filter((r): r is ShaftPowerReading => r !== null && r.shaftPower_W > 0);
    if (known.length === 0) return [];
    const top = known.reduce((a, b) => (b.shaftPower_W > a.shaftPower_W ? b : a));
    const within = (1.96 * Math.hypot(top.sharedSd_W, top.ownSd_W)) / top.shaftPower_W;
    return [{ way, shaftPower_W: top.shaftPower_W, within }];
  };
  const volts = (row: (typeof rows)[number]) => ({ at, voltage_V: row.voltage_V ?? null });
  return [
    ...read(
      'watts',
      rows.map((r) =>
        r.inputPower_W == null ? null : shaftPowerFromWatts({ ...volts(r), inputPower_W: r.inputPower_W }),
      ),
    ),
    ...read(
      'amps',
      rows.map((r) => (r.current_A == null ? null : shaftPowerFromAmps({ ...volts(r), current_A: r.current_A }))),
    ),
    ...read(
      'slip',
      drive.kind === 'direct'
        ? rows.map((r) =>
            r.speed_rpm == null ? null : shaftPowerFromSlip({ ...volts(r), motorSpeed_rpm: r.speed_rpm }),
          )
        : [],
    ),
  ];
}
