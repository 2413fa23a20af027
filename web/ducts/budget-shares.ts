import type { BudgetPart } from '../../src/assessment.ts';

/** A part of the pressure budget and its place on the bar, both as shares of one. */
export type Share = BudgetPart & { from: number; share: number };

/** Parts that would be thinner than this on the bar are left out of it and of the list. */
const THINNEST = 0.004;

/** The parts in the air's order, as shares of the whole; nothing where nothing is lost. */
export function sharesOf(parts: readonly BudgetPart[]): Share[] {
  const whole = parts.reduce((sum, part) => sum + Math.max(0, part.pressure_Pa), 0);
  if (!(whole > 0)) return [];
  let from = 0;
  return parts.flatMap((part) => {
    const share = Math.max(0, part.pressure_Pa) / whole;
    const piece = { ...part, from, share };
    from += share;
    return share > THINNEST ? [piece] : [];
  });
}

export const biggest = (shares: readonly Share[]): Share | null =>
  shares.reduce<Share | null>((most, share) => (most && most.pressure_Pa >= share.pressure_Pa ? most : share), null);
