import { mkdir, readFile, readdir, utimes, writeFile } from 'node:fs/promises';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { smallJob, smallJobWith } from '../unit/job/small-job.ts';
import { json, startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

const named = (name: string) => ({ ...smallJob(), name });
const put = (id: string, job: unknown, headers?: Record<string, string>) =>
  bench.call(`/api/jobs/${id}`, json('PUT', job, headers));
const files = () => readdir(join(bench.folder, 'jobs'));

describe('a job that is kept', () => {
  test('is on disk, whole, before the call is answered, and comes back as it was sent', async () => {
    const answer = await put('first', smallJob());
    expect(answer.status).toBe(201);
    expect(answer.headers.location).toBe('/api/jobs/first');
    expect(JSON.parse(await readFile(join(bench.folder, 'jobs/first.json'), 'utf8'))).toEqual(smallJob());
    expect((await files()).filter((file) => file.includes('first'))).toEqual(['first.json']);
    const back = await bench.call('/api/jobs/first');
    expect(back.status).toBe(200);
    expect(back.headers['content-type']).toBe('application/json; charset=utf-8');
    expect(JSON.parse(back.text)).toEqual(smallJob());
    expect(back.headers.etag).toBe(answer.headers.etag);
  });

  test('is replaced by the next, with another tag; the same bytes have the same tag', async () => {
    const one = await put('twice', named('one'));
    const two = await put('twice', named('two'));
    const again = await put('twice', named('one'));
    expect([one.status, two.status, again.status]).toEqual([201, 200, 200]);
    expect(two.headers.etag).not.toBe(one.headers.etag);
    expect(again.headers.etag).toBe(one.headers.etag);
    expect(one.headers.etag).toMatch(/^"[\w-]{32}"$/);
  });

  test('stands in the list with its name, its tag and when it was saved', async () => {
    const { headers } = await put('listed', named('Listed shop'));
    const list = JSON.parse((await bench.call('/api/jobs')).text);
    const row = list.jobs.find(({ id }: { id: string }) => id === 'listed');
    expect(row).toEqual({ id: 'listed', name: 'Listed shop', etag: headers.etag, savedAt: expect.any(String) });
    expect(Date.parse(row.savedAt)).not.toBeNaN();
    expect(list.damaged).toEqual([]);
  });

  test('is not sent again to who has it', async () => {
    const { headers } = await put('cached', smallJob());
    const again = await bench.call('/api/jobs/cached', { headers: { 'If-None-Match': headers.etag! } });
    expect(again.status).toBe(304);
    expect(again.text).toBe('');
  });

  test('can be deleted, once', async () => {
    await put('gone', smallJob());
    expect((await bench.call('/api/jobs/gone', { method: 'DELETE' })).status).toBe(204);
    expect(problemOf(await bench.call('/api/jobs/gone')).detail).toBe('There is no job called gone.');
    expect((await bench.call('/api/jobs/gone', { method: 'DELETE' })).status).toBe(404);
  });
});

describe('two people at one job', () => {
  test('who has an old version is told, and nothing is lost', async () => {
    const first = await put('shared', named('first'));
    const second = await put('shared', named('second'), { 'If-Match': first.headers.etag! });
    expect(second.status).toBe(200);
    const late = await put('shared', named('late'), { 'If-Match': first.headers.etag! });
    expect(late.status).toBe(412);
    expect(late.headers.etag).toBe(second.headers.etag);
    expect(problemOf(late).detail).toBe('The job has been changed since you read it; read it again, then save.');
    expect(JSON.parse((await bench.call('/api/jobs/shared')).text).name).toBe('second');
    const remove = await bench.call('/api/jobs/shared', {
      method: 'DELETE',
      headers: { 'If-Match': first.headers.etag! },
    });
    expect(remove.status).toBe(412);
  });

  test('of many saves of one version at once exactly one wins', async () => {
    const { headers } = await put('race', named('start'));
    const names = Array.from({ length: 12 }, (_, index) => `writer ${index}`);
    const answers = await Promise.all(names.map((name) => put('race', named(name), { 'If-Match': headers.etag! })));
    const winners = answers.flatMap(({ status }, index) => (status === 200 ? [names[index]] : []));
    expect(winners).toHaveLength(1);
    expect(answers.filter(({ status }) => status === 412)).toHaveLength(11);
    expect(JSON.parse((await bench.call('/api/jobs/race')).text).name).toBe(winners[0]);
  });

  test('saves without a condition at the same time leave one whole job', async () => {
    const names = Array.from({ length: 12 }, (_, index) => `writer ${index} ${'x'.repeat(1500)}`);
    const answers = await Promise.all(names.map((name) => put('free', named(name))));
    expect(answers.map(({ status }) => status).toSorted()).toEqual([...Array(11).fill(200), 201]);
    expect(names).toContain(JSON.parse((await bench.call('/api/jobs/free')).text).name);
    expect((await files()).filter((file) => file.includes('free'))).toEqual(['free.json']);
  });

  test('conditions that can never hold', async () => {
    expect((await put('none', smallJob(), { 'If-Match': '*' })).status).toBe(412);
    expect((await put('none', smallJob(), { 'If-Match': '"abc"' })).status).toBe(412);
    expect((await put('none', smallJob(), { 'If-None-Match': '*' })).status).toBe(201);
    expect((await put('none', smallJob(), { 'If-None-Match': '*' })).status).toBe(412);
    const { headers } = await bench.call('/api/jobs/none');
    expect((await put('none', smallJob(), { 'If-Match': `W/${headers.etag}` })).status).toBe(412);
    expect((await put('none', smallJob(), { 'If-Match': `"other", ${headers.etag}` })).status).toBe(200);
    expect((await put('none', smallJob(), { 'If-Match': '*' })).status).toBe(200);
  });
});

describe('what is refused', () => {
  const badId = 'The id of a job has 1 to 64 letters, digits, - or _, nothing else.';

  test.each([
    'a.b',
    '..%2f..%2fetc%2fpasswd',
    '%2e%2e%2fnetwork-key',
    'a%00b',
    'a%5cb',
    'caf%C3%A9',
    'x'.repeat(65),
    '%20',
  ])('the id %j, which could be a path', async (id) => {
    const write = await put(id, smallJob());
    expect(write.status).toBe(400);
    expect(problemOf(write).detail).toBe(badId);
    expect((await bench.call(`/api/jobs/${id}`)).status).toBe(404);
    expect((await bench.call(`/api/jobs/${id}`, { method: 'DELETE' })).status).toBe(404);
  });

  test('steps upwards in the address never leave the calls', async () => {
    expect((await bench.call('/api/jobs/..')).status).toBe(404);
    expect((await bench.call('/api/jobs/../../package.json')).status).toBe(404);
  });

  test('an address that cannot be decoded', async () => {
    const answer = await bench.call('/api/jobs/%E0%A4%A');
    expect(answer.status).toBe(400);
    expect(problemOf(answer).detail).toBe('The address holds a % that is not followed by two hexadecimal digits.');
  });

  test('names from the inner workings of objects are just names', async () => {
    for (const id of ['__proto__', 'constructor', 'toString']) {
      expect((await bench.call(`/api/jobs/${id}`)).status).toBe(404);
      expect((await put(id, named(id))).status).toBe(201);
      expect(JSON.parse((await bench.call(`/api/jobs/${id}`)).text).name).toBe(id);
    }
  });

  test('a job that is not understood is 400, one that is impossible 422, both 400; nothing is stored', async () => {
    const unclear = await put('bad', smallJobWith('/site/altitude', 3));
    expect(unclear.status).toBe(400);
    expect(problemOf(unclear).errors).toEqual([
      { path: '/site/altitude', message: 'altitude is not a field here: this document takes metres, as altitude_m.' },
    ]);
    const impossible = await put('bad', smallJobWith('/ductwork/sections/0/into', 'planer'));
    expect(impossible.status).toBe(422);
    expect(problemOf(impossible).errors[0]?.path).toBe('/ductwork/sections/0/into');
    const both = smallJobWith('/ductwork/sections/0/elements/0/diameter_m', 0) as { site: object };
    both.site = { altitude_m: 'high' };
    expect((await put('bad', both)).status).toBe(400);
    expect((await bench.call('/api/jobs/bad')).status).toBe(404);
  });

  test('other methods are 405 with those that are possible', async () => {
    for (const [path, method, allow] of [
      ['/api/jobs', 'POST', 'GET'],
      ['/api/jobs/x', 'POST', 'GET, PUT, DELETE'],
      ['/api/jobs/x', 'PATCH', 'GET, PUT, DELETE'],
    ] as const) {
      const answer = await bench.call(path, json(method, {}));
      expect(answer.status).toBe(405);
      expect(answer.headers.allow).toBe(allow);
      expect(problemOf(answer).detail).toBe(`${method} is not possible here; use ${allow}.`);
    }
  });
});

describe('after a crash or on a damaged stick', () => {
  const prepared = async () => {
    const folder = await mkdtemp(join(tmpdir(), 'blower-bench-'));
    const jobs = join(folder, 'jobs');
    await mkdir(jobs, { recursive: true });
    await writeFile(join(jobs, 'whole.json'), JSON.stringify(named('whole')));
    return { folder, jobs };
  };

  test('what was never renamed is not a job, does not hide the old version, and is cleared when it is old', async () => {
    const { folder, jobs } = await prepared();
    const [old, fresh] = ['.whole.json.0123456789ab.part', '.whole.json.ba9876543210.part'];
    for (const file of [old, fresh]) await writeFile(join(jobs, file), '{"format": "blower-bench-job", "na');
    await utimes(join(jobs, old), new Date(0), new Date(0));
    const again = await startBench({ dataFolder: folder });
    expect(await readdir(jobs)).toEqual([fresh, 'whole.json']);
    expect(JSON.parse((await again.call('/api/jobs/whole')).text).name).toBe('whole');
    const list = JSON.parse((await again.call('/api/jobs')).text);
    expect(list.jobs.map(({ id }: { id: string }) => id)).toEqual(['whole']);
    expect(list.damaged).toEqual([]);
    await again.stop();
  });

  test('a damaged file is set aside and reported; the rest still opens; its place can be taken again', async () => {
    const { folder, jobs } = await prepared();
    await writeFile(join(jobs, 'torn.json'), '{"format": "blower-bench-job", "na');
    await writeFile(join(jobs, 'other.json'), '{"some": "thing"}');
    await writeFile(join(jobs, 'notes.txt'), 'not ours, left alone');
    const again = await startBench({ dataFolder: folder });
    expect((await again.call('/api/jobs/torn')).status).toBe(404);
    const list = JSON.parse((await again.call('/api/jobs')).text);
    expect(list.jobs.map(({ id }: { id: string }) => id)).toEqual(['whole']);
    expect(list.damaged).toEqual(
      ['other.json.damaged', 'torn.json.damaged'].map((file) => ({
        file,
        message: 'This file was no readable job document and was set aside; the other jobs are whole.',
      })),
    );
    expect((await again.call('/api/jobs/torn', json('PUT', smallJob()))).status).toBe(201);
    await writeFile(join(jobs, 'torn.json'), 'torn again');
    await again.call('/api/jobs/torn');
    expect((await readdir(jobs)).toSorted()).toEqual(
      ['notes.txt', 'other.json.damaged', 'torn.json.damaged', 'torn.json.damaged-2', 'whole.json'].toSorted(),
    );
    await again.stop();
  });

  test('a folder that cannot be written to is the program’s trouble: 500 with an id the log explains', async () => {
    const { folder, jobs } = await prepared();
    await mkdir(join(jobs, 'blocked.json'));
    const again = await startBench({ dataFolder: folder });
    const answer = await again.call('/api/jobs/blocked', json('PUT', smallJob()));
    expect(answer.status).toBe(500);
    const [id] = /[0-9a-f-]{36}/.exec(problemOf(answer).detail) ?? [];
    expect(id).toBeDefined();
    expect(again.log).toHaveLength(1);
    expect(again.log[0]).toContain(`${id} PUT /api/jobs/blocked: Error: EISDIR`);
    const list = JSON.parse((await again.call('/api/jobs')).text);
    expect(list.jobs.map(({ id: listed }: { id: string }) => listed)).toEqual(['whole']);
    expect(list.damaged).toEqual([{ file: 'blocked.json', message: 'This file cannot be read.' }]);
    await again.stop();
  });
});
