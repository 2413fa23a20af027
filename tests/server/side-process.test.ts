import { afterEach, beforeEach, expect, test } from 'vitest';
import { ProcessDied, Stopped, TookTooLong, createSideProcess } from '../../server/side-process.ts';
import type { SideProcess } from '../../server/side-process.ts';

let side: SideProcess;
beforeEach(() => {
  side = createSideProcess(new URL('./unruly-program.ts', import.meta.url), 4000);
});
afterEach(() => side.close());

test('one process answers task after task, each with its own answer', async () => {
  const answers = await Promise.all(['a', 'b', 'c'].map((task) => side.ask<string>(task)));
  expect(answers.map((answer) => answer.split(' ')[0])).toEqual(['a', 'b', 'c']);
  expect(new Set(answers.map((answer) => answer.split(' ')[2])).size).toBe(1);
});

test('what is thrown there arrives with its stack, and the process stays', async () => {
  const before = await side.ask<string>('a');
  await expect(side.ask('throw')).rejects.toThrow(/RangeError: as told\n\s+at /);
  expect(await side.ask<string>('a')).toBe(before);
});

test('a process that dies or hangs fails its task only; the next has a new one', async () => {
  const first = await side.ask<string>('a');
  await expect(side.ask('die')).rejects.toThrow(ProcessDied);
  const second = await side.ask<string>('a');
  const hanging = side.ask('hang');
  const waiting = side.ask<string>('a');
  await expect(hanging).rejects.toThrow(TookTooLong);
  expect(new Set([first, second, await waiting]).size).toBe(3);
});

test('a long task tells how far it is', async () => {
  const heard: string[] = [];
  const answer = await side.ask<string>('tell', { onNews: (news) => heard.push(news) });
  expect(heard).toEqual(['begun', 'half way']);
  expect(answer).toMatch(/^tell /);
});

test('a task given up ends early, one that has not begun never begins, and the process stays warm', async () => {
  const before = await side.ask<string>('a');
  const given = new AbortController();
  const waiting = side.ask('wait', { signal: given.signal });
  const behind = side.ask('die', { signal: given.signal });
  const after = side.ask<string>('a');
  setTimeout(() => given.abort(), 50);
  await expect(waiting).rejects.toThrow(Stopped);
  await expect(behind).rejects.toThrow(Stopped);
  expect(await after).toBe(before);
});
