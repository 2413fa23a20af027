import type { History } from './history.ts';
import type { Doc, HalfTyped } from './doc.ts';

/**
 * Everything the page holds about one job, undo included, as it is kept in the browser.
 * `order` counts up with every change, so that of two copies the newer one is known without a clock.
 */
export type Draft = {
  jobId: string;
  order: number;
  history: History<Doc>;
  halfTyped: HalfTyped;
  /** the version on disk this draft grew from; null when it never was on disk */
  etag: string | null;
  /** true when the last valid state is on disk */
  saved: boolean;
};

export type JobEntry = { jobId: string; name: string };

/** The few calls of a key-value store the drafts need; idb-keyval in the page. */
export type KeyValue = {
  get(key: string): Promise<unknown>;
  set(key: string, value: unknown): Promise<void>;
  del(key: string): Promise<void>;
  keys(): Promise<unknown[]>;
};

/** A store that answers at once, for the moment in which a page is torn away; localStorage in the page. */
export type AtOnce = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

const PREFIX = 'draft:';
const URGENT = 'blower-bench-urgent';

export type DraftStore = {
  /** Writes soon; of several asked for while one is being written only the last is. Never throws. */
  keep(draft: Draft): void;
  /** Writes now, before the page goes. */
  keepAtOnce(draft: Draft): void;
  /** All that was asked for is written (or could not be). */
  settled(): Promise<void>;
  load(jobId: string): Promise<Draft | null>;
  remove(jobId: string): Promise<void>;
  list(): Promise<JobEntry[]>;
  find(wanted: (draft: Draft) => boolean): Promise<Draft | null>;
};

export function createDraftStore(
  store: KeyValue,
  atOnce: AtOnce,
  onTrouble: (trouble: boolean) => void = () => {},
): DraftStore {
  let waiting: Draft | null = null;
  let writing: Promise<void> | null = null;

  async function writeAll(): Promise<void> {
    while (waiting) {
      const draft = waiting;
      waiting = null;
      try {
        await store.set(PREFIX + draft.jobId, draft);
        onTrouble(false);
      } catch {
        // a full or forbidden store: the urgent copy is the second line
        onTrouble(true);
        writeUrgent(atOnce, draft);
      }
    }
    writing = null;
  }

  async function all(): Promise<Draft[]> {
    const keys = await store.keys().catch(() => []);
    const names = keys.flatMap((key) => (typeof key === 'string' && key.startsWith(PREFIX) ? [key] : []));
    const drafts = await Promise.all(names.map((key) => store.get(key).catch(() => undefined)));
    return drafts.filter((draft): draft is Draft => draft !== undefined);
  }

  return {
    keep(draft) {
      waiting = draft;
      writing ??= writeAll();
    },
    keepAtOnce(draft) {
      writeUrgent(atOnce, draft);
    },
    async settled() {
      while (writing) await writing;
    },
    async load(jobId) {
      const kept = (await store.get(PREFIX + jobId).catch(() => undefined)) as Draft | undefined;
      const urgent = readUrgent(atOnce);
      if (urgent?.jobId === jobId && urgent.order > (kept?.order ?? -1)) {
        return kept ? { ...urgent, history: { ...kept.history, present: urgent.history.present } } : urgent;
      }
      return kept ?? null;
    },
    async remove(jobId) {
      if (waiting?.jobId === jobId) waiting = null;
      await writing;
      if (readUrgent(atOnce)?.jobId === jobId) atOnce.removeItem(URGENT);
      await store.del(PREFIX + jobId).catch(() => undefined);
    },
    async list() {
      return (await all()).map((draft) => ({ jobId: draft.jobId, name: draft.history.present.job.name }));
    },
    async find(wanted) {
      return (await all()).find(wanted) ?? null;
    },
  };
}

/** The urgent copy leaves the undo steps out: local storage is small, and what stands now must fit. */
function writeUrgent(atOnce: AtOnce, draft: Draft): void {
  const short: Draft = { ...draft, history: { present: draft.history.present, past: [], undone: [] } };
  try {
    atOnce.setItem(URGENT, JSON.stringify(short));
  } catch {
    // nothing more can be done from a page that is going away
  }
}

function readUrgent(atOnce: AtOnce): Draft | null {
  try {
    const text = atOnce.getItem(URGENT);
    return text ? (JSON.parse(text) as Draft) : null;
  } catch {
    return null;
  }
}
