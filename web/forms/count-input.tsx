import { useId } from 'preact/hooks';
import { firstIssue } from './field-at.ts';
import { edit, endStep, halfTyped, job, setHalfTyped, type Note } from '../state/job.ts';
import { valueAt, withValueAt } from '../state/pointer.ts';
import { readCount } from './count-text.ts';

/** How many of something: a whole number of the job; an empty field means not known. */
export function CountInput({ path, label, note, help }: { path: string; label: string; note: Note; help?: string }) {
  const id = useId();
  const value = valueAt(job.value, path) as number | null | undefined;
  const text = halfTyped.value[path] ?? (value === null || value === undefined ? '' : String(value));
  const take = (next: string): void => {
    const count = readCount(next);
    const understood = next.trim() === '' || count !== null;
    setHalfTyped(path, understood ? null : next);
    if (understood) edit(note, (before) => withValueAt(before, path, count ?? undefined), path);
  };
  const amiss = firstIssue(path);
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        class="quantity"
        type="text"
        inputMode="numeric"
        autocomplete="off"
        value={text}
        aria-invalid={amiss || halfTyped.value[path] !== undefined ? true : undefined}
        onInput={(event) => take(event.currentTarget.value)}
        onBlur={endStep}
      />
      <p class={amiss ? 'amiss' : 'echo'}>{amiss ?? help}</p>
    </div>
  );
}
