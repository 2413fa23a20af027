import { useId } from 'preact/hooks';
import { edit, job } from '../state/job.ts';
import type { Note } from '../state/job.ts';
import { Either } from '../forms/either.tsx';
import { valueAt, withValueAt } from '../state/pointer.ts';
import { texts } from '../texts/index.ts';

type Option = { value: string; text: string };

/** One of a list of names, as the phone offers lists; a name outside the list stays in it. */
export function ChoiceInput({
  path,
  label,
  note,
  options,
  unsaid,
  onChosen,
}: {
  path: string;
  label: string;
  note: Note;
  options: Option[];
  unsaid: string | null;
  onChosen?: (value: string) => void;
}) {
  const id = useId();
  const value = (valueAt(job.value, path) as string | null | undefined) ?? '';
  const all =
    value === '' || options.some((option) => option.value === value) ? options : [...options, { value, text: value }];
  const choose = (next: string) =>
    onChosen ? onChosen(next) : edit(note, (before) => withValueAt(before, path, next === '' ? undefined : next));
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {unsaid !== null && <option value="">{unsaid}</option>}
        {all.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  );
}

/** A yes or no of the job. */
export function FlagInput({
  label,
  value,
  onChange,
}: {
  label: string;
  value: boolean;
  onChange: (value: boolean) => void;
}) {
  const { yes, no } = texts.value.common;
  return (
    <Either
      label={label}
      value={value}
      options={[
        { value: true, text: yes },
        { value: false, text: no },
      ]}
      onChoose={onChange}
    />
  );
}
