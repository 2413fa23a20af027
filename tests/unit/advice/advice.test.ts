import { readFileSync } from 'node:fs';
import jsonPatch, { type Operation } from 'fast-json-patch';
import { beforeAll, describe, expect, it } from 'vitest';
import { assess, checkJob, type Assessment, type Job } from '../../../src/index.ts';

const demo = JSON.parse(
  readFileSync(new URL('../../../fixtures/jobs/school-furniture.json', import.meta.url), 'utf8'),
) as Job;

/** The demo's green blower alone, asked for more air than it surely gives, with or without its test readings. */
function shop(factor: number, change: (job: Job) => void = () => undefined): Job {
  const job = structuredClone(demo);
  job.blowers = [job.blowers[0]!];
  for (const s of job.ductwork.sections) if (s.pickup?.requiredFlow_m3_s) s.pickup.requiredFlow_m3_s *= factor;
  change(job);
  return job;
}

function answer(job: Job): Assessment {
  const checked = checkJob(job);
  if (!checked.ok) throw new Error(checked.issues[0]!.message);
  return assess(checked.value);
}

describe('remedies', () => {
  const inDoubt = shop(1.05);
  const slow = shop(1, (job) => {
    for (const s of job.ductwork.sections)
      if (s.id.startsWith('main'))
        for (const e of s.elements) if ('diameter_m' in e && e.kind !== 'gate') e.diameter_m = 0.16;
  });
  let found: { job: Job; result: Assessment['blowers'][number] }[];
  beforeAll(() => (found = [inDoubt, slow].map((job) => ({ job, result: answer(job).blowers[0]! }))));

  it('are found for a blower in doubt and for pipes too wide, and each is a yes when the changed job is judged', () => {
    for (const { job, result } of found) {
      expect(result.verdict).not.toBe('yes');
      expect(result.remedies.length).toBeGreaterThan(0);
      for (const r of result.remedies) {
        const changed = jsonPatch.applyPatch(structuredClone(job), r.change as Operation[]).newDocument;
        const after = answer(changed).blowers[0]!;
        expect(after.verdict).toBe('yes');
        expect(after.probability).toBeCloseTo(r.probabilityAfter, 9);
      }
    }
  });

  it('touch nothing but blower, drive, motor, ducts and gates', () => {
    const allowed = /^\/(gatePlans|ductwork|blowers\/\d+\/(drive|runSpeed_rpm|motor|evidence\/\d+\/testedWith))/;
    for (const { result } of found)
      for (const r of result.remedies) for (const c of r.change) expect(c.path).toMatch(allowed);
  });

  it('keep what the readings were taken with, so that old amps and speed do not undo a new pulley', () => {
    const pulley = found[0]!.result.remedies.find((r) => r.kind.includes('pulley'))!;
    expect(pulley.change.some((c) => c.path.endsWith('/testedWith'))).toBe(true);
  });

  it('are not sought where a blower gives less than half of what is needed', () => {
    expect(answer(shop(3)).blowers[0]).toMatchObject({ verdict: 'no', remedies: [] });
  });
});

describe('what to measure next', () => {
  it('is asked only while the verdict is unsure, the most telling first', () => {
    const { measureNext, verdict } = answer(shop(1.05)).blowers[0]!;
    expect(verdict).toBe('unsure');
    expect(measureNext.length).toBeGreaterThan(1);
    const gains = measureNext.map((m) => m.expectedDoubtRemoved);
    expect([...gains].sort((a, b) => b - a)).toEqual(gains);
    for (const g of gains) expect(g).toBeGreaterThanOrEqual(0);
    expect(answer(shop(1)).blowers[0]!.measureNext).toEqual([]);
  });

  it('names a hole to cut, and where its row goes, when nothing of the curve was measured', () => {
    const chartOnly = shop(1.12, (job) => {
      job.blowers[0]!.evidence = job.blowers[0]!.evidence.filter((e) => e.kind === 'chart');
    });
    const hole = answer(chartOnly).blowers[0]!.measureNext.find((m) => m.measurement === 'orifice-cap')!;
    expect(hole.detail).toMatchObject({
      path: '/blowers/0/evidence/-',
      row: { orificeDiameter_m: expect.any(Number) },
    });
    expect(hole.text).toMatch(/^Put a (closed cap|cap with a clean round hole of \d+\smm)/);
  });
});
