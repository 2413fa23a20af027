import type { ComponentChildren } from 'preact';
import type { ChartReading } from '../api.ts';
import { OpenMark, VerdictMark } from '../drawings/marks.tsx';
import { texts } from '../texts/index.ts';
import { warningWords } from '../words/issue-words.ts';
import type { PhotoWork } from './photo-work.ts';
import type { Part } from './shown-work.ts';

/** Puts one part of the reading right; what the reader found of that part is taken over with it. */
export type Change = (part: Part, how: (before: PhotoWork) => PhotoWork, merge?: string | null) => void;

type StepProps = {
  mark: 'done' | 'doubt' | 'open';
  title: string;
  hint?: string;
  /** stands at the end of the title's line */
  side?: ComponentChildren;
  children?: ComponentChildren;
};

/** One step of reading a chart: done, doubted or still open by its mark, and what belongs to it. */
export function Step({ mark, title, hint, side, children }: StepProps) {
  return (
    <section class="row step">
      {mark === 'open' ? <OpenMark /> : <VerdictMark verdict={mark === 'done' ? 'yes' : 'unsure'} />}
      <div class="grow">
        <div class="step-head">
          <h2 class="small-head">{title}</h2>
          {side}
        </div>
        {hint && <p class="second">{hint}</p>}
        {children}
      </div>
    </section>
  );
}

/** What the reader doubts at a place of the hints; `/axes/0`, `/frameCorners_px`, `/seeds/1`. */
export const doubtsAt = (reading: ChartReading | null, path: string): string[] =>
  (reading?.warnings ?? [])
    .filter((w) => w.path === path || w.path.startsWith(`${path}/`))
    .map((w) => warningWords(w, texts.value));
