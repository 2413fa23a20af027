import type { Job } from '../../../src/index.ts';
import { invent, type Invented } from '../rigs/invent.ts';
import { randomFrom } from '../rigs/random.ts';
import { circle_m2 } from '../rigs/true-air.ts';
import { rounded } from '../rigs/true-motor.ts';

export type InventedShop = {
  find: Invented;
  /** lowest speed that each section's dust needs [m/s] */
  minimumVelocity_m_s: Record<string, number>;
  motorReserve: number;
};

/** An invented find in a shop whose machines and dust ask for somewhat more or less than the blower may give. */
export function inventShop(seed: number, index: number): InventedShop {
  const random = randomFrom(seed, index);
  const mix = random.pick([
    'readings',
    'readings',
    'readings',
    'readings-and-chart',
    'readings-and-rated',
    'chart',
    'rated',
    'shut-off',
  ] as const);
  const find = invent(random, { mix, shop: { asked: Math.exp(0.25 * random.normal() - 0.25) } });
  const minimumVelocity_m_s: Record<string, number> = {};
  const alone_m3_s = find.truePoint(['m1'])?.flow_m3_s ?? 0.1;
  for (const section of (find.job.ductwork as Job['ductwork']).sections) {
    const meant = alone_m3_s / circle_m2(find.shop.diameter_m[section.id]!);
    section.minimumVelocity_m_s = minimumVelocity_m_s[section.id] = rounded(
      meant * Math.exp(0.2 * random.normal() - 0.3),
      1,
    );
  }
  // whether old wheels stand their speed is told apart from whether they are strong enough
  (find.job.blowers[0]!.wheel as { safeTipSpeed_m_s?: number }).safeTipSpeed_m_s = 300;
  const plans = find.job.gatePlans as { name: string; required?: boolean }[];
  const together = plans.find((p) => p.name === 'all together');
  if (together) together.required = random.chance(0.25);
  return { find, minimumVelocity_m_s, motorReserve: 0.1 };
}
