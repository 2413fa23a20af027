import { z } from 'zod';
import { fieldAt, fieldNames, valueAt } from './field-at.ts';
import { nearestName } from './nearest-name.ts';
import { sameThingInOurUnit, unitOfName } from './unit-of-name.ts';

type Step = string | number;

/** One complaint of the schema with the document it is about. */
export type Complaint = { issue: z.core.$ZodIssue; path: Step[]; schema: z.core.$ZodType; document: unknown };

const MOST_NAMES = 20;
const LONGEST_QUOTE = 40;

const list = (names: readonly string[]) =>
  names.length > MOST_NAMES ? `${names.slice(0, MOST_NAMES).join(', ')} …` : names.join(', ');

const isScalar = (value: unknown) => typeof value !== 'object' || value === null;

/** A value as a sentence shows it; never more than its first level, however deep it goes. */
function quote(value: unknown): string {
  if (Array.isArray(value) && (value.length > 4 || !value.every(isScalar))) return `a list of ${value.length}`;
  if (!Array.isArray(value) && !isScalar(value)) return 'an object';
  const text = JSON.stringify(value) ?? 'nothing';
  return text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text;
}

/** The field as people and as the document call it: `inside diameter (diameter_m)`. */
function nameOf({ path, schema, document }: Complaint): string {
  const keys = path.filter((step) => typeof step === 'string');
  const last = path.at(-1);
  const key = keys.at(-1) ?? 'the document';
  if (typeof last === 'number') return path.length === 1 ? `entry ${last}` : `entry ${last} of ${key}`;
  const field = fieldAt(schema, document, path);
  const label = field && (z.globalRegistry.get(field) as { label?: string } | undefined)?.label;
  return label && label !== key ? `${label} (${key})` : key;
}

/** Unit of the number at `path` in words, from the nearest named step. */
const unitAt = (path: readonly Step[]): string => {
  const key = path.findLast((step) => typeof step === 'string');
  const unit = typeof key === 'string' ? unitOfName(key).unit : undefined;
  return unit ? ` in ${unit}` : '';
};

const WANTED: Record<string, string> = {
  string: 'text in quotes',
  boolean: 'true or false',
  array: 'a list, [ … ]',
  tuple: 'a pair, [flow, value]',
  object: 'an object, { … }',
  record: 'an object, { … }',
  int: 'a whole number',
};

const wanted = (expected: string, path: readonly Step[]) =>
  expected === 'number' ? `a number${unitAt(path)}` : (WANTED[expected] ?? expected);

function wrongType(complaint: Complaint, expected: string): string {
  const { path, document } = complaint;
  const name = nameOf(complaint);
  const given = valueAt(document, path);
  if (given === undefined || given === null) return `${name} is missing: give ${wanted(expected, path)}.`;
  if (expected === 'number' && typeof given === 'string') {
    return `${name} must be ${wanted(expected, path)}; ${quote(given)} is text. Write the bare number, without quotes and without a unit.`;
  }
  if (expected === 'number' && typeof given === 'number') return `${name} is too large to be a number.`;
  return `${name} must be ${wanted(expected, path)}; ${quote(given)} was given.`;
}

function unknownWord(complaint: Complaint, known: readonly unknown[]): string {
  const given = valueAt(complaint.document, complaint.path);
  const name = nameOf(complaint);
  const words = known.map((word) => (typeof word === 'string' ? word : JSON.stringify(word)));
  const choice = words.length === 1 ? `it must be ${words[0]}` : `it must be one of ${list(words)}`;
  if (given === undefined || given === null) return `${name} is missing: ${choice}.`;
  const near = typeof given === 'string' ? nearestName(given, words) : undefined;
  return near
    ? `${name} ${quote(given)} is not known; did you mean ${quote(near)}?`
    : `${name} ${quote(given)} is not known; ${choice}.`;
}

function outOfRange(complaint: Complaint, limit: number, isLeast: boolean, inclusive: boolean, origin: string): string {
  const { path, document, schema } = complaint;
  const name = nameOf(complaint);
  if (fieldAt(schema, document, path) instanceof z.core.$ZodTuple) return wrongType(complaint, 'tuple');
  if (origin === 'array') {
    const options = fieldAt(schema, document, [...path, 0]);
    const kinds = options instanceof z.core.$ZodDiscriminatedUnion ? ` (${list(kindsOf(options))})` : '';
    return `${name} needs ${isLeast ? 'at least' : 'at most'} ${limit} ${limit === 1 ? 'entry' : 'entries'}${kinds}.`;
  }
  if (origin === 'string' && limit === 1) return `${name} must not be empty.`;
  if (origin === 'string') return `${name} must have ${isLeast ? 'at least' : 'at most'} ${limit} letters.`;
  const bound = isLeast ? (inclusive ? 'at least' : 'above') : inclusive ? 'at most' : 'below';
  return `${name} must be ${bound} ${limit}${unitAt(path).replace(' in', '')}; ${quote(valueAt(document, path))} was given.`;
}

const kindsOf = (union: z.core.$ZodDiscriminatedUnion): string[] =>
  union._zod.def.options.flatMap((option) =>
    [...(option._zod.propValues?.[union._zod.def.discriminator] ?? [])].map(String),
  );

/** JSON may carry this name and an object must not: it would reach past the document. */
export const FORBIDDEN_NAME = '__proto__ cannot be a name here; remove it.';

/** A field the document does not know: names the one that was meant, or all that may stand there. */
export function unknownField({ path, schema, document }: Complaint, key: string): string {
  if (key === '__proto__') return FORBIDDEN_NAME;
  const known = fieldNames(fieldAt(schema, document, path));
  const own = sameThingInOurUnit(key, known);
  if (own) return `${key} is not a field here: this document takes ${unitOfName(own).unit}, as ${own}.`;
  const near = nearestName(key, known);
  return near
    ? `${key} is not a field here; did you mean ${near}?`
    : `${key} is not a field here; these are: ${list(known)}.`;
}

/** What is wrong with one field and how to mend it, in one sentence. */
export function sentenceFor(complaint: Complaint): string {
  const { issue } = complaint;
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(complaint, issue.expected);
    case 'invalid_value':
      return unknownWord(complaint, issue.values);
    case 'too_small':
      return outOfRange(complaint, Number(issue.minimum), true, issue.inclusive !== false, issue.origin);
    case 'too_big':
      return outOfRange(complaint, Number(issue.maximum), false, issue.inclusive !== false, issue.origin);
    case 'invalid_union':
      return unknownWord(complaint, unionChoices(issue));
    case 'invalid_key':
      return `${nameOf(complaint)} is too long a name.`;
    default:
      return `${nameOf(complaint)} is not understood.`;
  }
}

function unionChoices(issue: z.core.$ZodIssueInvalidUnion): unknown[] {
  if ('options' in issue && Array.isArray(issue.options)) return issue.options;
  return issue.errors.flatMap((branch) =>
    branch.flatMap((inner) => (inner.code === 'invalid_value' ? inner.values : [])),
  );
}
