import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkJob, judge } from '../../../src/index.ts';
import type { ReadingsEvidence } from '../../../src/job/types.ts';
import { curveThrough, foreseenPlan } from '../../../web/readings/foreseen.ts';
import { holeText, isTaken, waitingRows, withPlannedRows } from '../../../web/readings/planned-rows.ts';

const ROWS = '/blowers/0/evidence/1/rows';
const raw: unknown = JSON.parse(
  readFileSync(new URL('../../../fixtures/jobs/school-furniture.json', import.meta.url), 'utf8'),
);

function demo() {
  const checked = checkJob(raw);
  if (!checked.ok) throw new Error('the demo job is not valid');
  const { assessment } = judge(checked.value);
  const at = checked.value.blowers[0]!.evidence.findIndex((e) => e.kind === 'readings');
  return {
    assessment,
    blower: checked.value.blowers[0]!,
    evidence: checked.value.blowers[0]!.evidence[at] as ReadingsEvidence,
  };
}

describe('the plan of a test in this shop', () => {
  const { assessment, blower, evidence } = demo();
  const ask = { blowerId: blower.id, path: '/blowers/0/evidence/1', cutting: 'compass' as const };

  it('bounds the flows at which the shop runs it, from the blower’s own curve', () => {
    const plan = foreseenPlan(assessment, { ...ask, evidence })!;
    const flows = assessment.cases
      .filter((c) => c.blowerId === blower.id && c.operatingPoint)
      .map((c) => c.operatingPoint!.flow_m3_s);
    expect(plan.wanted_m3_s).toEqual([Math.min(...flows), Math.max(...flows)]);
    const planned = plan.steps.map((s) => s.flow_m3_s);
    expect(Math.min(...planned.filter((q) => q > 0))).toBeLessThan(Math.min(...flows));
    expect(Math.max(...planned)).toBeGreaterThan(Math.max(...flows));
  });

  it('on the outlet side goes by total pressure; without a pipe there is none', () => {
    const outlet: ReadingsEvidence = { ...evidence, rig: { ...evidence.rig, side: 'outlet' } };
    expect(foreseenPlan(assessment, { ...ask, evidence: outlet })!.steps.length).toBeGreaterThanOrEqual(4);
    expect(foreseenPlan(assessment, { ...ask, evidence: { ...evidence, rig: { method: 'orifice-cap' } } })).toBeNull();
    expect(foreseenPlan({ ...assessment, cases: [] }, { ...ask, evidence })).toBeNull();
  });

  it('reads its curve straight between the points and goes on falling beyond the last', () => {
    const fan = { ...assessment.cases[0]!.fanCurve, flow_m3_s: [0, 1, 2], staticPressure_Pa: [100, 80, 40] };
    const { pressure_Pa, freeFlow_m3_s } = curveThrough(fan, fan.staticPressure_Pa, 1);
    // the steeper of the last fall (40) and the whole one (101 ÷ 2 = 50.5) goes on
    expect([0, 0.5, 1.5, 2].map(pressure_Pa)).toEqual([100, 90, 60, 40]);
    expect(pressure_Pa(3)).toBeCloseTo(40 - 50.5, 9);
    expect(freeFlow_m3_s).toBeCloseTo(2 + 40 / 50.5, 9);
    expect(curveThrough(fan, [100, 80, -20], 2).freeFlow_m3_s).toBeCloseTo(1.8, 9);
  });

  it('is put down as rows that wait for their tube, without those already taken', () => {
    const plan = foreseenPlan(assessment, { ...ask, evidence })!;
    const missing = plan.steps.filter((s) => !isTaken(s, evidence.rows));
    const texts = withPlannedRows({ '/name': 'x', [`${ROWS}/7/current_A`]: '3 amp' }, ROWS, evidence.rows, plan.steps);
    expect(texts['/name']).toBe('x');
    expect(Object.keys(texts).length).toBe(1 + missing.length);
    expect(texts[`${ROWS}/${evidence.rows.length}/orificeDiameter_m`]).toBe(
      holeText(missing[0]!.row.orificeDiameter_m!),
    );
    expect(waitingRows(texts, ROWS, evidence.rows.length)).toBe(missing.length);
    expect(waitingRows({}, ROWS, 3)).toBe(0);
    expect([holeText(0), holeText(0.075), holeText(0.1486)]).toEqual(['0', '75 mm', '148.6 mm']);
  });
});
