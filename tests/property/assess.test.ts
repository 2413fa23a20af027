import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess, checkJob, judge, type Assessment } from '../../src/index.ts';
import { anyJob } from './any-job.ts';

/** Paths of everything in a document that JSON could not carry. */
function notNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`];
  if (value === undefined) return [`${path} is undefined`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([k, v]) => notNumbers(v, `${path}/${k}`));
}

describe('any valid job', () => {
  it(
    'gets an answer without NaN, infinity or gap, twice the same bytes, every point inside its interval',
    { timeout: 120_000 },
    () => {
      let judged = 0;
      fc.assert(
        fc.property(anyJob, (raw) => {
          const checked = checkJob(JSON.parse(JSON.stringify(raw)));
          if (!checked.ok) return; // a rig or plate that cannot be: the door says so
          const answer = judge(checked.value).assessment;
          expect(notNumbers(answer)).toEqual([]);
          expect(JSON.stringify(judge(checked.value).assessment)).toBe(JSON.stringify(answer));
          answer.cases.forEach(holdsTogether);
          judged += answer.cases.length;
        }),
        { numRuns: 60, seed: 11, endOnFailure: true },
      );
      expect(judged).toBeGreaterThan(200);
    },
  );

  it('gets advice without NaN, infinity or gap, twice the same bytes', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(anyJob, (raw) => {
        const checked = checkJob(JSON.parse(JSON.stringify(raw)));
        if (!checked.ok) return;
        const answer = assess(checked.value);
        expect(notNumbers(answer.blowers)).toEqual([]);
        expect(JSON.stringify(assess(checked.value))).toBe(JSON.stringify(answer));
      }),
      { numRuns: 6, seed: 12, endOnFailure: true },
    );
  });
});

function holdsTogether(c: Assessment['cases'][number]) {
  expect(c.probability).toBeGreaterThanOrEqual(0);
  expect(c.probability).toBeLessThanOrEqual(1);
  if (c.operatingPoint === null) {
    expect(c.reasons.map((r) => r.code)).toEqual(
      expect.arrayContaining([expect.stringMatching(/^(no-operating-point|outside-evidence)$/)]),
    );
    expect(c.verdict).not.toBe('yes');
    return;
  }
  const { interval95, flow_m3_s, totalPressure_Pa, shaftPower_W } = c.operatingPoint;
  for (const [[low, high], value] of [
    [interval95.flow_m3_s, flow_m3_s],
    [interval95.totalPressure_Pa, totalPressure_Pa],
    [interval95.shaftPower_W!, shaftPower_W!],
  ] as const) {
    expect(low).toBeLessThanOrEqual(value);
    expect(high).toBeGreaterThanOrEqual(value);
  }
  if (c.reasons.some((r) => r.code === 'outside-evidence')) expect(c.verdict).not.toBe('yes');
  if (c.verdict !== 'yes') expect(c.reasons.length).toBeGreaterThan(0);
}
