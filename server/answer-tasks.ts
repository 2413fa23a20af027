import type { Message, Answer } from './side-process.ts';

/** What a task may do besides its answer: tell how far it is, and see that nobody waits for it any more. */
export type Progress = { tell: (news: string) => void; stop: AbortSignal };

/** The other end of a side process: answers each task with what `work` makes of it, until the server goes away. */
export function answerTasks<Task, T>(work: (task: Task, progress: Progress) => T | Promise<T>): void {
  let current = new AbortController();
  const tell = (news: string): void => void process.send?.({ news });
  const answerTo = async (task: Task): Promise<Answer<T>> => {
    current = new AbortController();
    try {
      return { ok: true, value: await work(task, { tell, stop: current.signal }) };
    } catch (error) {
      return { ok: false, error: error instanceof Error ? (error.stack ?? error.message) : String(error) };
    }
  };
  process.on('message', (message: Message<Task>) => {
    if ('stop' in message) current.abort();
    else void answerTo(message.task).then((answer) => process.send?.({ answer }));
  });
  process.on('disconnect', () => process.exit(0));
}
