import { answerTasks } from '../answer-tasks.ts';
import { recentPhoto } from '../image/recent-photos.ts';
import { toJson } from '../to-json.ts';
import { NotYet, readChart } from './chart.ts';
import type { ChartAnswer, ChartTask } from './chart-reader.ts';

async function read({ file, hints }: Extract<ChartTask, { kind: 'read' }>): Promise<ChartAnswer> {
  try {
    const reading = await readChart(file, hints);
    return reading.ok ? { text: toJson(reading.value) } : { issues: reading.issues };
  } catch (error) {
    if (error instanceof NotYet) return { notYet: error.message };
    throw error;
  }
}

answerTasks<ChartTask, ChartAnswer>(async (task) => {
  if (task.kind === 'read') return read(task);
  await recentPhoto(task.file);
  return { text: '' };
});
