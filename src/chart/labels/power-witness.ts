import { toBase, unitCalled } from '../../units/names.ts';
import type { FoundAxis } from './name-axes.ts';

/**
 * What the shaft power scale says about the others: its end ÷ (end of the flow scale × end of the pressure scale). Fan
 * charts give about 0.3 to 3: the best point lies near half of both ends, at a half to three quarters efficiency.
 * @returns null where there is no power scale beside a flow and a pressure, or its unit is a guess and tells nothing
 */
export function powerShare(axes: readonly FoundAxis[]): number | null {
  const end = (is: (a: FoundAxis) => boolean): number | null => {
    const axis = axes.find(is);
    return axis ? toBase(axis.max, unitCalled(axis.unit)) : null;
  };
  const flow = end((a) => a.quantity === 'flow');
  const pressure = end((a) => a.quantity.endsWith('_pressure'));
  const isGuess = ({ doubts }: FoundAxis): boolean => doubts.some(({ warning }) => warning.code === 'unit-unread');
  const power = end((a) => a.quantity === 'shaft_power' && !isGuess(a));
  return flow && pressure && power ? power / (flow * pressure) : null;
}

/** Beyond these a unit, a multiplier or a decimal point was read wrong. */
export const isLikelyShare = (share: number): boolean => share > 0.1 && share < 9;

/** Most fans' scales lie this close; a lost decimal point or a thousand would carry them out of it. */
export const isUsualShare = (share: number): boolean => share > 0.25 && share < 4;
