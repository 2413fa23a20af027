import { answerTasks } from '../answer-tasks.ts';
import { recentPhoto } from '../image/recent-photos.ts';
import { toJson } from '../to-json.ts';
import { createWordWorkers } from '../words/word-workers.ts';
import { readChart } from './chart.ts';
import type { ChartAnswer, ChartTask } from './chart-reader.ts';

const words = createWordWorkers();

answerTasks<ChartTask, ChartAnswer>(async (task, { tell, stop }) => {
  if (task.kind === 'look') {
    await Promise.all([recentPhoto(task.file), words.warmUp()]);
    return { text: '' };
  }
  const reading = await readChart(task.file, task.hints, words.read, { onStep: tell, stop });
  return reading.ok ? { text: toJson(reading.value) } : { issues: reading.issues };
});
