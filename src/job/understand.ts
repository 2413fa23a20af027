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

/** Numbers that are not zero and too near to it to be meant. `document` is understood already, so not deep. */
function tooSmall(document: unknown, path: string, issues: Issue[]): Issue[] {
  if (typeof document === 'number' && document !== 0 && Math.abs(document) < SMALLEST) {
    const message = `${document} is too small to be meant: give 0 or a number of the size you measured.`;
    issues.push({ code: 'out-of-range', path, message });
  }
  if (typeof document !== 'object' || document === null) return issues;
  for (const [key, value] of Object.entries(document)) tooSmall(value, path + pointer(key), issues);
  return issues;
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
 * @param document  anything that came out of a JSON parser
 * @returns the typed document, or every complaint as an issue: `out-of-range` for a number, text or list beyond its
 *          limits, `not-understood` for the rest; `path` is a JSON Pointer into the document
 */
export function understand<S extends z.ZodType>(schema: S, document: unknown): Result<z.output<S>> {
  const parsed = schema.safeParse(document);
  if (parsed.success) {
    const tiny = tooSmall(parsed.data, '', []);
    return tiny.length > 0 ? fail(tiny.slice(0, MOST_ISSUES)) : ok(parsed.data);
  }
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
