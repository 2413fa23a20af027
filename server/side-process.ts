import { fork } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createTurns } from './store/turns.ts';

/** The task was not done in time, and the process that worked on it was ended. */
export class TookTooLong extends Error {}
/** The process ended in the middle of a task. */
export class ProcessDied extends Error {}

export type Answer<T> = { ok: true; value: T } | { ok: false; error: string };

/** Lets a process of its own run TypeScript, whatever started this one. */
const TYPESCRIPT = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;

function start(program: URL): ChildProcess {
  const child = fork(fileURLToPath(program), {
    execArgv: ['--import', TYPESCRIPT],
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  // waiting for work is no reason to keep the server alive
  child.unref();
  child.channel?.unref();
  return child;
}

function ask<T>(child: ChildProcess, task: unknown, timeLimit_ms: number): Promise<Answer<T>> {
  return new Promise((resolve, reject) => {
    const onMessage = (answer: unknown) => settle(() => resolve(answer as Answer<T>));
    const onEnd = () => settle(() => reject(new ProcessDied('the process ended in the middle of a task')));
    const timer = setTimeout(() => settle(() => reject(new TookTooLong('the task took too long'))), timeLimit_ms);
    const settle = (how: () => void) => {
      clearTimeout(timer);
      child.off('message', onMessage).off('exit', onEnd).off('error', onEnd);
      how();
    };
    child.on('message', onMessage).on('exit', onEnd).on('error', onEnd);
    child.send(task as object);
  });
}

/**
 * Work that may hang, eat memory or crash is done in a process of its own: one task after the other, started when
 * first wanted and kept warm, ended when a task takes longer than `timeLimit_ms`.
 * @param program  a file that calls `answerTasks`
 */
export function createSideProcess(program: URL, timeLimit_ms: number) {
  const inTurn = createTurns();
  let child: ChildProcess | undefined;

  async function run<T>(task: unknown): Promise<T> {
    child ??= start(program);
    try {
      const answer = await ask<T>(child, task, timeLimit_ms);
      if (answer.ok) return answer.value;
      throw new Error(answer.error);
    } catch (error) {
      if (error instanceof TookTooLong || error instanceof ProcessDied) {
        child.kill('SIGKILL');
        child = undefined;
      }
      throw error;
    }
  }

  return {
    /** @throws TookTooLong, ProcessDied, or an Error with the stack of whatever was thrown there */
    ask: <T>(task: unknown): Promise<T> => inTurn('', () => run<T>(task)),
    close: () => void child?.kill(),
  };
}

export type SideProcess = ReturnType<typeof createSideProcess>;
