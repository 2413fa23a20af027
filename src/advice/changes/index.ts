import { CHANGE_KINDS, type Change, type ChangeMaker, type ChangeSituation } from '../change.ts';
import { beltDrive } from './belt-drive.ts';
import { bleedValve } from './bleed.ts';
import { moreFilters } from './filters.ts';
import { addGate, openGate, sealGates } from './gates.ts';
import { shorterHose, smoothHose } from './hose.ts';
import { largerMotor } from './motor.ts';
import { narrowerPipe, widerPipe } from './pipes.ts';
import { pulley } from './pulley.ts';
import { straightener } from './straightener.ts';
import { throttle } from './throttle.ts';

/** Every kind of change the search knows. */
export const CHANGE_MAKERS: readonly ChangeMaker[] = [
  openGate,
  sealGates,
  addGate,
  throttle,
  bleedValve,
  straightener,
  shorterHose,
  smoothHose,
  moreFilters,
  pulley,
  widerPipe,
  narrowerPipe,
  largerMotor,
  beltDrive,
];

/** All proposals, cheapest kind first, within a kind the smallest first. */
export function proposals(situation: ChangeSituation): Change[] {
  const order = (kind: Change['kind']) => CHANGE_KINDS.indexOf(kind);
  return [...CHANGE_MAKERS]
    .sort((a, b) => order(a.kind) - order(b.kind))
    .flatMap(({ kind, propose }) => propose(situation).map((c) => ({ kind, ...c })));
}
