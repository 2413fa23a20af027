import type { IssueCode } from './codes.ts';

/** Something a user can cause and mend: a code, where it stands in what was sent (JSON Pointer), and a sentence. */
export type Issue = { code: IssueCode; path: string; message: string };

/** Something worth knowing that does not stop an answer. */
export type Warning = { code: string; text: string; path: string };

/** A value, or the list of reasons why there is none. */
export type Result<T> = { ok: true; value: T; warnings: Warning[] } | { ok: false; issues: Issue[] };

/** A value that was understood, with what is worth knowing about it. Definition. */
export const ok = <T>(value: T, warnings: Warning[] = []): Result<T> => ({ ok: true, value, warnings });
/** No value, for these reasons. Definition. */
export const fail = <T>(issues: Issue[]): Result<T> => ({ ok: false, issues });

/** JSON Pointer (RFC 6901) from its steps; `~` and `/` are escaped. */
export const pointer = (...steps: (string | number)[]): string =>
  steps.map((s) => `/${String(s).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
