import { describe, expect, it } from 'vitest';
import { textsWithout, valueAt, withValueAt } from '../../../web/state/pointer.ts';

describe('JSON pointers into a document that is never changed in place', () => {
  const job = { site: { altitude_m: 1850 }, rows: [{ a: 1 }, { a: 2 }], 'odd/name': { '~': 3 } };

  it('finds values, and nothing where the way ends', () => {
    expect(valueAt(job, '/site/altitude_m')).toBe(1850);
    expect(valueAt(job, '/rows/1/a')).toBe(2);
    expect(valueAt(job, '/odd~1name/~0')).toBe(3);
    expect(valueAt(job, '')).toBe(job);
    expect(valueAt(job, '/rows/7/a')).toBeUndefined();
    expect(valueAt(job, '/site/altitude_m/deeper')).toBeUndefined();
  });

  it('puts a value into a copy and shares all that did not change', () => {
    const next = withValueAt(job, '/rows/0/a', 9);
    expect(next.rows[0]).toEqual({ a: 9 });
    expect(job.rows[0]).toEqual({ a: 1 });
    expect(next.rows[1]).toBe(job.rows[1]);
    expect(next.site).toBe(job.site);
  });

  it('makes objects on the way, appends with "-", and takes a key away with undefined', () => {
    expect(withValueAt({}, '/requirement/confidence', 0.9)).toEqual({ requirement: { confidence: 0.9 } });
    expect(withValueAt({ rows: [1] }, '/rows/-', 2)).toEqual({ rows: [1, 2] });
    expect(withValueAt({ site: { a: 1, b: 2 } }, '/site/a', undefined)).toEqual({ site: { b: 2 } });
  });

  it('moves the texts of later entries up when one is taken out of an array', () => {
    const texts = {
      '/rows/0/a': 'first',
      '/rows/1/a': 'second',
      '/rows/12/a': 'thirteenth',
      '/rowsets/2': 'other',
      '/rows/1': 'whole',
    };
    expect(textsWithout(texts, '/rows', 1)).toEqual({
      '/rows/0/a': 'first',
      '/rows/11/a': 'thirteenth',
      '/rowsets/2': 'other',
    });
  });
});
