import { describe, expect, it } from 'vitest';
import { METHOD_NAMES } from '../../../src/readings/schema.ts';
import { checkJob } from '../../../src/index.ts';
import { addBlower } from '../../../web/edits/add-blower.ts';
import { addEvidence } from '../../../web/edits/add-evidence.ts';
import { columnsFor } from '../../../web/readings/columns.ts';
import { listText, readList } from '../../../web/readings/list-text.ts';
import { rowFromTexts } from '../../../web/readings/pending-row.ts';
import { RIG_FIELDS } from '../../../web/readings/rig-fields.ts';
import { blankJob } from '../../../web/state/blank-job.ts';

const ROWS = '/blowers/0/evidence/0/rows';
const columns = columnsFor('orifice-cap', [], false);
const unitOf = (column: { quantity: string }): string =>
  ({ length: 'mm', pressure: 'mm water', speed: 'rpm', current: 'A' })[column.quantity] ?? '';
const job = addEvidence(
  addBlower(blankJob('Shed'), { family: 'radial', ratedPower_W: 2200, driveKind: 'direct', powerAsTyped: '' }).job,
  { blowerId: 'b1', evidence: { kind: 'readings', rig: { method: 'orifice-cap', pipeDiameter_m: 0.15 }, rows: [] } },
).job;

describe('a reading being typed', () => {
  it('waits outside the job until its tube can be read', () => {
    expect(rowFromTexts(job, `${ROWS}/0`, columns, { [`${ROWS}/0/orificeDiameter_m`]: '75' }, unitOf)).toBeNull();
    expect(
      rowFromTexts(job, `${ROWS}/0`, columns, { [`${ROWS}/0/staticPressure_Pa`]: 'two hundred' }, unitOf),
    ).toBeNull();
  });

  it('then stands in the job with all that could be read, and leaves the rest half-typed', () => {
    const texts = {
      [`${ROWS}/0/orificeDiameter_m`]: '3 in',
      [`${ROWS}/0/staticPressure_Pa`]: '280',
      [`${ROWS}/0/current_A`]: '4 amp ?',
    };
    const edited = rowFromTexts(job, `${ROWS}/0`, columns, texts, unitOf)!;
    expect(edited.taken).toEqual([`${ROWS}/0/orificeDiameter_m`, `${ROWS}/0/staticPressure_Pa`]);
    const evidence = edited.job.blowers[0]!.evidence[0]!;
    expect(evidence).toMatchObject({ rows: [{ orificeDiameter_m: expect.closeTo(0.0762, 6) as number }] });
    // 280 mm of conventional water, ISO 80000-4: 9.80665 Pa each
    expect((evidence as { rows: { staticPressure_Pa: number }[] }).rows[0]!.staticPressure_Pa).toBeCloseTo(2745.86, 2);
    expect(edited.job.asTyped![`${ROWS}/0/orificeDiameter_m`]).toBe('3 in');
    expect(checkJob(edited.job).ok).toBe(true);
  });
});

describe('a suction', () => {
  const tube = { [`${ROWS}/0/staticPressure_Pa`]: '100' };
  const storedWith = (rows: { staticPressure_Pa: number }[]): unknown => {
    const edited = rowFromTexts(job, `${ROWS}/0`, columnsFor('orifice-cap', rows, false), tube, unitOf)!;
    return (edited.job.blowers[0]!.evidence[0] as { rows: { staticPressure_Pa: number }[] }).rows[0]!.staticPressure_Pa;
  };

  it('typed without its minus gets the one of its neighbours, and none where they have none', () => {
    expect(storedWith([{ staticPressure_Pa: -2500 }])).toBeCloseTo(-980.665, 3);
    expect(storedWith([{ staticPressure_Pa: 2500 }])).toBeCloseTo(980.665, 3);
    expect(storedWith([])).toBeCloseTo(980.665, 3);
  });

  it('on the outlet side keeps the sign it was typed with', () => {
    const outlet = columnsFor('orifice-cap', [{ staticPressure_Pa: -3 }], false, false);
    expect(outlet.find((column) => column.field === 'staticPressure_Pa')?.sign).toBeUndefined();
  });
});

describe('several readings in one cell', () => {
  it('are separated by blanks, with a comma or a point inside', () => {
    expect(readList('12 13 12,5', 'velocity', 'm/s')).toEqual([12, 13, 12.5]);
    expect(readList('12; 13\n14', 'velocity', 'm/s')).toEqual([12, 13, 14]);
    expect(readList('12 x 14', 'velocity', 'm/s')).toBeNull();
    expect(readList('', 'velocity', 'm/s')).toEqual([]);
    expect(listText([1200, 5], 'm/s')).toBe('1200.0 5.0');
  });
});

describe('columns', () => {
  it.each(METHOD_NAMES)(
    '%s: what gives the flow first, then the tube, then speed and amps; and its rig is asked for',
    (method) => {
      const fields = columnsFor(method, [], false).map((column) => column.field);
      expect(fields.indexOf('staticPressure_Pa')).toBeGreaterThan(0);
      expect(fields.slice(-2)).toEqual(['speed_rpm', 'current_A']);
      expect(RIG_FIELDS[method].first.length).toBeGreaterThan(0);
    },
  );

  it('show volts and watts when asked for, or when somebody wrote them down', () => {
    expect(columnsFor('bag-fill', [], true).map((c) => c.field)).toContain('inputPower_W');
    expect(columnsFor('bag-fill', [{ staticPressure_Pa: 1, voltage_V: 390 }], false).map((c) => c.field)).toContain(
      'voltage_V',
    );
  });
});
