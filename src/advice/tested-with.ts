import type { PatchOperation } from '../assessment.ts';
import type { Blower } from '../job/types.ts';
import { at, set } from './change.ts';

/**
 * Evidence keeps the drive and motor it was gained with, or measured speed, old amps and the size of the old motor would be taken
 * for the new one's. What was tested on another machine's motor has nothing to keep.
 * @param index place of the blower in the job
 */
export function testedWithOldDrive(blower: Blower, index: number): PatchOperation[] {
  const { drive, motor } = blower;
  return blower.evidence.flatMap((piece, i): PatchOperation[] => {
    if (piece.kind === 'readings' && piece.rig.sameDrive === false) return [];
    const path = at('blowers', index, 'evidence', i, 'testedWith');
    if (piece.testedWith == null) return [set(path, { drive, motor })];
    return [
      ...(piece.testedWith.drive == null ? [set(`${path}/drive`, drive)] : []),
      ...(piece.testedWith.motor == null ? [set(`${path}/motor`, motor)] : []),
    ];
  });
}
