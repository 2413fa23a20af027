import { answerTasks } from '../../server/answer-tasks.ts';

/** A side process that does what it is told: answer, throw, hang or die. */
answerTasks<string, string>((task) => {
  if (task === 'throw') throw new RangeError('as told');
  if (task === 'die') process.exit(3);
  while (task === 'hang');
  return `${task} from ${process.pid}`;
});
