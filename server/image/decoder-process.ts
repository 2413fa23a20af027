import { answerTasks } from '../answer-tasks.ts';
import type { DecoderTask } from './decoder.ts';
import { narrowed, writeUpright } from './upright.ts';

answerTasks<DecoderTask, unknown>((task) =>
  task.kind === 'upright' ? writeUpright(task.from, task.to) : narrowed(task.from, task.width_px),
);
