import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { assess } from '../../../src/index.ts';
import type { Job, ReadingsEvidence } from '../../../src/job/types.ts';

const demo = (): Job =>
  JSON.parse(readFileSync(new URL('../../../fixtures/jobs/school-furniture.json', import.meta.url), 'utf8')) as Job;

/** The demo's first blower alone, with the pressure of its fifth reading changed. */
function withFifth(pressure: (asRead: number) => number): Job {
  const job = demo();
  const blower = job.blowers[0]!;
  const readings = blower.evidence[1] as ReadingsEvidence;
  readings.rows[4]!.staticPressure_Pa = pressure(readings.rows[4]!.staticPressure_Pa);
  return { ...job, blowers: [blower] };
}

test('a verdict that hangs on a reading named as wrong is none, and that reading is what to take again', () => {
  expect(assess(withFifth((p) => p)).blowers[0]).toMatchObject({ verdict: 'yes' });
  const answer = assess(withFifth((p) => p / 10));
  const path = '/blowers/0/evidence/1/rows/4/staticPressure_Pa';
  expect(answer.warnings).toContainEqual(expect.objectContaining({ code: 'decimal-slip', path }));
  const [blower] = answer.blowers;
  expect(blower).toMatchObject({ verdict: 'unsure', remedies: [], rank: 1 });
  expect(blower!.reasons[0]).toMatchObject({ code: 'readings-doubtful', subject: path, severity: 'caution' });
  expect(blower!.reasons[0]!.text).toBe(
    'One of the readings looks wrong, and the answer hangs on it: as written not sure, without it strong enough. Put it right before you decide.',
  );
  expect(blower!.measureNext[0]).toMatchObject({
    measurement: 'reading-again',
    text: 'Beside the other rows this value looks ten times too small. Look for the decimal mark. Take it again, or put right what was written.',
    detail: { path, code: 'decimal-slip' },
    expectedDoubtRemoved: 1,
  });
});

test('a verdict that would be the same without the doubted reading stands', () => {
  const job = withFifth((p) => p / 10);
  for (const section of job.ductwork.sections) if (section.pickup) section.pickup.requiredFlow_m3_s = 5;
  const answer = assess(job);
  expect(answer.warnings).toContainEqual(expect.objectContaining({ code: 'decimal-slip' }));
  expect(answer.blowers[0]!.verdict).toBe('no');
  expect(answer.blowers[0]!.reasons.map(({ code }) => code)).not.toContain('readings-doubtful');
});
