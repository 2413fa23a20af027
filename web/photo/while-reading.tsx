import type { ChartStep } from '../api.ts';
import { OpenMark, VerdictMark } from '../drawings/marks.tsx';
import { texts } from '../texts/index.ts';

const STEPS: readonly ChartStep[] = ['frame', 'labels', 'curves'];

/** What the reader is doing, step by step, and a way to do it by hand instead. */
export function WhileReading({ step, onStop }: { step: ChartStep; onStop: () => void }) {
  const t = texts.value.photo;
  const now = STEPS.indexOf(step);
  return (
    <div class="while-reading" role="status">
      <ol>
        {STEPS.map((name, i) => (
          <li key={name} class={i === now ? 'now' : undefined} aria-current={i === now ? 'step' : undefined}>
            {i < now ? <VerdictMark verdict="yes" /> : <OpenMark />}
            {t.steps[name]}
          </li>
        ))}
      </ol>
      <button type="button" class="press" onClick={onStop}>
        {t.byHand}
      </button>
    </div>
  );
}
