import { assess, curveOf } from '../../src/index.ts';
import { answerTasks } from '../answer-tasks.ts';
import { toJson } from '../to-json.ts';
import type { CalculatorTask } from './calculator.ts';

answerTasks<CalculatorTask, string>((task) =>
  toJson(task.kind === 'assess' ? assess(task.job) : curveOf(task.request)),
);
