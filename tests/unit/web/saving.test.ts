import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../web/api.ts';
import { blankJob } from '../../../web/state/blank-job.ts';
import { createSaver, type SaveState } from '../../../web/state/saving.ts';

const failed = (status: number): Answer<unknown> => ({
  ok: false,
  problem: { status, title: '', detail: '', errors: [] },
});
const stored = (etag: string): Answer<unknown> => ({ ok: true, value: null, etag });

/** A disk that answers what it is told to, and notes what it was asked. */
function disk(answers: Answer<unknown>[]) {
  const asked: { name: string; etag: string | null }[] = [];
  const states: SaveState[] = [];
  const saver = createSaver(
    async (_id, job, etag) => {
      asked.push({ name: job.name, etag });
      await Promise.resolve();
      return answers.shift() ?? stored('last');
    },
    (state) => states.push(state),
  );
  return { asked, states, saver };
}

describe('saving to disk', () => {
  it('saves one after another, the newest last, each on the version before', async () => {
    const { asked, states, saver } = disk([stored('v1'), stored('v2')]);
    saver.save('j', blankJob('one'));
    saver.save('j', blankJob('two'));
    saver.save('j', blankJob('three'));
    await saver.settled();
    expect(asked).toEqual([
      { name: 'one', etag: null },
      { name: 'three', etag: 'v1' },
    ]);
    expect(states).toEqual(['saving', 'saved', 'saving', 'saved']);
  });

  it('keeps a job that could not be sent and sends it when asked again', async () => {
    const { asked, states, saver } = disk([failed(0), stored('v1')]);
    saver.save('j', blankJob('mine'));
    await saver.settled();
    expect(states.at(-1)).toBe('offline');
    saver.retry();
    await saver.settled();
    expect(asked.map((a) => a.name)).toEqual(['mine', 'mine']);
    expect(states.at(-1)).toBe('saved');
    saver.retry();
    await saver.settled();
    expect(asked).toHaveLength(2);
  });

  it('never overwrites another version unasked', async () => {
    const { asked, states, saver } = disk([failed(412), stored('v9')]);
    saver.knows('j', 'v1');
    saver.save('j', blankJob('mine'));
    await saver.settled();
    expect(states.at(-1)).toBe('conflict');
    expect(asked[0]!.etag).toBe('v1');
    saver.overwrite('j');
    await saver.settled();
    expect(asked[1]).toEqual({ name: 'mine', etag: null });
    expect(states.at(-1)).toBe('saved');
  });

  it('tells a refused job from a silent bench', async () => {
    for (const [status, state] of [
      [422, 'refused'],
      [400, 'refused'],
      [500, 'offline'],
    ] as const) {
      const { states, saver } = disk([failed(status)]);
      saver.save('j', blankJob('x'));
      await saver.settled();
      expect(states.at(-1)).toBe(state);
    }
  });
});
