import { useId } from 'preact/hooks';
import { edit, endStep, job, type Note } from '../state/job.ts';
import { valueAt, withValueAt } from '../state/pointer.ts';

/** A plain text of the job: a name, a label. */
export function TextInput({
  path,
  label,
  note,
  placeholder,
}: {
  path: string;
  label: string;
  note: Note;
  placeholder?: string;
}) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        maxLength={200}
        value={(valueAt(job.value, path) as string | null | undefined) ?? ''}
        placeholder={placeholder}
        onInput={(event) => edit(note, (before) => withValueAt(before, path, event.currentTarget.value), path)}
        onBlur={endStep}
      />
    </div>
  );
}
