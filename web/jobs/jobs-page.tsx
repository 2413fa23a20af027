import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { Icon } from '../drawings/icons.tsx';
import { TopBar } from '../frame/top-bar.tsx';
import { listJobs, openJob, removeJob } from '../state/bench.ts';
import type { JobEntry } from '../state/drafts.ts';
import { jobId } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { openDemo } from './demo.ts';
import { startJob } from './start-job.ts';

/** Every job of this browser and of the disk. Taking one away asks once, at the row itself. */
export function JobsPage() {
  const entries = useSignal<JobEntry[] | null>(null);
  const asking = useSignal<string | null>(null);
  const t = texts.value;
  const read = async (): Promise<void> => {
    entries.value = await listJobs();
  };
  useEffect(() => void read(), []);
  const open = async (id: string): Promise<void> => {
    if (await openJob(id)) go({ page: 'match' });
  };
  const remove = async (id: string): Promise<void> => {
    asking.value = null;
    await removeJob(id);
    await read();
  };
  return (
    <div class="narrow">
      <TopBar title={t.jobs.mine} back={{ page: 'match' }} />
      {entries.value === null && <p class="second">{t.common.working}</p>}
      {entries.value?.length === 0 && <p class="empty">{t.jobs.none}</p>}
      <ul class="rows">
        {entries.value?.map((entry) => (
          <li key={entry.jobId} class="row">
            {asking.value === entry.jobId ? (
              <>
                <b class="grow">{t.jobs.reallyRemove(entry.name)}</b>
                <button type="button" class="press" onClick={() => void remove(entry.jobId)}>
                  {t.common.remove}
                </button>
                <button type="button" class="press" onClick={() => (asking.value = null)}>
                  {t.common.cancel}
                </button>
              </>
            ) : (
              <>
                <button type="button" class="grow tap-row" onClick={() => void open(entry.jobId)}>
                  <b>{entry.name || t.jobs.unnamed}</b>
                  {entry.jobId === jobId.value && <span class="second"> {t.jobs.onTheBench}</span>}
                </button>
                <button
                  type="button"
                  class="icon"
                  aria-label={t.jobs.removeJob(entry.name)}
                  onClick={() => (asking.value = entry.jobId)}
                >
                  <Icon name="bin" />
                </button>
              </>
            )}
          </li>
        ))}
      </ul>
      <div class="actions">
        <button type="button" class="press fill" onClick={startJob}>
          {t.jobs.start}
        </button>
        <button type="button" class="press" onClick={() => void openDemo()}>
          {t.welcome.demo}
        </button>
      </div>
    </div>
  );
}
