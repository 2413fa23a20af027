import { useSignal } from '@preact/signals';
import { DangerMark } from '../drawings/marks.tsx';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { openFromFile } from './job-file.ts';

/** A menu line that opens a job file; what is wrong with the file is said right there. */
export function OpenFile({ label, onDone }: { label: string; onDone: () => void }) {
  const amiss = useSignal<string | null>(null);
  const t = texts.value.jobs;
  const pick = async (input: HTMLInputElement): Promise<void> => {
    const file = input.files?.[0];
    input.value = '';
    if (!file) return;
    amiss.value = await openFromFile(file);
    if (amiss.value !== null) return;
    onDone();
    go({ page: 'match' });
  };
  return (
    <>
      <label>
        {label}
        <input type="file" accept=".json,application/json" onChange={(event) => void pick(event.currentTarget)} />
      </label>
      {amiss.value !== null && (
        <p class="amiss" role="alert">
          <DangerMark size={18} filled /> {t.notAJob} {amiss.value}
        </p>
      )}
    </>
  );
}
