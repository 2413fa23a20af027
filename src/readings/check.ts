import { pointer, type Issue } from '../issues/result.ts';
import { methodNamed } from './methods/index.ts';
import type { Readings, Rig } from './schema.ts';

/**
 * Rows that can't be: a hole wider than its pipe, or too wide to measure by; rigs that can't be. What is merely missing is no issue (see `reduceReadings`).
 * @param path JSON Pointer of the evidence
 */
export function checkReadings(readings: Readings, path: string): Issue[] {
  const { rig, rows } = readings;
  const method = methodNamed(rig.method);
  const at = path + pointer('rig');
  return [
    ...pipeInsideOut(rig, at),
    ...(method.impossibleRig?.(rig, at) ?? []),
    ...rows.flatMap((row, index) => method.impossible?.(rig, row, path + pointer('rows', index)) ?? []),
  ];
}

/** A pipe whose outside is no wider than its inside. */
function pipeInsideOut({ pipeDiameter_m: inside, pipeOutsideDiameter_m: outside }: Rig, path: string): Issue[] {
  if (inside == null || outside == null || outside > inside) return [];
  const message = `A pipe of ${outside} m outside can't be ${inside} m inside: look at both diameters.`;
  return [{ code: 'contradiction', path: path + pointer('pipeOutsideDiameter_m'), message }];
}
