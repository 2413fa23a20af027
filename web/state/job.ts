import { batch, computed, signal } from '@preact/signals';
import type { Job } from '../../src/job/types.ts';
import type { Texts } from '../texts/en.ts';
import { closeStep, record, redo as redoHistory, startHistory, undo as undoHistory, type History } from './history.ts';
import type { Doc, HalfTyped } from './doc.ts';
import { blankJob } from './blank-job.ts';

/** Why something changed: a key of the text table, so that undo can name it in the user's language. */
export type Note = keyof Texts['notes'];
/** What an edit answers: the new job and what was done. Edits change nothing themselves. */
export type Edited = { job: Job; note: Note };

export const jobId = signal('');
export const history = signal<History<Doc>>(startHistory({ job: blankJob(''), photos: {} }));
/** texts that are no value yet; they live beside the history, because undo is for values */
export const halfTyped = signal<HalfTyped>({});
/** counts every change, so that the newer of two kept copies is known */
export const order = signal(0);

export const doc = computed<Doc>(() => history.value.present);
export const job = computed<Job>(() => doc.value.job);
export const canUndo = computed(() => history.value.past.length > 0);
export const canRedo = computed(() => history.value.undone.length > 0);
/** what undo would take back, and redo bring again */
export const undoNote = computed(() => history.value.past.at(-1)?.note as Note | undefined);
export const redoNote = computed(() => history.value.undone.at(-1)?.note as Note | undefined);

/** Changes job or photo work; `merge` joins a run of changes (one field being typed, one drag) into one step back. */
export function editDoc(note: Note, change: (doc: Doc) => Doc, merge: string | null = null): void {
  batch(() => {
    history.value = record(history.value, note, change(doc.value), merge);
    order.value += 1;
  });
}

/** Changes the job: `change` gets the job as it stands and answers the new one. */
export function edit(note: Note, change: (job: Job) => Job, merge: string | null = null): void {
  editDoc(note, (before) => ({ ...before, job: change(before.job) }), merge);
}

/** Carries out an edit from `web/edits`. */
export function perform(edited: Edited, merge: string | null = null): void {
  edit(edited.note, () => edited.job, merge);
}

export function setHalfTyped(pointer: string, text: string | null): void {
  if ((halfTyped.value[pointer] ?? null) === text) return;
  batch(() => {
    const next = { ...halfTyped.value };
    if (text === null) delete next[pointer];
    else next[pointer] = text;
    halfTyped.value = next;
    order.value += 1;
  });
}

const stepTo = (next: History<Doc>): void =>
  batch(() => {
    history.value = next;
    halfTyped.value = {};
    order.value += 1;
  });

export const undo = (): void => stepTo(undoHistory(history.value));
export const redo = (): void => stepTo(redoHistory(history.value));
/** The field was left, the finger lifted: the next change is a step of its own. */
export const endStep = (): void => {
  history.value = closeStep(history.value);
};

/** Puts another job on the bench, with what was kept of it. */
export function openDoc(id: string, opened: History<Doc>, texts: HalfTyped = {}, at = 0): void {
  batch(() => {
    jobId.value = id;
    history.value = opened;
    halfTyped.value = texts;
    order.value = at;
  });
}
