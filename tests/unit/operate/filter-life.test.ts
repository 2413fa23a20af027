import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkJob, type Job } from '../../../src/index.ts';
import { judge } from '../../../src/judge.ts';

const demo = JSON.parse(
  readFileSync(new URL('../../../fixtures/jobs/school-furniture.json', import.meta.url), 'utf8'),
) as Job;

function life(change: (job: Job) => void = () => undefined): number | null {
  const job = structuredClone(demo);
  job.blowers = [{ ...job.blowers[0]!, evidence: [{ kind: 'wheel' }] }];
  change(job);
  const checked = checkJob(job);
  if (!checked.ok) throw new Error(JSON.stringify(checked.issues));
  return judge(checked.value).assessment.blowers[0]!.filterLife_h;
}
const pieces = (job: Job) => job.ductwork.sections.flatMap((s) => s.elements);

describe('how long the filters last', () => {
  it('is what they hold over what the cyclone lets through', () => {
    // 6 filters of 0.2 kg, 5 kg/h of which the cyclone catches 95 %: 1.2 kg / 0.25 kg/h
    expect(life()).toBeCloseTo(4.8, 9);
    expect(life((job) => (job.dustRate_kg_h = 10))).toBeCloseTo(2.4, 9);
    const without = life((job) => {
      for (const s of job.ductwork.sections) s.elements = s.elements.filter((e) => e.kind !== 'cyclone');
    });
    expect(without).toBeCloseTo(0.24, 9);
  });

  it('is the same for filters behind the blower', () => {
    const moved = life((job) => {
      const filters = pieces(job).filter((e) => e.kind === 'filters');
      for (const s of job.ductwork.sections) s.elements = s.elements.filter((e) => e.kind !== 'filters');
      job.ductwork.discharge = [...filters, ...(job.ductwork.discharge ?? [])];
    });
    expect(moved).toBeCloseTo(4.8, 9);
  });

  it('is not told without dust rate, what a filter holds, or what the cyclone catches', () => {
    expect(life((job) => (job.dustRate_kg_h = null))).toBeNull();
    expect(life((job) => pieces(job).forEach((e) => e.kind === 'filters' && (e.dustCapacity_kg = null)))).toBeNull();
    expect(life((job) => pieces(job).forEach((e) => e.kind === 'cyclone' && (e.efficiency = null)))).toBeNull();
  });
});
