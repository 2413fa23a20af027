import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstBadNumber } from '../../server/to-json.ts';
import { checkJob, judge } from '../../src/index.ts';

type Path = (string | number)[];

const demo = JSON.parse(readFileSync(new URL('../../fixtures/jobs/school-furniture.json', import.meta.url), 'utf8'));
const job = { ...demo, gatePlans: [demo.gatePlans[0]], asTyped: {} };

/** Places of all numbers in a document. */
function numbersIn(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'number') return [path];
  if (typeof value !== 'object' || value === null) return [];
  const isList = Array.isArray(value);
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, [...path, isList ? Number(key) : key]));
}

function withNumber(document: unknown, path: Path, number: number): void {
  const parent = path
    .slice(0, -1)
    .reduce<Record<string, unknown>>(
      (at, step) => at[step] as Record<string, unknown>,
      document as Record<string, unknown>,
    );
  parent[path.at(-1)!] = number;
}

const extreme = fc.constantFrom(0, 5e-324, 1.1e-12, 1e-9, 1e-6, 1e-3, 0.1, 1, 30, 1e3, 1e6, 1e9, -1);
const change = fc.tuple(fc.constantFrom(...numbersIn(job)), extreme);

test('a job with any numbers in it is refused with a place, or assessed in finite numbers', () => {
  let assessed = 0;
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
      const changed = structuredClone(job);
      for (const [path, number] of changes) withNumber(changed, path, number);
      const checked = checkJob(changed);
      if (!checked.ok) {
        expect(checked.issues.every(({ path, message }) => path.startsWith('/') && message.length > 10)).toBe(true);
        return;
      }
      assessed++;
      expect(firstBadNumber(judge(checked.value).assessment)).toBeUndefined();
    }),
    { seed: 20261125, numRuns: 100 },
  );
  expect(assessed).toBeGreaterThan(30);
});
