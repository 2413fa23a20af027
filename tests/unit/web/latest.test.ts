import { expect, it } from 'vitest';
import { createLatest } from '../../../web/state/latest.ts';

it('asks about the newest only, hands every answer on, and says whether more is coming', async () => {
  const asked: number[] = [];
  const heard: [number, boolean][] = [];
  let release = (): void => {};
  const latest = createLatest(
    (question: number) => {
      asked.push(question);
      return new Promise<number>((resolve) => {
        release = () => resolve(question * 10);
      });
    },
    (answer, _question, more) => heard.push([answer, more]),
    () => heard.push([-1, false]),
  );
  for (const n of [1, 2, 3, 4]) latest.want(n);
  release();
  await new Promise((resolve) => setTimeout(resolve));
  release();
  await new Promise((resolve) => setTimeout(resolve));
  expect(asked).toEqual([1, 4]);
  expect(heard).toEqual([
    [10, true],
    [40, false],
  ]);
  expect(latest.isBusy()).toBe(false);
});

it('goes on after an answer that failed', async () => {
  const heard: unknown[] = [];
  const latest = createLatest(
    (n: number) => (n === 1 ? Promise.reject(new Error('worker gone')) : Promise.resolve(n)),
    (answer) => heard.push(answer),
    (error) => heard.push((error as Error).message),
  );
  latest.want(1);
  latest.want(2);
  await new Promise((resolve) => setTimeout(resolve, 5));
  expect(heard).toEqual(['worker gone', 2]);
});
