import { once } from 'node:events';
import { answerTasks } from '../../server/answer-tasks.ts';

/** A side process that does what it is told: answer, tell how far it is, wait to be stopped, throw, hang or die. */
answerTasks<string, string>(async (task, { tell, stop }) => {
  if (task === 'throw') throw new RangeError('as told');
  if (task === 'die') process.exit(3);
  while (task === 'hang');
  if (task === 'tell') for (const news of ['begun', 'half way']) tell(news);
  if (task === 'wait' && !stop.aborted) await once(stop, 'abort');
  return `${task} from ${process.pid}`;
});
