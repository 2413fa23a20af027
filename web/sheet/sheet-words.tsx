import type { Problem } from '../api.ts';
import { problemWords } from '../photo/problem-words.ts';
import { texts } from '../texts/index.ts';
import { warningWords } from '../words/issue-words.ts';
import type { SheetReading } from './sheet-reading.ts';

/** Nothing was read: why, and the two ways on. */
export function SheetProblem({
  problem,
  onAgain,
  onByHand,
}: {
  problem: Problem;
  onAgain: () => void;
  onByHand: () => void;
}) {
  const t = texts.value;
  const words = problem.errors.map((error) => error.message);
  return (
    <div class="box review" role="alert">
      <h2 class="small-head">{t.sheet.notRead}</h2>
      <p>{words.length > 0 ? words.join(' ') : problemWords(problem, t)}</p>
      <div class="actions">
        <button type="button" class="press" onClick={onAgain}>
          {t.common.tryAgain}
        </button>
        <button type="button" class="press" onClick={onByHand}>
          {t.sheet.byHand}
        </button>
      </div>
    </div>
  );
}

/** What is doubted about the sheet as a whole. */
export function SheetWarnings({ reading }: { reading: SheetReading }) {
  const words = [...new Set(reading.warnings.map((warning) => warningWords(warning, texts.value)))];
  if (words.length === 0) return null;
  return (
    <div class="box review" role="status">
      <ul>
        {words.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  );
}
