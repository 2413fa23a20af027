import { expect } from 'vitest';
import type { Answer } from './bench-server.ts';

export type ProblemBody = {
  type: string;
  title: string;
  status: number;
  detail: string;
  errors: { path: string; message: string }[];
};

/** The answer read as a problem; checks on the way that it is one, whole and without anything of the inside. */
export function problemOf(answer: Answer): ProblemBody {
  expect(answer.headers['content-type']).toBe('application/problem+json; charset=utf-8');
  const body = JSON.parse(answer.text) as ProblemBody;
  expect(Object.keys(body).toSorted()).toEqual(['detail', 'errors', 'status', 'title', 'type']);
  expect(body.status).toBe(answer.status);
  expect(Array.isArray(body.errors)).toBe(true);
  expect(answer.text).not.toMatch(/\.ts\b|node_modules| at .+:\d+/);
  return body;
}
