import { readFileSync } from 'node:fs';

/** A file of fixtures/reference, by name. */
export const readReference = <T>(name: string): T =>
  JSON.parse(readFileSync(new URL(`../../fixtures/reference/${name}`, import.meta.url), 'utf8')) as T;
