import { pointer, type Issue } from '../issues/result.ts';
import { methodNamed } from './methods/index.ts';
import type { Readings } from './schema.ts';

/**
 * Rows that can't be: a hole wider than its pipe, or too wide to measure by. What is merely missing is no issue (see `reduceReadings`).
 * @param path JSON Pointer of the evidence
 */
export function checkReadings(readings: Readings, path: string): Issue[] {
  const { rig, rows } = readings;
  const method = methodNamed(rig.method);
  return rows.flatMap((row, index) => method.impossible?.(rig, row, path + pointer('rows', index)) ?? []);
}
