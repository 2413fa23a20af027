/** One of a few words side by side: a radio group as ruled columns, moved along by the arrow keys. */
export function Either<T extends string | number | boolean>({
  label,
  value,
  options,
  onChoose,
  showLabel = true,
}: {
  label: string;
  value: T | null | undefined;
  options: readonly { value: T; text: string }[];
  onChoose: (value: T) => void;
  showLabel?: boolean;
}) {
  const chosen = options.findIndex((option) => option.value === value);
  const onKey = (event: KeyboardEvent): void => {
    const step = stepOf(event);
    const group = event.currentTarget as HTMLElement;
    if (step === 0) return;
    event.preventDefault();
    const next = (chosen + step + options.length) % options.length;
    const option = options[next];
    if (!option) return;
    onChoose(option.value);
    (group.children[next] as HTMLElement | undefined)?.focus();
  };
  return (
    <div class="field">
      {showLabel && <span class="label">{label}</span>}
      <div class="either" role="radiogroup" aria-label={label} onKeyDown={onKey}>
        {options.map((option, index) => (
          <button
            key={String(option.value)}
            type="button"
            role="radio"
            aria-checked={index === chosen}
            tabIndex={index === chosen || (chosen === -1 && index === 0) ? 0 : -1}
            onClick={() => onChoose(option.value)}
          >
            {option.text}
          </button>
        ))}
      </div>
    </div>
  );
}

/** Arrow keys follow what the eye sees: on a page from right to left, left is forward. */
function stepOf(event: KeyboardEvent): number {
  const forward = document.documentElement.dir === 'rtl' ? 'ArrowLeft' : 'ArrowRight';
  const backward = document.documentElement.dir === 'rtl' ? 'ArrowRight' : 'ArrowLeft';
  if (event.key === forward || event.key === 'ArrowDown') return 1;
  if (event.key === backward || event.key === 'ArrowUp') return -1;
  return 0;
}
