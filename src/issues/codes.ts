/**
 * Why a document is refused. `not-understood` is answered with 400 (wrong type, unknown field, wrong word);
 * every other code means "understood, but impossible" and is answered with 422.
 */
export const ISSUE_CODES = [
  'not-understood',
  'out-of-range',
  'duplicate-id',
  'flows-nowhere',
  'flows-in-a-circle',
  'no-pickup',
  'unknown-pickup',
  'curve-not-a-function',
  'contradiction',
] as const;

export type IssueCode = (typeof ISSUE_CODES)[number];
