import type { Quantity } from '../../src/units/index.ts';
import { issuesAt } from '../state/assessment.ts';
import { withTyped } from '../state/as-typed.ts';
import { edit, endStep, halfTyped, job, setHalfTyped, type Note } from '../state/job.ts';
import { valueAt } from '../state/pointer.ts';
import { texts } from '../texts/index.ts';
import { unitFor } from '../words/say.ts';
import { QuantityBox } from './quantity-box.tsx';
import { readQuantity, shownText, withUnitNamed } from './quantity-text.ts';

type Props = {
  /** JSON Pointer of the value in the job */
  path: string;
  quantity: Quantity;
  label: string;
  note: Note;
  /** unit of a bare number; left out, the one this user reads the quantity in */
  unit?: string;
  help?: string;
  placeholder?: string;
  /** the job cannot do without it: an emptied field keeps the last value and says so */
  required?: boolean;
  inCell?: boolean;
};

/**
 * A quantity of the job: the only place of the page where typed text becomes a value.
 * What is typed stays as typed; what cannot be read (yet) is kept beside the job and named at the field.
 */
export function QuantityInput({
  path,
  quantity,
  label,
  note,
  unit = unitFor(quantity),
  help,
  placeholder,
  required,
  inCell,
}: Props) {
  const value = valueAt(job.value, path) as number | null | undefined;
  const typed = job.value.asTyped?.[path];
  const text = halfTyped.value[path] ?? shownText(value, typed, quantity, unit);
  const issue = issuesAt(path)[0]?.message;

  const take = (next: string): void => {
    if (next.trim() === '' && !required) {
      setHalfTyped(path, null);
      edit(note, (before) => withTyped(before, path, undefined, null), path);
      return;
    }
    const read = readQuantity(next, quantity, unit);
    if (!read.ok) {
      setHalfTyped(path, next);
      return;
    }
    setHalfTyped(path, null);
    edit(note, (before) => withTyped(before, path, read.si, next), path);
  };
  const leave = (): void => {
    const now = job.value.asTyped?.[path];
    if (halfTyped.value[path] === undefined && now !== undefined) {
      const named = withUnitNamed(now, quantity, unit);
      if (named !== now) edit(note, (before) => ({ ...before, asTyped: { ...before.asTyped, [path]: named } }), path);
    }
    endStep();
  };
  const emptied = required && text.trim() === '' ? texts.value.fields.needed : undefined;
  return (
    <QuantityBox
      label={label}
      quantity={quantity}
      unit={unit}
      text={text}
      onText={take}
      onLeave={leave}
      amiss={emptied ?? issue}
      help={help}
      placeholder={placeholder}
      inCell={inCell}
    />
  );
}
