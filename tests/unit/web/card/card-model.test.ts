import { expect, test } from 'vitest';
import { assess, checkJob } from '../../../../src/index.ts';
import type { Job } from '../../../../src/job/types.ts';
import { cardModel } from '../../../../web/card/card-model.ts';
import { card as en } from '../../../../web/texts/en-card.ts';
import { card as ur } from '../../../../web/texts/ur-card.ts';
import { comb, jobWith, threeMachines } from '../ducts/shops.ts';

const belt: Job['blowers'][number] = {
  ...jobWith(threeMachines()).blowers[0]!,
  drive: { kind: 'belt', motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.112 },
  motor: { ratedPower_W: 2200, speed_rpm: 2850, frequency_Hz: 50, current_A: 4.6, voltage_V: 400, phases: 3 },
};

function modelOf(job: Job) {
  const checked = checkJob(JSON.parse(JSON.stringify(job)));
  if (!checked.ok) throw new Error(checked.issues[0]!.message);
  const assessment = assess(checked.value);
  return { assessment, model: cardModel(checked.value, assessment, checked.value.blowers[0]!, assessment.blowers[0]!) };
}

test('the card holds the rules, the air, the filters, the amps and the wheel of one blower', () => {
  const job = {
    ...jobWith(threeMachines()),
    blowers: [belt],
    supply: { voltage_V: 400, lowestVoltage_V: 350, frequency_Hz: 50, phases: 3 as const },
  };
  const { assessment, model } = modelOf(job);
  expect(model.rules.map((rule) => rule.plan.name)).toEqual([
    'planer alone',
    'saw alone',
    'band alone',
    'all together',
  ]);
  expect(model.machines).toEqual(['planer', 'saw', 'band']);
  expect(model.air.map((row) => row.id)).toEqual(['planer', 'saw', 'band']);
  const eaten = (state: string) =>
    assessment.cases
      .filter((one) => one.filterState === state && one.required)
      .map((one) => one.budget.find((part) => part.part === 'filters')!.pressure_Pa);
  expect(model.filters).toEqual({
    count: 6,
    clean_Pa: Math.max(...eaten('clean')),
    loaded_Pa: Math.min(...eaten('loaded')),
  });
  expect(model.amps.plate_A).toBe(4.6);
  expect(model.amps.low!.volts).toBe(350);
  expect(model.amps.low!.amps).toBeGreaterThan(model.amps.single_A![0]);
  expect(model.pulleys).toEqual({ motor_m: 0.1, wheel_m: 0.112 });
  const tip = assessment.blowers[0]!.states.find((state) => state.state === 'tip-speed')!;
  expect(model.wheel!.limit_rpm! / model.wheel!.speed_rpm).toBeCloseTo(tip.limit! / tip.value!, 9);
});

test('a plan that fails says what fails', () => {
  const { model } = modelOf(jobWith(threeMachines()));
  for (const { plan, why } of model.rules) {
    if (plan.verdict !== 'no') expect(why).toBe(plan.verdict);
    else expect(['short', 'settles', 'motor', 'no']).toContain(why);
  }
});

test('more ways than the page holds are counted, not squeezed in', () => {
  const { model } = modelOf(jobWith(comb(9)));
  expect(model.rules).toHaveLength(6);
  expect(model.left).toBe(4);
  expect(model.filters).toBeNull();
  expect(model.pulleys).toBeNull();
});

test('both languages have an order for the same dangers', () => {
  expect(Object.keys(ur.danger.reasons)).toEqual(Object.keys(en.danger.reasons));
  expect(ur.danger.lines).toHaveLength(en.danger.lines.length);
});

test('behind each port a tube shows what the computed air makes of it', () => {
  const job = { ...jobWith(threeMachines()), blowers: [belt] };
  const { assessment, model } = modelOf(job);
  for (const { id, tube_Pa } of model.air) {
    const alone = assessment.cases.find(
      (one) => one.filterState === 'loaded' && one.pickups.every((pickup) => pickup.open === (pickup.id === id)),
    )!;
    const { flow_m3_s } = alone.pickups.find((pickup) => pickup.id === id)!;
    const velocityPressure_Pa = (assessment.air.density_kg_m3 / 2) * (flow_m3_s! / (Math.PI * 0.05 ** 2)) ** 2;
    // more than the air's own speed, and the hood's loss is below the four velocity pressures of the worst port on record
    expect(tube_Pa!).toBeGreaterThan(velocityPressure_Pa);
    expect(tube_Pa!).toBeLessThan(5 * velocityPressure_Pa);
  }
});
