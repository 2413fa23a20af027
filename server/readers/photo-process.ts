import { answerTasks } from '../answer-tasks.ts';
import { recentPhoto } from '../image/recent-photos.ts';
import { toJson } from '../to-json.ts';
import { createWordWorkers } from '../words/word-workers.ts';
import { READERS } from './kinds.ts';
import type { PhotoAnswer, PhotoTask } from './photo-reader.ts';

const words = createWordWorkers();

answerTasks<PhotoTask, PhotoAnswer>(async (task, { tell, stop }) => {
  const photo = await recentPhoto(task.file);
  if (task.kind === 'look') {
    await words.warmUp();
    return { text: '' };
  }
  // every crop and every step is a moment to give up at
  const reading = await READERS[task.kind].read(photo, task.hints, {
    words: (crops, want) => {
      stop?.throwIfAborted();
      return words.read(crops, want);
    },
    onStep: (step) => {
      stop?.throwIfAborted();
      tell(step);
    },
  });
  return reading.ok ? { text: toJson(reading.value) } : { issues: reading.issues };
});
