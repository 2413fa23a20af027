import { z } from 'zod';
import { ductworkIssues } from '../duct/check.ts';
import { fail, ok } from '../issues/result.ts';
import type { Issue, Result } from '../issues/result.ts';
import { pointer } from '../issues/result.ts';
import { impossibleBlower, impossibleSupply, sameIds } from './impossible-blower.ts';
import { impossiblePlans } from './impossible-plans.ts';
import * as schema from './schema.ts';
import { FORBIDDEN_NAME } from './sentences.ts';
import type { Job } from './types.ts';
import { MOST_ISSUES, understand } from './understand.ts';

/** What `POST /api/curve` is asked: one blower, where it stands and what feeds it. */
export const CurveRequest = z.strictObject({
  site: schema.Site,
  supply: schema.Supply.nullish(),
  blower: schema.Blower,
});
export type CurveRequest = z.infer<typeof CurveRequest>;

const answer = <T>(value: T, issues: Issue[]): Result<T> =>
  issues.length > 0 ? fail(issues.slice(0, MOST_ISSUES)) : ok(value);

/** The one place with names of any kind; the schema passes over `__proto__` there. */
function forbiddenTexts(raw: unknown): Issue[] {
  const { asTyped } = raw as { asTyped?: object | null };
  if (!Object.hasOwn(asTyped ?? {}, '__proto__')) return [];
  return [{ code: 'not-understood', path: pointer('asTyped', '__proto__'), message: FORBIDDEN_NAME }];
}

const impossibilities = (job: Job): Issue[] => [
  ...sameIds(job.blowers),
  ...job.blowers.flatMap((blower, index) => impossibleBlower(blower, pointer('blowers', index))),
  ...impossibleSupply(job.supply, pointer('supply')),
  ...ductworkIssues(job.ductwork),
  ...impossiblePlans(job.gatePlans ?? [], job.ductwork),
];

/**
 * The door of every job: is it understood, and is it possible?
 * @param raw  what came out of a JSON parser
 * @returns the typed job, or every reason against it with its JSON Pointer and a sentence that says how to mend it
 */
export function checkJob(raw: unknown): Result<Job> {
  const read = understand(schema.Job, raw);
  if (!read.ok) return read;
  return answer(read.value, [...forbiddenTexts(raw), ...impossibilities(read.value)]);
}

/** The same door for the request of a single blower's curve. */
export function checkCurveRequest(raw: unknown): Result<CurveRequest> {
  const read = understand(CurveRequest, raw);
  if (!read.ok) return read;
  const { blower, supply } = read.value;
  return answer(read.value, [
    ...impossibleBlower(blower, pointer('blower')),
    ...(supply ? impossibleSupply(supply, pointer('supply')) : []),
  ]);
}
