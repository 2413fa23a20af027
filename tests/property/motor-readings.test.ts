import { describe, expect, it } from 'vitest';
import {
  currentModel,
  drawnBy,
  motorAtSite,
  shaftPowerFromAmps,
  shaftPowerFromWatts,
  wholePlate,
} from '../../src/motor/index.ts';
import { normalDeviates } from '../../src/numeric/deviates.ts';

/** Motors that differ from their plates as IEC 60034-1 allows, idle as the circle diagram says, read with home-made care. */
const DOUBTS = 9;
const MOTORS = 2048;
const bare = (ratedPower_W: number, speed_rpm: number) => ({
  ratedPower_W,
  speed_rpm,
  voltage_V: 400,
  phases: 3 as const,
  frequency_Hz: 50,
});
const drive = { kind: 'direct' as const };
const supply = { voltage_V: 400, frequency_Hz: 50, phases: 3 as const };

function coverage(load: number): { amps: number; watts: number } {
  const z = normalDeviates(MOTORS, DOUBTS, 11);
  let amps = 0;
  let watts = 0;
  for (let i = 0; i < MOTORS; i++) {
    const [eff, pf, fixed, idle, clamp, clampRow, meter, meterRow, where] = z.subarray(
      i * DOUBTS,
      (i + 1) * DOUBTS,
    ) as unknown as number[];
    const printed = bare([550, 1100, 2200, 4000][i % 4]!, i % 8 < 4 ? 2850 : 1420);
    const typical = wholePlate(printed).plate;
    const motor = {
      ...printed,
      efficiency: typical.efficiency,
      powerFactor: typical.powerFactor,
      current_A: Math.round(10 * typical.current_A) / 10,
    };
    const efficiency = Math.min(typical.efficiency * (1 + 0.025 * eff!), 0.95);
    const powerFactor = Math.min(typical.powerFactor * (1 + 0.025 * pf!), 0.95);
    const current_A = typical.ratedPower_W / efficiency / powerFactor / (Math.sqrt(3) * 400);
    const truth = {
      ...currentModel({ ...typical, efficiency, powerFactor, current_A }),
      fixedLossShare: Math.max(0.45 + 0.12 * fixed!, 0.1),
      idleReactiveShare: Math.min(0.75 + 0.1 * idle!, 0.97),
    };
    const power = load * (1 + 0.1 * where!) * printed.ratedPower_W;
    const drawn = drawnBy(truth, power, 400);
    const at = motorAtSite({ motor, drive, supply });
    const byAmps = shaftPowerFromAmps({
      at,
      current_A: drawn.current_A * (1 + 0.015 * clamp!) * (1 + 0.005 * clampRow!),
    })!;
    const byWatts = shaftPowerFromWatts({
      at,
      inputPower_W: drawn.input_W * (1 + 0.012 * meter!) * (1 + 0.012 * meterRow!),
    });
    const holds = (r: typeof byWatts) =>
      Number(Math.abs(r.shaftPower_W - power) <= 1.96 * Math.hypot(r.sharedSd_W, r.ownSd_W));
    amps += holds(byAmps);
    watts += holds(byWatts);
  }
  return { amps: amps / MOTORS, watts: watts / MOTORS };
}

describe('intervals of shaft power from a meter', () => {
  it('hold the truth 90 to 99 times in a hundred from half load on', () => {
    for (const load of [0.5, 0.75, 1]) {
      const { amps, watts } = coverage(load);
      expect(amps, `amps at ${load}`).toBeGreaterThan(0.9);
      expect(amps, `amps at ${load}`).toBeLessThan(0.99);
      expect(watts, `watts at ${load}`).toBeGreaterThan(0.9);
      expect(watts, `watts at ${load}`).toBeLessThan(0.99);
    }
  });

  it('of watts hold at little load too; of amps a little less, where the answer itself says it is rough', () => {
    const { amps, watts } = coverage(0.3);
    expect(watts).toBeGreaterThan(0.9);
    expect(amps).toBeGreaterThan(0.85);
  });
});
