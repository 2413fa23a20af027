import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { assess, checkJob, curveOf } from '../../src/index.ts';
import type { Assessment, Job } from '../../src/index.ts';
import { smallJob, smallJobWith } from '../unit/job/small-job.ts';
import { json, root, startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

let bench: Bench;
let demo: Job;
beforeAll(async () => {
  bench = await startBench();
  demo = JSON.parse(await readFile(join(root, 'fixtures/jobs/school-furniture.json'), 'utf8'));
});
afterAll(() => bench.stop());

const post = (path: string, body: unknown) => bench.call(path, json('POST', body));

const checked = (raw: unknown): Job => {
  const result = checkJob(raw);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};

describe('POST /api/assess', () => {
  test('answers what the core itself concludes, twice in the same bytes', async () => {
    const one = await post('/api/assess', smallJob());
    expect([one.status, one.headers['content-type']]).toEqual([200, 'application/json; charset=utf-8']);
    expect(one.text).toBe(JSON.stringify(assess(checked(smallJob()))));
    expect((await post('/api/assess', smallJob())).text).toBe(one.text);
  });

  test('finds the green blower of the demo strong enough for one machine at a time, the squirrel cage not', async () => {
    const { blowers, cases } = JSON.parse((await post('/api/assess', demo)).text) as Assessment;
    expect(blowers.map(({ blowerId, verdict, rank }) => [blowerId, verdict, rank])).toEqual([
      ['green', 'yes', 1],
      ['squirrel-cage', 'no', 2],
    ]);
    const together = cases.filter(({ blowerId, required }) => blowerId === 'green' && !required);
    expect(together.map(({ filterState, verdict }) => [filterState, verdict])).toEqual([
      ['clean', 'no'],
      ['loaded', 'no'],
    ]);
  });

  test('400 for what is not understood, 422 for what cannot be, each with its place', async () => {
    const unit = await post('/api/assess', smallJobWith('/ductwork/sections/0/elements/1/diameter_mm', 125));
    expect(unit.status).toBe(400);
    expect(problemOf(unit).errors[0]).toEqual({
      path: '/ductwork/sections/0/elements/1/diameter_mm',
      message: 'diameter_mm is not a field here: this document takes metres, as diameter_m.',
    });
    const zero = await post('/api/assess', smallJobWith('/ductwork/sections/0/elements/1/diameter_m', 0));
    expect(zero.status).toBe(422);
    expect(problemOf(zero).errors.map(({ path }) => path)).toEqual(['/ductwork/sections/0/elements/1/diameter_m']);
    const circle = await post('/api/assess', smallJobWith('/ductwork/sections/1/into', 'main'));
    expect(circle.status).toBe(422);
    expect(problemOf(circle).errors[0]?.path).toBe('/ductwork/sections/1/into');
    const none = await post('/api/assess', smallJobWith('/blowers/0/evidence', []));
    expect(none.status).toBe(422);
    expect(problemOf(none).detail).toBe('evidence needs at least 1 entry (chart, readings, rated-point, wheel).');
  });

  test('names the first of several things and lists them all', async () => {
    const job = smallJobWith('/ductwork/sections/0/elements/1/diameter_m', 0) as { name: unknown };
    job.name = 3;
    const answer = problemOf(await post('/api/assess', job));
    expect(answer.status).toBe(400);
    expect(answer.detail).toBe('2 things stand in the way; the first: name must be text in quotes; 3 was given.');
    expect(answer.errors).toHaveLength(2);
  });

  test('other methods', async () => {
    const answer = await bench.call('/api/assess');
    expect([answer.status, answer.headers.allow]).toEqual([405, 'POST']);
  });
});

describe('POST /api/curve', () => {
  test('answers the curve of one blower with its band', async () => {
    const { site, supply, blowers } = checked(smallJob());
    const answer = await post('/api/curve', { site, supply, blower: blowers[0] });
    expect(answer.status).toBe(200);
    expect(answer.text).toBe(JSON.stringify(curveOf({ site, supply, blower: blowers[0]! })));
    const { curve, warnings } = JSON.parse(answer.text);
    expect(Array.isArray(warnings)).toBe(true);
    const { flow_m3_s, totalPressure_Pa, low95_Pa, high95_Pa } = curve as Record<string, number[]>;
    expect(flow_m3_s!.length).toBeGreaterThan(10);
    for (const [index, pressure] of totalPressure_Pa!.entries()) {
      expect(low95_Pa![index]!).toBeLessThanOrEqual(pressure);
      expect(high95_Pa![index]!).toBeGreaterThanOrEqual(pressure);
    }
  });

  test('points into the request where it is wrong', async () => {
    const { site, blowers } = smallJob();
    const missing = await post('/api/curve', { site });
    expect([missing.status, problemOf(missing).errors]).toEqual([
      400,
      [{ path: '/blower', message: 'blower is missing: give an object, { … }.' }],
    ]);
    const job = await post('/api/curve', smallJob());
    expect(job.status).toBe(400);
    const impossible = { ...blowers[0]!, evidence: [{ kind: 'rated-point', flow_m3_s: 0, pressure_Pa: 0 }] };
    expect((await post('/api/curve', { site, blower: impossible })).status).toBe(422);
  });
});
