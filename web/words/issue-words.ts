import type { Issue, Warning } from '../../src/issues/result.ts';
import type { Texts } from '../texts/en.ts';

/** What the core doubts or refuses, in the user's language where it has words for the code. */
export const warningWords = (warning: Warning, texts: Texts): string => texts.warnings[warning.code] ?? warning.text;
export const issueWords = (issue: Issue, texts: Texts): string => texts.issues[issue.code] ?? issue.message;
