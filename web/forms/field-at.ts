import type { Quantity } from '../../src/units/index.ts';
import { issuesAt } from '../state/assessment.ts';
import { withTyped } from '../state/as-typed.ts';
import { edit, endStep, halfTyped, job, setHalfTyped, type Note } from '../state/job.ts';
import { valueAt } from '../state/pointer.ts';
import { texts } from '../texts/index.ts';
import { issueWords } from '../words/issue-words.ts';
import { signed, unsigned, type SuctionSign } from './suction-sign.ts';
import { bareText, readQuantity, shownText, withUnitNamed } from './quantity-text.ts';

export type FieldPlace = {
  /** JSON Pointer of the value in the job */
  path: string;
  quantity: Quantity;
  /** unit of a bare number */
  unit: string;
  note: Note;
  /** the job cannot do without it: an emptied field keeps the last value and says so */
  required?: boolean;
  /** a cell whose column head names the unit */
  bare?: boolean;
  /** of a suction, which is typed and shown without its minus */
  sign?: SuctionSign;
};

export type BoundField = {
  text: string;
  onText: (text: string) => void;
  onLeave: () => void;
  amiss: string | undefined;
};

/**
 * Binds a quantity of the job to a field: the only place where typed text becomes a value.
 * What is typed stays as typed; what cannot be read (yet) is kept beside the job and named at the field.
 */
export function fieldAt({ path, quantity, unit, note, required, bare, sign }: FieldPlace): BoundField {
  const stored = valueAt(job.value, path) as number | null | undefined;
  const value = unsigned(stored, sign);
  const text = halfTyped.value[path] ?? (bare ? bareText : shownText)(value, job.value.asTyped?.[path], quantity, unit);

  const onText = (next: string): void => {
    if (next.trim() === '' && !required) {
      setHalfTyped(path, null);
      edit(note, (before) => withTyped(before, path, undefined, null), path);
      return;
    }
    const read = readQuantity(next, quantity, unit);
    setHalfTyped(path, read.ok ? null : next);
    if (read.ok) edit(note, (before) => withTyped(before, path, signed(read.si, sign), next), path);
  };
  const onLeave = (): void => {
    const now = job.value.asTyped?.[path];
    if (halfTyped.value[path] === undefined && now !== undefined) {
      const named = withUnitNamed(now, quantity, unit);
      if (named !== now) edit(note, (before) => ({ ...before, asTyped: { ...before.asTyped, [path]: named } }), path);
    }
    endStep();
  };
  const emptied = required && text.trim() === '' ? texts.value.fields.needed : undefined;
  return { text, onText, onLeave, amiss: emptied ?? firstIssue(path) };
}

/** The first thing the check of the whole job has against a value. */
export function firstIssue(path: string): string | undefined {
  const issue = issuesAt(path)[0];
  return issue && issueWords(issue, texts.value);
}
