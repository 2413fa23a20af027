import { readFile, readdir, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { clearAbandoned, flushFolder, writeWhole } from './whole-file.ts';
import { etagOf, names } from './etag.ts';
import { createTurns } from './turns.ts';

const JOB_ID = /^[A-Za-z0-9_-]{1,64}$/;
const ENDING = '.json';
const SET_ASIDE = '.damaged';
const WAS_SET_ASIDE = 'This file was no readable job document and was set aside; the other jobs are whole.';

export type StoredJob = { bytes: Buffer; etag: string };
export type JobListing = { id: string; name: string; savedAt: string; etag: string };
export type JobList = { jobs: JobListing[]; damaged: { file: string; message: string }[] };

/** What a write asks of the version it replaces; null asks nothing. */
export type Condition = { ifMatch: string | null; ifNoneMatch: string | null };

/** `changed`: the condition does not hold, `etag` is what stands there now. */
export type WriteOutcome =
  { outcome: 'created' | 'replaced'; etag: string } | { outcome: 'changed'; etag: string | null };
export type RemoveOutcome = 'removed' | 'missing' | 'changed';

export const isJobId = (id: string): boolean => JOB_ID.test(id);

const isMissing = (error: unknown) => (error as NodeJS.ErrnoException).code === 'ENOENT';

function holds({ ifMatch, ifNoneMatch }: Condition, etag: string | null): boolean {
  return (ifMatch === null || names(ifMatch, etag)) && (ifNoneMatch === null || !names(ifNoneMatch, etag));
}

/** Name of the job in some bytes, or undefined when they are no job document. */
function nameIn(bytes: Buffer): string | undefined {
  try {
    const job: unknown = JSON.parse(bytes.toString('utf8'));
    const { format, name } = job as { format?: unknown; name?: unknown };
    return format === 'blower-bench-job' && typeof name === 'string' ? name : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Jobs as plain files in one folder, `<id>.json`, written whole or not at all. A file that is no job document any
 * more is set aside as `<id>.json.damaged` and reported; the rest still opens.
 */
export async function openJobStore(folder: string) {
  const inTurn = createTurns();
  const fileOf = (id: string) => join(folder, id + ENDING);
  await clearAbandoned(folder, Date.now());

  async function freeNameFor(file: string): Promise<string> {
    const taken = new Set(await readdir(folder));
    let name = file + SET_ASIDE;
    for (let count = 2; taken.has(name); count++) name = `${file}${SET_ASIDE}-${count}`;
    return name;
  }

  async function setAside(id: string): Promise<void> {
    const file = id + ENDING;
    await rename(join(folder, file), join(folder, await freeNameFor(file)));
    await flushFolder(folder);
  }

  /** null where there is none, or where there was one and it had to be set aside. */
  async function look(id: string): Promise<(StoredJob & { name: string }) | null> {
    let bytes: Buffer;
    try {
      bytes = await readFile(fileOf(id));
    } catch (error) {
      if (isMissing(error)) return null;
      throw error;
    }
    const name = nameIn(bytes);
    if (name === undefined) {
      await setAside(id);
      return null;
    }
    return { bytes, name, etag: etagOf(bytes) };
  }

  async function listing(id: string): Promise<JobListing[]> {
    const found = await look(id);
    if (!found) return [];
    const { mtime } = await stat(fileOf(id));
    return [{ id, name: found.name, savedAt: mtime.toISOString(), etag: found.etag }];
  }

  return {
    read: (id: string): Promise<StoredJob | null> => inTurn(id, () => look(id)),

    write: (id: string, job: unknown, condition: Condition): Promise<WriteOutcome> =>
      inTurn(id, async () => {
        const before = (await look(id))?.etag ?? null;
        if (!holds(condition, before)) return { outcome: 'changed', etag: before };
        const bytes = Buffer.from(`${JSON.stringify(job, null, 1)}\n`);
        await writeWhole(fileOf(id), bytes);
        return { outcome: before === null ? 'created' : 'replaced', etag: etagOf(bytes) };
      }),

    remove: (id: string, condition: Condition): Promise<RemoveOutcome> =>
      inTurn(id, async () => {
        const before = (await look(id))?.etag ?? null;
        if (before === null) return condition.ifMatch === null ? 'missing' : 'changed';
        if (!holds(condition, before)) return 'changed';
        await rm(fileOf(id));
        await flushFolder(folder);
        return 'removed';
      }),

    async list(): Promise<JobList> {
      const ids = (await readdir(folder).catch(() => []))
        .filter((file) => file.endsWith(ENDING))
        .map((file) => file.slice(0, -ENDING.length))
        .filter(isJobId)
        .toSorted();
      const jobs: JobListing[] = [];
      const damaged: JobList['damaged'] = [];
      for (const id of ids) {
        try {
          jobs.push(...(await inTurn(id, () => listing(id))));
        } catch {
          damaged.push({ file: id + ENDING, message: 'This file cannot be read.' });
        }
      }
      const aside = (await readdir(folder).catch(() => []))
        .filter((file) => file.includes(ENDING + SET_ASIDE))
        .toSorted();
      return { jobs, damaged: [...damaged, ...aside.map((file) => ({ file, message: WAS_SET_ASIDE }))] };
    },
  };
}

export type JobStore = Awaited<ReturnType<typeof openJobStore>>;
