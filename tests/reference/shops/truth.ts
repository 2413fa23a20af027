import type { Job } from '../../../src/index.ts';
import { openIn } from '../rigs/judged.ts';
import { circle_m2 } from '../rigs/true-air.ts';
import type { InventedShop } from './invent-shop.ts';

/** Share of what the motor may carry that it truly carries: at the shaft, or at the plug where its plate says watts drawn. */
function trueLoad({ find }: InventedShop, flow_m3_s: number): number {
  const motor = find.job.blowers[0]!.motor as { ratedPower_W: number; ratedPowerMeaning?: string };
  return (
    find.motorPower_W(flow_m3_s) / motor.ratedPower_W / (motor.ratedPowerMeaning === 'input' ? find.ownEfficiency : 1)
  );
}

/** Does this plan truly hold all its limits: flow at every open machine, speed in every pipe with dust, motor load? */
export function trulyHolds(shop: InventedShop, plan: string): boolean {
  const { find, minimumVelocity_m_s } = shop;
  const open = openIn(plan, find.shop.machines);
  const points = find.truePoints(open);
  const least = points[0];
  if (least === undefined) return false;
  const drawn = find.shop.drawn_m3_s(open, least.flow_m3_s, find.air);
  const sections = find.job.ductwork as Job['ductwork'];
  const flowsHold = sections.sections.every((s) => {
    if (s.pickup == null || !open.includes(s.id)) return true;
    return drawn[s.id]! >= (s.pickup.requiredFlow_m3_s ?? 0);
  });
  const fastEnough = (section: string, flow: number) =>
    flow / circle_m2(find.shop.diameter_m[section]!) >= minimumVelocity_m_s[section]!;
  const speedsHold = open.every((m) => fastEnough(m, drawn[m]!)) && fastEnough('main', least.flow_m3_s);
  const heaviest = Math.max(...points.map((p) => trueLoad(shop, p.flow_m3_s)));
  return flowsHold && speedsHold && heaviest <= 1 - shop.motorReserve;
}
