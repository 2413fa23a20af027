import { OpenMark, VerdictMark } from '../drawings/marks.tsx';

type Props = {
  /** in the order in which they are done */
  steps: readonly { name: string; text: string }[];
  /** the one being done; a name not in the list stands before them all */
  step: string;
  /** what stopping means here */
  stop: string;
  onStop: () => void;
};

/** What the reader is doing, step by step, and a way to do it by hand instead. */
export function WhileReading({ steps, step, stop, onStop }: Props) {
  const now = Math.max(
    0,
    steps.findIndex(({ name }) => name === step),
  );
  return (
    <div class="while-reading" role="status">
      <ol>
        {steps.map(({ name, text }, i) => (
          <li key={name} class={i === now ? 'now' : undefined} aria-current={i === now ? 'step' : undefined}>
            {i < now ? <VerdictMark verdict="yes" /> : <OpenMark />}
            {text}
          </li>
        ))}
      </ol>
      <button type="button" class="press" onClick={onStop}>
        {stop}
      </button>
    </div>
  );
}
