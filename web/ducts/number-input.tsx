import { QuantityInput } from '../forms/quantity-input.tsx';

/** A plain number of the job (a count, a loss coefficient): the quantity field without a unit. */
export function NumberInput({
  path,
  label,
  help,
  required,
}: {
  path: string;
  label: string;
  help?: string;
  required: boolean;
}) {
  return (
    <QuantityInput
      path={path}
      quantity="fraction"
      unit="1"
      label={label}
      note="element"
      help={help}
      required={required}
    />
  );
}
