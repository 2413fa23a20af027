import { effect, signal } from '@preact/signals';
import * as idb from 'idb-keyval';
import type { Job } from '../../src/job/types.ts';
import { jobs } from '../api.ts';
import { followJob, forgetAnswers } from './assessment.ts';
import { createDraftStore, type Draft, type JobEntry } from './drafts.ts';
import { startHistory } from './history.ts';
import { halfTyped, history, jobId, openDoc, order } from './job.ts';
import { createSaver, type SaveState } from './saving.ts';

/** Opens, keeps and saves jobs: the one place where the page's state meets browser storage and the server's disk. */

export const phase = signal<'loading' | 'welcome' | 'open'>('loading');
export const saveState = signal<SaveState>('idle');
/** the browser refuses to keep drafts (private window, full disk): said, so that nobody trusts it blindly */
export const cannotKeep = signal(false);

const CURRENT = 'blower-bench-current';
const drafts = createDraftStore(idb, localStorage, (bad) => (cannotKeep.value = bad));
const etags = new Map<string, string | null>();
const saver = createSaver(jobs.put, (state, id, etag) => {
  etags.set(id, etag);
  if (id === jobId.value) saveState.value = state;
  if (id === jobId.value && state === 'saved') drafts.keep(draftNow());
});

const draftNow = (): Draft => ({
  jobId: jobId.value,
  order: order.value,
  history: history.value,
  halfTyped: halfTyped.value,
  etag: etags.get(jobId.value) ?? null,
  saved: saveState.value === 'saved',
});

const newId = (): string => {
  const bytes = crypto.getRandomValues(new Uint8Array(6));
  return `job-${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
};

function show(draft: Draft): void {
  saveNow();
  forgetAnswers();
  // a save that ended after another job was opened is newer than what its draft remembers
  const etag = etags.get(draft.jobId) ?? draft.etag;
  etags.set(draft.jobId, etag);
  saver.knows(draft.jobId, etag);
  saveState.value = draft.saved ? 'saved' : 'idle';
  openDoc(draft.jobId, draft.history, draft.halfTyped, draft.order);
  remember(draft.jobId);
  phase.value = 'open';
}

/** Puts a job on the bench under a name of its own; it is kept in the browser at once and on disk when valid. */
export function openNew(job: Job): void {
  show({
    jobId: newId(),
    order: 1,
    history: startHistory({ job, photos: {} }),
    halfTyped: {},
    etag: null,
    saved: false,
  });
  drafts.keep(draftNow());
}

/** Opens a copy of a job; a copy nobody has changed since is taken up again, so that looking twice leaves one behind. */
export async function openCopy(job: Job): Promise<void> {
  const untouched = await drafts.find((draft) => sameJob(draft.history.present.job, job));
  if (untouched) show(untouched);
  else openNew(structuredClone(job));
}

const sameJob = (a: Job, b: Job): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Opens a job of this browser, or else one from the server's disk. */
export async function openJob(id: string): Promise<boolean> {
  const draft = await drafts.load(id);
  if (draft) {
    show(draft);
    return true;
  }
  const stored = await jobs.get(id);
  if (!stored.ok) return false;
  etags.set(id, stored.etag);
  show({
    jobId: id,
    order: 1,
    history: startHistory({ job: stored.value, photos: {} }),
    halfTyped: {},
    etag: stored.etag,
    saved: true,
  });
  return true;
}

/** Takes the version on disk, as a fresh start; the own version is one undo away. */
export async function takeTheirs(): Promise<void> {
  const id = jobId.value;
  const stored = await jobs.get(id);
  if (!stored.ok) return;
  const before = history.value;
  etags.set(id, stored.etag);
  saver.knows(id, stored.etag);
  history.value = {
    present: { ...before.present, job: stored.value },
    past: [...before.past, { note: 'tookTheirs', before: before.present, merge: null }],
    undone: [],
  };
  order.value += 1;
}

export const keepMine = (): void => saver.overwrite(jobId.value);

/** Jobs of this browser and of the server's disk, each once, by name. */
export async function listJobs(): Promise<JobEntry[]> {
  const [own, stored] = await Promise.all([drafts.list(), jobs.list()]);
  const entries = new Map(own.map((entry) => [entry.jobId, entry]));
  for (const entry of stored.ok ? entriesFrom(stored.value) : [])
    if (!entries.has(entry.jobId)) entries.set(entry.jobId, entry);
  return [...entries.values()].sort((a, b) => a.name.localeCompare(b.name));
}

function entriesFrom(listing: unknown): JobEntry[] {
  const rows = Array.isArray(listing) ? listing : ((listing as { jobs?: unknown[] } | null)?.jobs ?? []);
  return rows.flatMap((row) => {
    if (typeof row === 'string') return [{ jobId: row, name: row }];
    const { jobId: id, id: otherId, name } = row as { jobId?: string; id?: string; name?: string };
    const known = id ?? otherId;
    return known ? [{ jobId: known, name: name ?? known }] : [];
  });
}

export async function removeJob(id: string): Promise<void> {
  await Promise.all([drafts.remove(id), jobs.remove(id)]);
  if (id !== jobId.value) return;
  remember(null);
  jobId.value = '';
  forgetAnswers();
  phase.value = 'welcome';
}

/** Opens what was on the bench last time and starts keeping, saving and working out. */
export async function startBench(): Promise<void> {
  const last = remembered();
  if (!last || !(await openJob(last))) phase.value = 'welcome';
  let seen = order.value;
  effect(() => {
    if (order.value === seen) return;
    seen = order.value;
    if (jobId.value !== '') drafts.keep(draftNow());
  });
  const keepNow = (): void => {
    if (jobId.value !== '') drafts.keepAtOnce(draftNow());
  };
  addEventListener('pagehide', keepNow);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && keepNow());
  addEventListener('online', () => saver.retry());
  setInterval(() => saveState.value === 'offline' && saver.retry(), 15_000);
  followJob((valid) => {
    if (valid === lastValid) return;
    lastValid = valid;
    clearTimeout(soon);
    toSave = { jobId: jobId.value, job: valid };
    soon = setTimeout(saveNow, 500);
  });
}

let lastValid: Job | null = null;
let toSave: { jobId: string; job: Job } | null = null;
let soon: ReturnType<typeof setTimeout> | undefined;

/** What waits for a quiet moment goes to disk now; asked before another job takes the bench. */
function saveNow(): void {
  clearTimeout(soon);
  if (toSave) saver.save(toSave.jobId, toSave.job);
  toSave = null;
}

function remember(id: string | null): void {
  try {
    if (id) localStorage.setItem(CURRENT, id);
    else localStorage.removeItem(CURRENT);
  } catch {
    cannotKeep.value = true;
  }
}

function remembered(): string | null {
  try {
    return localStorage.getItem(CURRENT);
  } catch {
    return null;
  }
}
