import type { Problem } from '../api.ts';
import { settings } from '../state/settings.ts';
import { texts } from '../texts/index.ts';
import { problemWords } from './problem-words.ts';

type Props = {
  problem: Problem;
  words: { notRead: string; notReadHint: string };
  /** what is done without the reader */
  byHand: string;
  onAgain: () => void;
  onByHand: () => void;
};

/** Nothing was read: why, and the two ways on. */
export function ReadingProblem({ problem, words, byHand, onAgain, onByHand }: Props) {
  return (
    <div class="box review" role="alert">
      <h2 class="small-head">{words.notRead}</h2>
      <p>{whyOf(problem, words.notReadHint)}</p>
      <div class="actions">
        <button type="button" class="press" onClick={onAgain}>
          {texts.value.common.tryAgain}
        </button>
        <button type="button" class="press" onClick={onByHand}>
          {byHand}
        </button>
      </div>
    </div>
  );
}

/** The server words what it cannot read in English; other languages say the same in one general sentence. */
function whyOf(problem: Problem, hint: string): string {
  const isOfPhoto = problem.status === 422;
  if (isOfPhoto && settings.value.language !== 'en') return hint;
  const words = problem.errors.map(({ message }) => message);
  return words.length > 0 ? words.join(' ') : problemWords(problem, texts.value);
}
