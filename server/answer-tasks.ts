import type { Answer } from './side-process.ts';

/** The other end of a side process: answers each task with what `work` makes of it, until the server goes away. */
export function answerTasks<Task, T>(work: (task: Task) => T | Promise<T>): void {
  const answerTo = async (task: Task): Promise<Answer<T>> => {
    try {
      return { ok: true, value: await work(task) };
    } catch (error) {
      return { ok: false, error: error instanceof Error ? (error.stack ?? error.message) : String(error) };
    }
  };
  process.on('message', (task) => {
    void answerTo(task as Task).then((answer) => process.send?.(answer));
  });
  process.on('disconnect', () => process.exit(0));
}
