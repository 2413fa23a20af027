import { describe, expect, it } from 'vitest';
import { checkJob, type Job } from '../../../src/index.ts';
import { addBlower } from '../../../web/edits/add-blower.ts';
import { addEvidence } from '../../../web/edits/add-evidence.ts';
import { removeBlower } from '../../../web/edits/remove-blower.ts';
import { removeEvidence } from '../../../web/edits/remove-evidence.ts';
import { removeRow } from '../../../web/edits/remove-row.ts';
import { setDriveKind } from '../../../web/edits/set-drive-kind.ts';
import { setFamily } from '../../../web/edits/set-family.ts';
import { areUntold, useCurves } from '../../../web/edits/use-curves.ts';
import type { ChartReading } from '../../../web/api.ts';
import { withTyped } from '../../../web/state/as-typed.ts';
import { blankJob } from '../../../web/state/blank-job.ts';

const withBlowers = (count: number): Job => {
  let job = blankJob('Shed');
  for (let i = 0; i < count; i += 1)
    job = addBlower(job, { family: 'radial', ratedPower_W: 2200, driveKind: 'belt', powerAsTyped: `${i + 1} kW` }).job;
  return job;
};

const reading = (curves: Partial<ChartReading['curves'][number]>[]): ChartReading => ({
  frameCorners_px: [],
  axes: [],
  curves: curves.map((curve, i) => ({
    id: `c${i}`,
    yAxis: 'y1',
    quantity: 'static_pressure',
    speed_rpm: null,
    points: [
      [0, 100],
      [0.1, 90],
    ],
    points_px: [],
    confidence: 0.9,
    ...curve,
  })),
  confidence: { overall: 0.9, needsReview: false },
  warnings: [],
});

describe('edits are values', () => {
  it('a blank job and every job made of it are valid', () => {
    expect(checkJob(blankJob('Shed')).ok).toBe(true);
    expect(checkJob(withBlowers(2)).ok).toBe(true);
  });

  it('a new blower has an id of its own and keeps its power as typed', () => {
    const job = removeBlower(withBlowers(3), 'b1').job;
    const next = addBlower(job, { family: 'unknown', ratedPower_W: 750, driveKind: 'direct', powerAsTyped: '1 HP' });
    expect(next.job.blowers.map((b) => b.id)).toEqual(['b2', 'b3', next.blowerId]);
    expect(new Set(next.job.blowers.map((b) => b.id)).size).toBe(3);
    expect(next.job.asTyped!['/blowers/2/motor/ratedPower_W']).toBe('1 HP');
    expect(job.blowers).toHaveLength(2);
  });

  it('words typed about later blowers move up when one is taken away', () => {
    const { job, note } = removeBlower(withBlowers(3), 'b2');
    expect(note).toBe('removeBlower');
    expect(job.asTyped).toEqual({ '/blowers/0/motor/ratedPower_W': '1 kW', '/blowers/1/motor/ratedPower_W': '3 kW' });
    expect(removeBlower(job, 'nobody').job).toBe(job);
  });

  it('evidence takes the place of the bare wheel, and the wheel comes back when the last is gone', () => {
    const point = { kind: 'rated-point', flow_m3_s: 0.3, pressure_Pa: 0 } as const;
    const added = addEvidence(withBlowers(1), { blowerId: 'b1', evidence: point });
    expect(added.index).toBe(0);
    expect(added.job.blowers[0]!.evidence).toEqual([point]);
    const second = addEvidence(added.job, { blowerId: 'b1', evidence: point });
    expect(second.index).toBe(1);
    const typed = withTyped(second.job, '/blowers/0/evidence/1/flow_m3_s', 0.3, '1080 m3/h');
    const left = removeEvidence(typed, { blowerId: 'b1', index: 0 }).job;
    expect(left.asTyped!['/blowers/0/evidence/0/flow_m3_s']).toBe('1080 m3/h');
    expect(removeEvidence(left, { blowerId: 'b1', index: 0 }).job.blowers[0]!.evidence).toEqual([{ kind: 'wheel' }]);
  });

  it('a reading taken away takes its words along', () => {
    const rows = [{ staticPressure_Pa: 1 }, { staticPressure_Pa: 2 }];
    const job = addEvidence(withBlowers(1), {
      blowerId: 'b1',
      evidence: { kind: 'readings', rig: { method: 'orifice-cap' }, rows },
    }).job;
    const typed = withTyped(job, '/blowers/0/evidence/0/rows/1/staticPressure_Pa', 2, '2 Pa');
    const left = removeRow(typed, { rowsPath: '/blowers/0/evidence/0/rows', index: 0 }).job;
    expect(left.blowers[0]!.evidence[0]).toMatchObject({ rows: [{ staticPressure_Pa: 2 }] });
    expect(left.asTyped!['/blowers/0/evidence/0/rows/0/staticPressure_Pa']).toBe('2 Pa');
  });

  it('sets wheel and drive of the one blower', () => {
    const job = setDriveKind(setFamily(withBlowers(2), { blowerId: 'b2', family: 'axial' }).job, {
      blowerId: 'b2',
      kind: 'direct',
    }).job;
    expect(job.blowers.map((b) => [b.wheel.family, b.drive.kind])).toEqual([
      ['radial', 'belt'],
      ['axial', 'direct'],
    ]);
  });
});

describe('using the curves of a photo', () => {
  it('curves that no speed tells apart are not all of one blower', () => {
    const of = (...speeds: (number | null)[]) => reading(speeds.map((speed_rpm) => ({ speed_rpm })));
    expect([of(2900, 2400), of(null), of(2900, null)].map(areUntold)).toEqual([false, false, false]);
    expect([of(2900, 2900), of(null, null)].map(areUntold)).toEqual([true, true]);
    const both = reading([{ speed_rpm: 2900 }, { speed_rpm: 2900, quantity: 'total_pressure' }]);
    expect(areUntold(both)).toBe(false);
  });

  it('makes one chart of each pressure curve, with the power curve of its speed', () => {
    const { job, note } = useCurves(withBlowers(1), {
      blowerId: 'b1',
      photoId: 'photo-1',
      airDensity_kg_m3: null,
      reading: reading([
        { speed_rpm: 2900 },
        { speed_rpm: 2400, quantity: 'total_pressure' },
        {
          speed_rpm: 2400,
          quantity: 'shaft_power',
          yAxis: 'y2',
          points: [
            [0, 500],
            [0.1, 700],
          ],
        },
      ]),
    });
    expect(note).toBe('chart');
    expect(job.blowers[0]!.evidence).toEqual([
      expect.objectContaining({
        kind: 'chart',
        speed_rpm: 2900,
        pressureKind: 'static',
        shaftPower: null,
        photoId: 'photo-1',
      }),
      expect.objectContaining({
        kind: 'chart',
        speed_rpm: 2400,
        pressureKind: 'total',
        shaftPower: [
          [0, 500],
          [0.1, 700],
        ],
      }),
    ]);
    expect(checkJob(job).ok).toBe(true);
  });

  it('a single pressure curve takes the power curve whatever speed was typed at it', () => {
    const { job } = useCurves(withBlowers(1), {
      blowerId: 'b1',
      photoId: 'p',
      airDensity_kg_m3: 1.15,
      reading: reading([
        { speed_rpm: 2900 },
        {
          quantity: 'efficiency',
          yAxis: 'y2',
          points: [
            [0.02, 0.3],
            [0.1, 0.5],
          ],
        },
      ]),
    });
    expect(job.blowers[0]!.evidence[0]).toMatchObject({
      airDensity_kg_m3: 1.15,
      efficiency: [
        [0.02, 0.3],
        [0.1, 0.5],
      ],
    });
  });

  it('replaces what the same photo said before, and nothing else', () => {
    const once = useCurves(withBlowers(1), {
      blowerId: 'b1',
      photoId: 'p',
      airDensity_kg_m3: null,
      reading: reading([{ speed_rpm: 1 }, { speed_rpm: 2 }]),
    }).job;
    const other = useCurves(once, {
      blowerId: 'b1',
      photoId: 'q',
      airDensity_kg_m3: null,
      reading: reading([{ speed_rpm: 3 }]),
    }).job;
    const again = useCurves(other, {
      blowerId: 'b1',
      photoId: 'p',
      airDensity_kg_m3: null,
      reading: reading([{ speed_rpm: 4 }]),
    }).job;
    const speeds = again.blowers[0]!.evidence.map((e) => (e.kind === 'chart' ? e.speed_rpm : null));
    expect(speeds).toEqual([3, 4]);
    expect(useCurves(again, { blowerId: 'b1', photoId: 'p', airDensity_kg_m3: null, reading: reading([]) }).job).toBe(
      again,
    );
  });
});
