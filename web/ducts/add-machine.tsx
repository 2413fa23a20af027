import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { addMachine } from '../edits/duct-machines.ts';
import type { Names } from '../match/names.ts';
import { job, perform } from '../state/job.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';
import type { Place } from './layout.ts';

type Props = { copyOf: string | null; names: Names; texts: DuctTexts; label: string; onPlace: (place: Place) => void };

/** One more machine: its name is asked, its branch starts as a copy. */
export function AddMachine({ copyOf, names, texts, label, onPlace }: Props) {
  const t = texts.piece;
  const id = useId();
  const name = useSignal<string | null>(null);
  if (name.value === null) {
    return (
      <button type="button" class="press" onClick={() => (name.value = '')}>
        {label}
      </button>
    );
  }
  const put = (event: Event) => {
    event.preventDefault();
    const typed = name.value?.trim();
    if (!typed) return;
    const added = addMachine(job.value, copyOf, typed);
    perform(added);
    name.value = null;
    onPlace({ section: added.id, index: null });
  };
  return (
    <form class="box add-machine" onSubmit={put}>
      <div class="field">
        <label for={id}>{t.machineName}</label>
        <input
          id={id}
          type="text"
          maxLength={100}
          value={name.value}
          ref={(input) => input?.focus()}
          onInput={(event) => (name.value = event.currentTarget.value)}
        />
      </div>
      {copyOf && <p class="second">{t.copyOf(names.machine(copyOf))}</p>}
      <button type="submit" class="press fill" disabled={!name.value.trim()}>
        {t.addIt}
      </button>
    </form>
  );
}
