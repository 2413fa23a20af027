import { Icon } from '../drawings/icons.tsx';

/** A choice in the head of a page, underlined with dots; the list is the phone's own. */
export function Chooser<T extends string>({
  label,
  value,
  options,
  onChoose,
  strong = true,
}: {
  label: string;
  value: T;
  options: readonly { value: T; text: string }[];
  onChoose: (value: T) => void;
  strong?: boolean;
}) {
  const shown = options.find((option) => option.value === value)?.text ?? '';
  return (
    <label class="chooser">
      <span class="unseen">{label}</span>
      <span class={strong ? 'chosen-text strong' : 'chosen-text'} aria-hidden="true">
        {shown}
      </span>
      {options.length > 1 && <Icon name="down" size={18} />}
      <select
        aria-label={label}
        value={value}
        disabled={options.length < 2}
        onChange={(event) => onChoose(event.currentTarget.value as T)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </label>
  );
}
