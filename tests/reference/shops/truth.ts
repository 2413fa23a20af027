import type { Job } from '../../../src/index.ts';
import { meetingPoints } from '../rigs/meeting-point.ts';
import type { InventedShop } from './invent-shop.ts';
import { trueDucts } from './true-ducts.ts';

/**
 * Does a plan truly hold all its limits: flow at every open machine, speed in every pipe with dust, motor load?
 * @param job the shop as it stands: as invented, or rebuilt after some advice
 */
export function trulyHolds(shop: InventedShop, job: Job, plan: string): boolean {
  const { find, minimumVelocity_m_s } = shop;
  const open = openIn(job, plan);
  const ducts = trueDucts(job.ductwork, find.shop.off, find.air, find.fan.outletArea_m2);
  const blower = job.blowers[0]!;
  const found = find.job.blowers[0]!['motor'] as { ratedPower_W: number };
  const running = find.runningWith(
    pulleys(blower.drive) / pulleys(find.drive),
    blower.motor.ratedPower_W / found.ratedPower_W,
  );
  const points = meetingPoints(
    (q) => running(q, find.air),
    (q) => ducts.loss_Pa(open, q),
    find.free_m3_s * (pulleys(blower.drive) / pulleys(find.drive)),
  );
  const least = points[0];
  if (least === undefined) return false;
  const drawn = ducts.drawn_m3_s(open, least.flow_m3_s);
  const flowsHold = job.ductwork.sections.every(
    (s) => s.pickup == null || !open.includes(s.id) || drawn[s.id]! >= (s.pickup.requiredFlow_m3_s ?? 0),
  );
  const fastEnough = (section: string, flow: number) =>
    ducts.slowest_m_s(section, flow) >= (minimumVelocity_m_s[section] ?? 0);
  const speedsHold = open.every((m) => fastEnough(m, drawn[m]!)) && fastEnough('main', least.flow_m3_s);
  const heaviest = Math.max(
    ...points.map((p) => running(p.flow_m3_s, find.air).motorPower_W / blower.motor.ratedPower_W / find.ownEfficiency),
  );
  return flowsHold && speedsHold && heaviest <= 1 - shop.motorReserve;
}

const pulleys = (drive: { motorPulleyDiameter_m?: number | null; wheelPulleyDiameter_m?: number | null }) =>
  (drive.motorPulleyDiameter_m ?? 1) / (drive.wheelPulleyDiameter_m ?? 1);

/** Machines that draw in a plan: those it opens, and those without a gate. */
function openIn({ ductwork, gatePlans }: Job, plan: string): string[] {
  const named = gatePlans!.find((p) => p.name === plan)!.open;
  return ductwork.sections.flatMap((s) => (s.pickup && (named.includes(s.id) || s.gate == null) ? [s.id] : []));
}
