import { pointer } from '../issues/result.ts';
import type { Issue } from '../issues/result.ts';
import { impossibleEvidence } from './impossible-evidence.ts';
import type { Blower, Supply } from './types.ts';

/** Issues of one blower that its schema cannot see; `path` is the blower's JSON Pointer. */
export function impossibleBlower(blower: Blower, path: string): Issue[] {
  return blower.evidence.flatMap((evidence, index) => impossibleEvidence(evidence, path + pointer('evidence', index)));
}

/** Two blowers under one id could not be told apart in the answer. */
export function sameIds(blowers: readonly Blower[]): Issue[] {
  return blowers.flatMap((blower, index) =>
    blowers.findIndex(({ id }) => id === blower.id) < index
      ? [
          {
            code: 'duplicate-id' as const,
            path: pointer('blowers', index, 'id'),
            message: `Two blowers are called "${blower.id}": give each an id of its own.`,
          },
        ]
      : [],
  );
}

/** The mains cannot sink to a voltage above what they are said to be. */
export function impossibleSupply(supply: Supply, path: string): Issue[] {
  const { voltage_V: mains, lowestVoltage_V: lowest } = supply;
  if (mains == null || lowest == null || lowest <= mains) return [];
  const message = `The lowest voltage of the day (${lowest} V) is above the mains voltage (${mains} V): look at both.`;
  return [{ code: 'contradiction', path: path + pointer('lowestVoltage_V'), message }];
}
