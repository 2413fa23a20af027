/** What stands now, what stood before each change and why it changed. Pure: every change answers a new history. */
export type Change<T> = { note: string; before: T; merge: string | null };
export type History<T> = { present: T; past: Change<T>[]; undone: Change<T>[] };

const LONGEST = 200;

export const startHistory = <T>(present: T): History<T> => ({ present, past: [], undone: [] });

/**
 * Writes one change down. Changes that carry the same `merge` word, one after another, are one step back:
 * typing "150" is one change, not three.
 */
export function record<T>(history: History<T>, note: string, present: T, merge: string | null = null): History<T> {
  if (present === history.present) return history;
  const last = history.past.at(-1);
  const goesOn = merge !== null && last !== undefined && last.merge === merge;
  const past = goesOn ? history.past : [...history.past, { note, before: history.present, merge }].slice(-LONGEST);
  return { present, past, undone: [] };
}

/** Ends the current run of merged changes: what comes next is a step of its own. */
export function closeStep<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (!last?.merge) return history;
  return { ...history, past: [...history.past.slice(0, -1), { ...last, merge: null }] };
}

export function undo<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (!last) return history;
  return {
    present: last.before,
    past: history.past.slice(0, -1),
    undone: [...history.undone, { note: last.note, before: history.present, merge: null }],
  };
}

export function redo<T>(history: History<T>): History<T> {
  const next = history.undone.at(-1);
  if (!next) return history;
  return {
    present: next.before,
    past: [...history.past, { note: next.note, before: history.present, merge: null }],
    undone: history.undone.slice(0, -1),
  };
}
