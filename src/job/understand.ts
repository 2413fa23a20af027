import type { z } from 'zod';
import { fail, ok, pointer } from '../issues/result.ts';
import type { Issue, Result } from '../issues/result.ts';
import { fieldAt } from './field-at.ts';
import { sentenceFor, unknownField } from './sentences.ts';
import type { Complaint } from './sentences.ts';

/** More than this many complaints at once help nobody. */
export const MOST_ISSUES = 100;

/** Nothing a workshop measures is nearer to zero than this, in any unit of the document; arithmetic breaks down below. */
const SMALLEST = 1e-12;

/** Nothing that the schemas know nests as deeply. */
const DEEPEST = 20;

/**
 * The document with rounding dust swept away: numbers too near to zero to be meant are zeros, as the last point of a
 * computed curve often should be. Nothing that is not dust is copied. No document we understand is deeper.
 */
function swept(document: unknown, depth = 0): unknown {
  if (typeof document === 'number') return Math.abs(document) < SMALLEST ? 0 : document;
  if (typeof document !== 'object' || document === null || depth > DEEPEST) return document;
  if (Array.isArray(document)) {
    const items = document.map((item) => swept(item, depth + 1));
    return items.some((item, i) => !Object.is(item, document[i])) ? items : document;
  }
  const entries = Object.entries(document).map(([key, value]) => [key, swept(value, depth + 1), value] as const);
  if (entries.every(([, now, before]) => Object.is(now, before))) return document;
  const copy = Object.create(Object.getPrototypeOf(document) as object | null) as Record<string, unknown>;
  for (const [key, value] of entries)
    Object.defineProperty(copy, key, { value, enumerable: true, writable: true, configurable: true });
  return copy;
}

/** A number outside its range is understood but impossible; a pair that is no pair is not understood. */
const isRange = (complaint: Complaint): boolean =>
  (complaint.issue.code === 'too_small' || complaint.issue.code === 'too_big') &&
  fieldAt(complaint.schema, complaint.document, complaint.path)?._zod.def.type !== 'tuple';

function issuesOf(complaint: Complaint): Issue[] {
  const { issue, path } = complaint;
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      code: 'not-understood',
      path: pointer(...path, key),
      message: unknownField(complaint, key),
    }));
  }
  const code = isRange(complaint) ? 'out-of-range' : 'not-understood';
  return [{ code, path: pointer(...path), message: sentenceFor(complaint) }];
}

/**
 * Reads a document by its schema.
 * @param schema    what the document must look like
 * @param raw       anything that came out of a JSON parser; numbers within 1e-12 of zero are read as zero
 * @returns the typed document, or every complaint as an issue: `out-of-range` for a number, text or list beyond its
 *          limits, `not-understood` for the rest; `path` is a JSON Pointer into the document
 */
export function understand<S extends z.ZodType>(schema: S, raw: unknown): Result<z.output<S>> {
  const document = swept(raw);
  const parsed = schema.safeParse(document);
  if (parsed.success) return ok(parsed.data);
  const issues = parsed.error.issues.slice(0, MOST_ISSUES).flatMap((issue) =>
    issuesOf({
      issue,
      path: issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step)),
      schema,
      document,
    }),
  );
  return fail(issues.slice(0, MOST_ISSUES));
}
