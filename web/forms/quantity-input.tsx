import type { Quantity } from '../../src/units/index.ts';
import { unitFor } from '../words/say.ts';
import type { Note } from '../state/job.ts';
import { fieldAt } from './field-at.ts';
import { QuantityBox } from './quantity-box.tsx';

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
  required?: boolean;
  inCell?: boolean;
};

/** A quantity of the job, typed in any unit, with its echo or what is wrong with it. */
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
  const field = fieldAt({ path, quantity, unit, note, required });
  return (
    <QuantityBox
      {...field}
      label={label}
      quantity={quantity}
      unit={unit}
      help={help}
      placeholder={placeholder}
      inCell={inCell}
    />
  );
}
