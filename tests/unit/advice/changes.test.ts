import { readFileSync } from 'node:fs';
import jsonPatch, { type Operation } from 'fast-json-patch';
import { describe, expect, it } from 'vitest';
import { proposals } from '../../../src/advice/changes/index.ts';
import { checkJob, type Job } from '../../../src/index.ts';
import { judge } from '../../../src/judge.ts';

const demo = JSON.parse(
  readFileSync(new URL('../../../fixtures/jobs/school-furniture.json', import.meta.url), 'utf8'),
) as Job;
demo.blowers = [demo.blowers[0]!];
const trunk = demo.ductwork.sections.findIndex((s) => s.pickup == null);

function checked(raw: unknown): Job {
  const result = checkJob(raw);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Everything proposed for the demo's first blower were its trunk slow or its motor overloaded, each with the changed job. */
function proposed(kind: string, given: { slow?: boolean; overloaded?: boolean; needsAir?: boolean; from?: Job }) {
  const job = checked(given.from ?? demo);
  const found = proposals({
    job,
    index: 0,
    judged: judge(job).blowers[0]!,
    short: new Set(),
    slow: new Set(given.slow ? [trunk] : []),
    needsAir: given.needsAir ?? given.slow ?? false,
    motorOverloaded: given.overloaded ?? false,
  });
  return found
    .filter((c) => c.kind === kind)
    .map((c) => ({
      ...c,
      after: checked(
        jsonPatch.applyPatch(structuredClone(given.from ?? demo), structuredClone(c.patch) as Operation[]).newDocument,
      ),
    }));
}
const first = (job: Job, plan: string) => judge(job).assessment.cases.find((c) => c.gatePlan === plan)!;

describe('a slide in the main', () => {
  const slides = proposed('throttle', { overloaded: true });

  it('takes load off the motor and air off the machines, the more the further it is shut', () => {
    expect(slides.length).toBeGreaterThan(2);
    const plan = judge(checked(demo)).assessment.cases[0]!.gatePlan;
    const steps = [checked(demo), ...slides.map((s) => s.after)].map((job) => first(job, plan));
    steps.slice(1).forEach((now, i) => {
      expect(now.operatingPoint!.flow_m3_s).toBeLessThan(steps[i]!.operatingPoint!.flow_m3_s);
      expect(now.motor.loadFraction!).toBeLessThan(steps[i]!.motor.loadFraction!);
    });
  });

  it('is only thought of where the motor is in trouble', () => {
    expect(proposed('throttle', {})).toEqual([]);
  });
});

describe('room air let into a slow main', () => {
  it('speeds up the air in that main in every plan, the more the wider the stub', () => {
    const stubs = proposed('bleed-valve', { slow: true });
    expect(stubs.length).toBeGreaterThan(1);
    const { id } = demo.ductwork.sections[trunk]!;
    const plan = judge(checked(demo)).assessment.cases[0]!.gatePlan;
    const speeds = [checked(demo), ...stubs.map((s) => s.after)].map(
      (job) => first(job, plan).sections.find((s) => s.id === id)!.flow_m3_s,
    );
    speeds.slice(1).forEach((v, i) => expect(v).toBeGreaterThan(speeds[i]!));
  });

  it('is no machine: no plan of its own comes of it, and it asks for nothing', () => {
    const before = judge(checked(demo)).assessment.cases.map((c) => c.gatePlan);
    for (const { after } of proposed('bleed-valve', { slow: true })) {
      const { cases } = judge(after).assessment;
      expect(cases.map((c) => c.gatePlan)).toEqual(before);
      for (const c of cases)
        expect(c.pickups.find((p) => p.id === 'bleed-valve')).toMatchObject({ ok: true, requiredFlow_m3_s: null });
    }
  });
});

describe('more filters', () => {
  it('are counted up from one more, each number once', () => {
    const counts = proposed('filters', {}).map(({ after }) =>
      after.ductwork.sections
        .flatMap((s) => s.elements)
        .concat(after.ductwork.discharge ?? [])
        .reduce((n, e) => n + (e.kind === 'filters' ? e.count : 0), 0),
    );
    expect(new Set(counts).size).toBe(counts.length);
    expect([...counts].sort((a, b) => a - b)).toEqual(counts);
  });
});

describe('a belt in place of a wheel on the motor', () => {
  const direct = structuredClone(demo);
  direct.blowers[0]!.drive = { kind: 'direct' };
  direct.blowers[0]!.runSpeed_rpm = null;
  direct.blowers[0]!.evidence = direct.blowers[0]!.evidence.filter((e) => e.kind === 'chart');

  it('turns the wheel faster for more air, slower for an overloaded motor, by what the pulleys say', () => {
    const speed = (job: Job) => judge(job).assessment.cases[0]!.operatingPoint!.speed_rpm!;
    const before = speed(checked(direct));
    for (const overloaded of [false, true]) {
      const found = proposed('belt-drive', { from: direct, overloaded, needsAir: !overloaded });
      expect(found.length).toBeGreaterThan(1);
      for (const { after } of found) {
        const { motorPulleyDiameter_m, wheelPulleyDiameter_m } = after.blowers[0]!.drive;
        const now = speed(after);
        expect(now > before).toBe(!overloaded);
        expect(now / before).toBeCloseTo(motorPulleyDiameter_m! / wheelPulleyDiameter_m!, 2);
      }
    }
  });

  it('is no change for a blower that has a belt', () => {
    expect(proposed('belt-drive', {})).toEqual([]);
  });
});

describe('a larger motor, or another pulley', () => {
  // nothing but the family and the old motor's size tells the power, and the plate names no speed
  const rated = { kind: 'rated-point' as const, flow_m3_s: 0.2, pressure_Pa: 1500, pressureKind: 'static' as const };
  const plateOnly = structuredClone(demo);
  plateOnly.blowers[0]!.evidence = [rated, { ...rated, flow_m3_s: 0, pressure_Pa: 2000 }];
  const wheelOnly = structuredClone(demo);
  wheelOnly.blowers[0]!.evidence = [{ kind: 'wheel' }];

  it('says nothing of the wheel: its curve stays, and its share of the load falls as the motor grows', () => {
    for (const from of [plateOnly, wheelOnly]) {
      const before = judge(checked(from)).assessment.cases[0]!;
      for (const { after } of proposed('motor', { from, overloaded: true })) {
        const now = judge(after).assessment.cases[0]!;
        expect(now.operatingPoint!.flow_m3_s).toBeCloseTo(before.operatingPoint!.flow_m3_s, 6);
        const grown = after.blowers[0]!.motor.ratedPower_W / from.blowers[0]!.motor.ratedPower_W;
        // the old motor's service factor does not go with the new one
        const serviceFactor = from.blowers[0]!.motor.serviceFactor ?? 1;
        expect((now.motor.loadFraction! * grown) / serviceFactor).toBeCloseTo(before.motor.loadFraction!, 4);
      }
    }
  });

  it('moves what was known without a speed by the fan laws', () => {
    const before = judge(checked(plateOnly)).assessment.cases[0]!;
    const faster = proposed('pulley', { from: plateOnly, needsAir: true });
    expect(faster.length).toBeGreaterThan(2);
    for (const { after } of faster) {
      const now = judge(after).assessment.cases[0]!;
      const ratio = now.operatingPoint!.speed_rpm! / before.operatingPoint!.speed_rpm!;
      expect(ratio).toBeGreaterThan(1);
      // shut-off pressure with the square of the speed
      expect(now.fanCurve.totalPressure_Pa[0]! / before.fanCurve.totalPressure_Pa[0]!).toBeCloseTo(ratio ** 2, 2);
    }
  });
});
