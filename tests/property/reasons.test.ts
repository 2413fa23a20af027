import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkJob, judge, type Assessment } from '../../src/index.ts';
import { anyJob } from './any-job.ts';

type Reason = Assessment['cases'][number]['reasons'][number];

/** Where a reason that may forbid a blower keeps its number and the limit it is held against. */
const NUMBER_AND_LIMIT: Record<string, readonly [number: string, limit: string, over: 1 | -1]> = {
  'flow-short': ['flow_m3_s', 'required_m3_s', -1],
  'velocity-low': ['velocity_m_s', 'minimum_m_s', -1],
  'motor-overload': ['load', 'limit', 1],
  'low-voltage': ['current_A', 'plate_A', 1],
  'tip-speed': ['speed_m_s', 'low_m_s', 1],
};

/** What is wrong with a reason: no number, no limit, or nothing crossed and nothing doubtful. */
function faults({ code, values, text }: Reason): string[] {
  const [number, limit, over] = NUMBER_AND_LIMIT[code] ?? [];
  if (number === undefined || limit === undefined) return [];
  const [n, l, p] = [values[number], values[limit], values['probability']];
  if (typeof n !== 'number' || typeof l !== 'number') return [`${code} without its number or limit`];
  if ((text.match(/\d[\d,.]*/g) ?? []).length < 2) return [`${code} does not say its number and limit: ${text}`];
  const crossed = over === 1 ? n > l : n < l;
  const doubtful = typeof p === 'number' && p < 1;
  // amps at the lowest voltage are doubtful like the load they come from; their reason names no chance of its own
  return crossed || doubtful || code === 'low-voltage' ? [] : [`${code}: ${n} keeps ${l}, surely`];
}

describe('verdicts of any valid job', () => {
  it('have a reason each, and no reason is without its number and the limit it crossed', { timeout: 120_000 }, () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(anyJob, (raw) => {
        const checked = checkJob(JSON.parse(JSON.stringify(raw)));
        if (!checked.ok) return;
        const { cases, blowers } = judge(checked.value).assessment;
        for (const { verdict, reasons } of [...cases, ...blowers]) {
          expect(reasons.length).toBeGreaterThan(0);
          expect(reasons.flatMap(faults)).toEqual([]);
          const weights = reasons.map((r) => r.severity);
          if (verdict === 'no') expect(weights).toContain('stop');
          if (verdict === 'unsure') expect(weights.some((w) => w !== 'note')).toBe(true);
          for (const r of reasons) seen.add(r.code);
        }
      }),
      { numRuns: 40, seed: 21, endOnFailure: true },
    );
    for (const code of ['flow-short', 'velocity-low', 'motor-overload', 'tip-speed']) expect([...seen]).toContain(code);
  });
});
