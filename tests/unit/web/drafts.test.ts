import { describe, expect, it } from 'vitest';
import { blankJob } from '../../../web/state/blank-job.ts';
import { createDraftStore, type Draft, type KeyValue } from '../../../web/state/drafts.ts';
import { record, startHistory } from '../../../web/state/history.ts';

/** A key-value store as slow and as stubborn as a phone's can be. */
function slowStore() {
  const kept = new Map<string, unknown>();
  const state = { refuses: false, writes: 0 };
  const store: KeyValue = {
    get: async (key) => kept.get(key),
    set: async (key, value) => {
      await new Promise((resolve) => setTimeout(resolve, 3));
      if (state.refuses) throw new Error('QuotaExceededError');
      state.writes += 1;
      kept.set(key, structuredClone(value));
    },
    del: async (key) => void kept.delete(key),
    keys: async () => [...kept.keys()],
  };
  return { store, kept, state };
}

function atOnce() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  };
}

const draft = (order: number, name: string, jobId = 'job-1'): Draft => ({
  jobId,
  order,
  history: startHistory({ job: blankJob(name), photos: {} }),
  halfTyped: {},
  etag: null,
  saved: false,
});

describe('drafts kept in the browser', () => {
  it('writes the newest and skips what was overtaken while writing', async () => {
    const { store, state } = slowStore();
    const drafts = createDraftStore(store, atOnce());
    for (let i = 1; i <= 20; i += 1) drafts.keep(draft(i, `name ${i}`));
    await drafts.settled();
    expect(state.writes).toBeLessThanOrEqual(2);
    expect((await drafts.load('job-1'))!.history.present.job.name).toBe('name 20');
  });

  it('brings half-typed texts and undo back', async () => {
    const { store } = slowStore();
    const drafts = createDraftStore(store, atOnce());
    const start = draft(1, 'before');
    const history = record(start.history, 'name', { job: blankJob('after'), photos: {} });
    drafts.keep({ ...start, history, halfTyped: { '/site/altitude_m': '18 fee' } });
    await drafts.settled();
    const back = await drafts.load('job-1');
    expect(back!.halfTyped).toEqual({ '/site/altitude_m': '18 fee' });
    expect(back!.history.past[0]!.before.job.name).toBe('before');
  });

  it('a page torn away in the middle of a write loses nothing: the urgent copy is newer and wins, with the undo steps that were kept', async () => {
    const { store } = slowStore();
    const local = atOnce();
    const drafts = createDraftStore(store, local);
    const history = record(draft(1, 'a').history, 'name', { job: blankJob('b'), photos: {} });
    drafts.keep({ ...draft(4, 'a'), history });
    await drafts.settled();
    drafts.keepAtOnce({ ...draft(9, 'c'), halfTyped: { '/name': 'x' } });
    const back = await createDraftStore(store, local).load('job-1');
    expect(back!.history.present.job.name).toBe('c');
    expect(back!.halfTyped).toEqual({ '/name': 'x' });
    expect(back!.history.past).toHaveLength(1);
  });

  it('an urgent copy that is older, or of another job, is left alone', async () => {
    const { store } = slowStore();
    const local = atOnce();
    const drafts = createDraftStore(store, local);
    drafts.keepAtOnce(draft(3, 'old'));
    drafts.keep(draft(5, 'new'));
    drafts.keep(draft(5, 'new'));
    await drafts.settled();
    expect((await drafts.load('job-1'))!.history.present.job.name).toBe('new');
    expect(await drafts.load('job-2')).toBeNull();
  });

  it('says when the browser keeps nothing, and falls back on the urgent copy', async () => {
    const { store, state } = slowStore();
    const local = atOnce();
    const said: boolean[] = [];
    const drafts = createDraftStore(store, local, (bad) => said.push(bad));
    state.refuses = true;
    drafts.keep(draft(1, 'full disk'));
    await drafts.settled();
    expect(said).toEqual([true]);
    expect((await drafts.load('job-1'))!.history.present.job.name).toBe('full disk');
  });

  it('lists jobs by name, finds one, and forgets what is taken away', async () => {
    const { store } = slowStore();
    const drafts = createDraftStore(store, atOnce());
    for (const [id, name] of [
      ['job-1', 'Hall'],
      ['job-2', 'Shed'],
    ] as const) {
      drafts.keep(draft(1, name, id));
      await drafts.settled();
    }
    expect(await drafts.list()).toEqual([
      { jobId: 'job-1', name: 'Hall' },
      { jobId: 'job-2', name: 'Shed' },
    ]);
    expect((await drafts.find((d) => d.history.present.job.name === 'Shed'))!.jobId).toBe('job-2');
    await drafts.remove('job-1');
    expect(await drafts.load('job-1')).toBeNull();
  });
});
