import { describe, expect, it } from 'vitest';
import { checkJob, type Job } from '../../../../src/index.ts';
import type { ReadingsEvidence } from '../../../../src/job/types.ts';
import { addBlower } from '../../../../web/edits/add-blower.ts';
import { addEvidence } from '../../../../web/edits/add-evidence.ts';
import { methodOf, needsPipe, takeSheet, type SheetFigure, type TakeSheet } from '../../../../web/edits/take-sheet.ts';
import { blankJob } from '../../../../web/state/blank-job.ts';

const notebook = (more: Partial<ReadingsEvidence> = {}): Job => {
  const { job } = addBlower(blankJob('Shed'), {
    family: 'radial',
    ratedPower_W: 750,
    driveKind: 'belt',
    powerAsTyped: '1 HP',
  });
  const evidence: ReadingsEvidence = { kind: 'readings', rig: { method: 'orifice-cap' }, rows: [], ...more };
  return addEvidence(job, { blowerId: 'b1', evidence }).job;
};
const figure = (quantity: SheetFigure['quantity'], value: number, text: string): SheetFigure => ({
  quantity,
  value,
  text,
});
const hole = (m: number) => figure('orificeDiameter_m', m, `${1000 * m} mm`);
const tube = (pa: number) => figure('staticPressure_Pa', pa, `${pa} Pa`);
const taken = (more: Partial<TakeSheet>): TakeSheet => ({
  blowerId: 'b1',
  index: 0,
  photoId: 'sheet',
  rows: [],
  head: {},
  ...more,
});
const evidenceOf = (job: Job, index = 0): ReadingsEvidence => job.blowers[0]!.evidence[index] as ReadingsEvidence;

describe('taking over a sheet', () => {
  it('adds rows to those that are there, with the words as written, and keeps the photo', () => {
    const before = notebook({ rows: [{ staticPressure_Pa: 900, orificeDiameter_m: 0.12 }] });
    const { job } = takeSheet(before, taken({ rows: [[hole(0.04), tube(2600), figure('current_A', 2.9, '2.9 A')]] }));
    const evidence = evidenceOf(job);
    expect(evidence.rows).toEqual([
      { staticPressure_Pa: 900, orificeDiameter_m: 0.12 },
      { staticPressure_Pa: 2600, orificeDiameter_m: 0.04, current_A: 2.9 },
    ]);
    expect(evidence.photoId).toBe('sheet');
    expect(job.asTyped!['/blowers/0/evidence/0/rows/1/orificeDiameter_m']).toBe('40 mm');
    expect(checkJob(job).ok).toBe(true);
  });

  it('keeps the photo of a second sheet beside the first', () => {
    const once = takeSheet(notebook(), taken({ rows: [[hole(0.04), tube(2600)]] })).job;
    const twice = takeSheet(once, taken({ photoId: 'second', rows: [[hole(0.06), tube(2500)]] })).job;
    expect([evidenceOf(twice).photoId, evidenceOf(twice).morePhotoIds]).toEqual(['sheet', ['second']]);
    expect(evidenceOf(twice).rows).toHaveLength(2);
    expect(checkJob(twice).ok).toBe(true);
  });

  it('lets rows without a pressure wait below the table with what they have', () => {
    const { job, halfTyped } = takeSheet(notebook(), taken({ rows: [[hole(0.04)], [hole(0.06), tube(2500)]] }));
    expect(evidenceOf(job).rows).toHaveLength(1);
    expect(halfTyped).toEqual({ '/blowers/0/evidence/0/rows/1/orificeDiameter_m': '40 mm' });
  });

  it('measures as the sheet’s columns say, in a notebook of its own where the other holds rows already', () => {
    const speeds = [[tube(1200), figure('velocity_m_s', 12.5, '12.5 m/s')]];
    const alone = takeSheet(notebook(), taken({ rows: speeds }));
    expect([alone.index, evidenceOf(alone.job).rig.method]).toEqual([0, 'vane-traverse']);
    expect(evidenceOf(alone.job).rows).toEqual([{ staticPressure_Pa: 1200, velocities_m_s: [12.5] }]);
    const before = notebook({ rows: [{ staticPressure_Pa: 900, orificeDiameter_m: 0.12 }] });
    const beside = takeSheet(before, taken({ rows: speeds }));
    expect(beside.index).toBe(1);
    expect(evidenceOf(beside.job, 0)).toEqual(evidenceOf(before));
    expect(evidenceOf(beside.job, 1).photoId).toBe('sheet');
  });

  it('turns a flow into the speed of the air in the pipe: 0.1 m³/s through 200 mm is 3.183 m/s', () => {
    const rows = [[tube(1200), figure('flow_m3_s', 0.1, '360 m³/h')]];
    const { job } = takeSheet(notebook(), taken({ rows, head: { ductDiameter_m: 0.2 } }));
    expect(evidenceOf(job).rows[0]!.velocities_m_s![0]).toBeCloseTo(3.183, 3);
    expect(evidenceOf(job).rig).toEqual({ method: 'vane-traverse', pipeDiameter_m: 0.2 });
  });

  it('takes volts, warmth and barometer from the head, and leaves what the notebook knows', () => {
    const known = notebook({ air: { temperature_C: 22 }, rig: { method: 'orifice-cap', pipeDiameter_m: 0.15 } });
    const head = { voltage_V: 228, airTemperature_C: 30, barometer_Pa: 81_500, ductDiameter_m: 0.21 };
    const evidence = evidenceOf(takeSheet(known, taken({ rows: [[hole(0.04), tube(2600)]], head })).job);
    expect(evidence.air).toEqual({ temperature_C: 22, barometricPressure_Pa: 81_500 });
    expect(evidence.rig.pipeDiameter_m).toBe(0.15);
    expect(evidence.rows[0]!.voltage_V).toBe(228);
  });
});

describe('the method of a sheet', () => {
  it('is the notebook’s own where its columns fit or do not tell', () => {
    expect(methodOf(['staticPressure_Pa'], 'bell-mouth')).toBe('bell-mouth');
    expect(methodOf(['orificeDiameter_m', 'staticPressure_Pa'], 'orifice-in-pipe')).toBe('orifice-in-pipe');
    expect(methodOf(['velocityPressure_Pa'], 'orifice-cap')).toBe('pitot-traverse');
  });

  it('wants the pipe’s width only for flows that nothing else tells', () => {
    expect(needsPipe(['flow_m3_s', 'staticPressure_Pa'])).toBe(true);
    expect(needsPipe(['flow_m3_s', 'orificeDiameter_m'])).toBe(false);
  });
});
